import words, { fill, label } from "./words.js";
import { chooseUnits, onUnits, text, percent } from "./units.js";
import { Link } from "./link.js";
import { Lane } from "./lane.js";
import { RearView } from "./rear.js";
import { Strip, legend } from "./strip.js";
import { Lines } from "./lines.js";
import { Alerts } from "./alerts.js";
import { Changes, beginForm, parse } from "./controls.js";

const $ = (id) => document.getElementById(id);
const LINES_MS = 300;
const STRIP_MS = 100;
const lanes = new Map();
let state = null;
let catalogue = null;
let scenario = null;
let linesAt = 0;
let linesDrawn = "";

label();
chooseUnits($("units"));
const alerts = new Alerts();
const lines = new Lines($("charts"));

function say(sentence) {
  const said = sentence.trim();
  if ($("said").textContent !== said) $("said").textContent = said;
}

/** A whole number with its sign; none for what rounds to zero. */
function signed(value) {
  const whole = Math.abs(value).toFixed(0);
  return (whole === "0" ? "" : value > 0 ? "+" : "−") + whole;
}

/** At which heights rows are even, as people say it. */
function windowWords({ low_m, high_m }) {
  if (low_m === null) return words.noWindow;
  const high = text(high_m, "height");
  return low_m <= 0 ? fill(words.evenUpTo, high.replace(/\.0+ /, " ")) : fill(words.evenBetween, text(low_m, "height"), high);
}

/** The part of the page that shows one lane. */
class Panel {
  constructor(name) {
    this.lane = new Lane(name);
    this.box = document.createElement("article");
    this.box.id = "lane-" + name;
    this.box.innerHTML = '<h2></h2><ul class="facts"></ul><canvas class="rear" role="img"></canvas><p class="note rear-note"></p><canvas class="strip" role="img" tabindex="0"></canvas><p class="readout" role="status"></p>';
    this.title = this.box.querySelector("h2");
    this.facts = this.box.querySelector(".facts");
    $("lanes").append(this.box);
    this.rear = new RearView(this.box.querySelector(".rear"), this.box.querySelector(".rear-note"));
    const canvas = this.box.querySelector(".strip");
    canvas.setAttribute("aria-label", words.stripLabel);
    this.box.querySelector(".rear").setAttribute("aria-label", words.waiting);
    this.strip = new Strip(canvas, this.box.querySelector(".readout"));
    this.box.append(legend());
    this.drawnVersion = -1;
    this.stripAt = 0;
  }

  describe(about) {
    this.lane.describe(about);
    this.title.textContent = fill(words.lane, this.lane.name, about.outlet.title);
    this.rear.dirty = true;
    this.strip.drawnVersion = -1;
    alerts.replace(this.lane.name, about.standing);
  }

  fact(name, value, wanted) {
    let item = this.facts.querySelector(`[data-fact="${name}"]`);
    if (!item) {
      item = document.createElement("li");
      item.dataset.fact = name;
      item.innerHTML = "<span></span> <b></b> <small></small>";
      item.firstChild.textContent = words.facts[name];
      this.facts.append(item);
    }
    const [, b, small] = item.children;
    if (b.textContent !== value) b.textContent = value;
    if (small.textContent !== wanted) small.textContent = wanted;
  }

  live(live) {
    this.lane.live = live;
    this.showLive();
  }

  showLive() {
    const { live, about } = this.lane;
    if (!live) return;
    const error = live.rate_error_pct.value;
    this.fact("rate", text(live.rate_Lpha.value, "rate"), error === null ? "" : signed(error) + " %, " + fill(words.wanted, text(live.target_Lpha, "rate")));
    this.fact("speed", text(live.speed_mps.value, "speed"), "");
    this.fact("pressure", text(live.pressure_kPa.value, "pressure"), "");
    const window = live.window;
    this.fact("cv", percent(live.boom.row_cv), windowWords(window));
    this.rear.dirty = true;
    if (about) alerts.heard = true;
  }

  draw(nowMs) {
    if (this.rear.dirty || (state?.playing && this.lane.picture)) {
      this.rear.draw(this.lane, nowMs);
      // A picture glides to its place for a moment after it came.
      this.rear.dirty = this.lane.picture !== null && nowMs - this.lane.pictureAt < 100;
    }
    const newer = this.strip.drawnVersion !== this.lane.version || this.drawnVersion !== this.lane.version;
    if (newer && nowMs - this.stripAt >= STRIP_MS) {
      this.stripAt = nowMs;
      this.drawnVersion = this.strip.drawnVersion = this.lane.version;
      this.strip.draw(this.lane, state?.changes ?? []);
    }
  }
}

function panel(name) {
  if (!lanes.has(name)) lanes.set(name, new Panel(name));
  return lanes.get(name);
}

