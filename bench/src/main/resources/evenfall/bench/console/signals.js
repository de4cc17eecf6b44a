import words, { fill } from "./words.js";
import { onUnits, text as withUnit, temperature } from "./units.js";
import { ask, field, make, options, source, sources } from "./ask.js";
import { Cover } from "./cover.js";

const LOOK_MS = 500;
const b = words.bench;

/** What ports say now, with its age; what is silent is not known. */
export class Signals {
  constructor(about) {
    this.box = document.getElementById("signals-now");
    this.said = document.getElementById("signals-said");
    this.view = null;
    this.cover = null;
    const form = document.getElementById("watch");
    const from = options(sources(about, false));
    this.go = make("button", "main", b.watch);
    this.stop = make("button", "", b.endWatch);
    this.stop.type = "button";
    this.stop.hidden = true;
    this.from = field(b.from, from);
    form.append(this.from, this.go, this.stop);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.begin(source(from.value));
    });
    this.stop.addEventListener("click", () => this.end());
    onUnits(() => this.view && this.draw());
  }

  async begin(wanted) {
    this.say("");
    const { json, said } = await ask("/bench/signals", { ...wanted, instead_of: this.view?.id ?? "" });
    if (!json) {
      this.say(said);
      return;
    }
    this.box.replaceChildren();
    this.rows = new Map();
    this.lines = new Map();
    this.cover = null;
    this.view = json;
    this.build();
    this.draw();
    this.later();
  }

  chosen(watching) {
    this.from.hidden = watching;
    this.go.hidden = watching;
    this.stop.hidden = !watching;
  }

  say(sentence) {
    if (this.said.textContent !== sentence) this.said.textContent = sentence;
  }

  async end() {
    const id = this.view?.id;
    this.view = null;
    clearTimeout(this.timer);
    this.box.replaceChildren();
    this.chosen(false);
    this.say("");
    this.go.focus();
    if (id) await ask(`/bench/signals/${id}`, { do: "end" });
  }

  later() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.look(), LOOK_MS);
  }

  async look() {
    const id = this.view?.id;
    if (!id) return;
    const { json, said, gone } = await ask(`/bench/signals/${id}`);
    if (this.view?.id !== id) return;
    if (json) {
      this.view = json;
      this.say(json.ended ?? "");
      this.draw();
      if (json.ended === null) this.later();
    } else {
      // Old numbers must not look like new ones.
      for (const row of this.rows.values()) this.unknown(row, said);
      this.say(said);
      if (!gone) this.later();
    }
  }

  build() {
    this.chosen(true);
    this.stop.focus();
    if (this.view.simulated) this.box.append(make("p", "tag", b.invented));
    if (!this.view.rig) this.box.append(make("p", "note", b.noRig));
    this.ports = make("div");
    const table = make("table", "signals");
    table.createCaption().className = "unseen";
    table.caption.textContent = words.benchSignals;
    const head = table.createTHead().insertRow();
    for (const word of [b.signal, b.value, b.age]) {
      const cell = make("th", "", word);
      cell.scope = "col";
      head.append(cell);
    }
    this.body = table.createTBody();
    this.box.append(this.ports, table);
    this.coverBox = make("div");
    this.box.append(this.coverBox);
  }

  draw() {
    for (const port of this.view.ports) this.line(port);
    for (const signal of this.view.signals) this.row(signal);
    const heights = this.view.signals.filter((one) => one.kind === "height");
    if (!this.cover && heights.length) this.cover = new Cover(this.coverBox, this.view.simulated);
    this.cover?.hear(heights);
  }

  line(port) {
    let box = this.lines.get(port.name);
    if (!box) {
      box = make("div", "line");
      box.append(make("b"), make("small"));
      box.firstChild.setAttribute("role", "status");
      this.lines.set(port.name, box);
      this.ports.append(box);
    }
    box.classList.toggle("gone", !port.open);
    const name = port.name === "port" ? port.device : `${port.name}, ${port.device}`;
    const state = port.open ? (port.accepted + port.ignored > 0 ? fill(b.portOpen, name) : fill(b.portQuiet, name)) : fill(b.portGone, name, port.why);
    if (box.firstChild.textContent !== state) box.firstChild.textContent = state;
    const heard = port.age_s === null ? b.neverHeard : fill(b.lastHeard, age(port.age_s));
    box.lastChild.textContent = `${heard} ${fill(b.lineCounts, port.accepted, port.ignored, port.rejected, port.rejected_checksum, port.rejected_malformed, port.rejected_too_long, port.other_lines)}`;
  }

  row(signal) {
    const key = `${signal.kind} ${signal.name}`;
    let row = this.rows.get(key);
    if (!row) {
      row = this.body.insertRow();
      const name = make("th", "", fill(b.signals[signal.kind], signal.name));
      name.scope = "row";
      row.append(name, make("td", "v"), make("td", "a"));
      this.rows.set(key, row);
    }
    if (signal.value === null) {
      this.unknown(row, signal.why);
    } else {
      row.classList.remove("unknown");
      put(row.cells[1], shown(signal), extra(signal));
    }
    const at = signal.age_s === null ? "–" : age(signal.age_s);
    if (row.cells[2].textContent !== at) row.cells[2].textContent = at;
  }

  unknown(row, why) {
    row.classList.add("unknown");
    put(row.cells[1], fill(b.unknown, why), "");
  }
}

function put(cell, text, small) {
  if (cell.dataset.text === text + small) return;
  cell.dataset.text = text + small;
  cell.replaceChildren(text);
  if (small) cell.append(make("small", "", small));
}

const age = (seconds) => (seconds >= 3600 ? b.longAgo : fill(b.ago, seconds.toFixed(seconds < 10 ? 1 : 0)));

function shown({ quantity, value }) {
  switch (quantity) {
    case "pulses": return fill(b.perSecond, value.toFixed(1));
    case "current": return `${value.toFixed(2)} mA`;
    case "temperature": return temperature(value);
    case "mask": return switches(value);
    case "starts": return fill(b.starts, value);
    case "distance": return fill(b.below, withUnit(value, "height"));
    default: return withUnit(value, quantity);
  }
}

function switches(mask) {
  const on = [];
  for (let i = 0; i < 32; i++) if (Math.floor(mask / 2 ** i) % 2) on.push(i + 1);
  return on.length ? fill(b.switchesOn, on.join(", ")) : b.switchesOff;
}

function extra(signal) {
  const parts = [];
  if (signal.count !== undefined) parts.push(fill(b.countSoFar, signal.count));
  if (signal.kind === "pressure" && signal.quantity === "pressure" && signal.current_mA !== undefined) parts.push(`${signal.current_mA.toFixed(2)} mA`);
  if (signal.quality !== undefined) parts.push(fill(b.fix, b.qualities[signal.quality] ?? signal.quality));
  if (signal.satellites !== undefined) parts.push(fill(b.satellites, signal.satellites));
  return parts.join(", ");
}