function onState(now) {
  const before = state;
  state = now;
  for (const name of [...lanes.keys()]) {
    if (!now.lanes.includes(name)) {
      lanes.get(name).box.remove();
      lanes.delete(name);
      alerts.forget(name);
    }
  }
  alerts.several = now.lanes.length > 1;
  $("lanes").classList.toggle("two", alerts.several);
  changes.show(scenario, alerts.several);
  const go = now.playing ? words.pause : words.go;
  if ($("go").textContent !== go) $("go").textContent = go;
  const truth = now.truth ? words.truthHide : words.truthShow;
  if ($("truth").textContent !== truth) $("truth").textContent = truth;
  $("truth").setAttribute("aria-pressed", String(now.truth));
  const clock = now.catching_up_to !== null ? fill(words.catching, now.t.toFixed(0), now.catching_up_to.toFixed(0)) : fill(now.ended ? words.clockEnded : words.clock, now.t.toFixed(1), now.end.toFixed(0));
  if ($("clock").textContent !== clock) $("clock").textContent = clock;
  const pace = document.querySelector(`#pace input[value="${now.pace}"]`);
  if (pace) pace.checked = true;
  if (now.dropped > (before?.dropped ?? 0)) say(fill(words.dropped, now.dropped));
  if (before && before.truth && !now.truth) for (const one of lanes.values()) one.lane.hide();
  if (before && before.changes.length !== now.changes.length) for (const one of lanes.values()) one.lane.version++;
  if (before && before.playing !== now.playing) for (const one of lanes.values()) one.rear.dirty = true;
}

function onFrame(name, topic, payload) {
  if (topic === "console/state") onState(payload);
  else if (topic === "console/lane") panel(name).describe(payload);
  else if (topic === "console/tape") panel(name).lane.hearTold(payload);
  else if (topic === "truth/tape") {
    if (state?.truth) panel(name).lane.hearTruth(payload);
  } else if (topic === "truth/picture") {
    if (state?.truth) {
      panel(name).lane.hearPicture(payload);
      panel(name).rear.dirty = true;
    }
  } else if (topic.endsWith("/live")) panel(name).live(payload);
  else if (topic.includes("/alert/")) alerts.hear(name, topic, payload);
}

function onBegun() {
  for (const one of lanes.values()) one.box.remove();
  lanes.clear();
  state = null;
  alerts.clear();
  scenario = link.settings.scenario;
  const about = catalogue.scenarios.find((one) => one.id === scenario);
  $("story-title").textContent = about.title;
  $("notes").textContent = about.notes;
}

const link = new Link(onFrame, onBegun, say);
let changes = null;

function frame(nowMs) {
  for (const one of lanes.values()) one.draw(nowMs);
  const drawn = state && `${state.t} ${state.truth} ${[...lanes.values()].map((one) => one.lane.version)} ${lines.shape}`;
  if (state && nowMs - linesAt > LINES_MS && drawn !== linesDrawn) {
    linesAt = nowMs;
    linesDrawn = drawn;
    lines.draw([...lanes.values()].map((one) => one.lane), state.truth, state.t);
  }
  requestAnimationFrame(frame);
}

onUnits(() => {
  for (const one of lanes.values()) {
    one.showLive();
    one.rear.dirty = true;
    one.lane.version++;
  }
});

for (const [value, name] of [["1", words.paces[1]], ["2", words.paces[2]], ["5", words.paces[5]], ["max", words.paces.max]]) {
  const choice = document.createElement("label");
  const input = document.createElement("input");
  input.type = "radio";
  input.name = "pace";
  input.value = value;
  input.addEventListener("change", () => link.order({ do: "pace", pace: value }));
  choice.append(input, name);
  $("pace").append(choice);
}
$("go").textContent = words.go;
$("truth").textContent = words.truthShow;
$("go").addEventListener("click", () => link.order({ do: state?.playing ? "pause" : "go" }));
$("step").addEventListener("click", () => link.order({ do: "step" }));
$("truth").addEventListener("click", () => link.order({ do: "truth", shown: !state?.truth }));
$("jump").addEventListener("submit", (event) => {
  event.preventDefault();
  const to = parse(event.target.elements.to.value);
  if (to === null) say(words.noNumber);
  else link.order({ do: "jump", to_s: to });
});

async function open() {
  try {
    catalogue = await (await fetch("/catalogue")).json();
  } catch {
    setTimeout(open, 1000);
    return;
  }
  changes = new Changes(catalogue, (json) => link.order(json), say);
  const settings = beginForm(catalogue, (wanted) => link.begin(wanted));
  await link.begin(settings());
}
open();
requestAnimationFrame(frame);

/** For tests and measurements: how often the first rear view was drawn. */
export const drawn = () => [...lanes.values()][0]?.rear.drawn ?? 0;
window.evenfall = { drawn, truthDrawn: () => [...lanes.values()].some((one) => one.lane.picture !== null || one.lane.rows !== null || one.lane.truth.n > 0) };
