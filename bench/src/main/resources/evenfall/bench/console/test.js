import words, { fill } from "./words.js";
import { onUnits, units } from "./units.js";
import { ask, field, make, options, source, sources } from "./ask.js";

const LOOK_MS = 250;
const b = words.bench;

/** A bench test, led step by step by the server. */
export class Test {
  constructor(about, onResult) {
    this.onResult = onResult;
    this.box = document.getElementById("test");
    this.trouble = document.getElementById("test-trouble");
    this.view = null;
    this.drawn = "";
    const form = document.getElementById("begin-test");
    this.beginForm = form;
    const prover = options(about.provers.map((name) => [name, b.provers[name]]), "flow");
    const from = options(sources(about, true));
    const begin = make("button", "main", b.begin);
    form.append(field(b.which, prover), field(b.from, from), begin);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.begin({ prover: prover.value, ...source(from.value) });
    });
    onUnits(() => this.view && this.act({ do: "units", units: units() }));
  }

  async resume() {
    const id = sessionStorage.getItem("test");
    if (!id) return;
    const { json } = await ask(`/bench/proofs/${id}`);
    if (json) this.show(json, false);
    else sessionStorage.removeItem("test");
  }

  async begin(wanted) {
    this.say("");
    const { json, said } = await ask("/bench/proofs", { ...wanted, units: units(), instead_of: this.view?.id ?? "" });
    if (!json) {
      this.say(said);
      return;
    }
    sessionStorage.setItem("test", json.id);
    this.drawn = "";
    this.show(json, true);
    this.box.scrollIntoView({ block: "start" });
  }

  say(sentence) {
    if (this.trouble.textContent !== sentence) this.trouble.textContent = sentence;
  }

  async act(what) {
    if (this.busy) return;
    this.busy = true;
    const asked = this.view;
    const { json, said, gone } = await ask(`/bench/proofs/${asked.id}`, { number: asked.number, ...what });
    this.busy = false;
    if (this.view?.id !== asked.id) return;
    if (json) {
      this.say("");
      this.show(json, true);
    } else {
      this.say(said);
      if (gone) this.forget();
      else this.look(true);
    }
  }

  forget() {
    this.beginForm.hidden = false;
    sessionStorage.removeItem("test");
    this.view = null;
    this.box.replaceChildren();
  }

  async look(focus) {
    const asked = this.view;
    if (!asked) return;
    const { json, said, gone, lost } = await ask(`/bench/proofs/${asked.id}`);
    if (this.view?.id !== asked.id) return;
    if (json) {
      if (this.trouble.textContent === words.failed) this.say("");
      this.show(json, focus);
    } else {
      this.say(said);
      if (gone) this.forget();
      else if (lost) this.later();
    }
  }

  later() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.look(true), LOOK_MS);
  }

  /** Draws a step anew only when it is another one: what somebody types is not taken away. */
  show(view, focus) {
    this.beginForm.hidden = true;
    const ended = view.step.type === "finished" && this.view?.step.type !== "finished";
    this.view = view;
    const shape = JSON.stringify([view.id, view.number, view.units, view.recording ? [view.recording.state, view.recording.wants_mark] : null]);
    if (shape !== this.drawn) {
      this.drawn = shape;
      this.draw(focus);
    }
    if (this.said && this.said.textContent !== (view.said ?? "")) {
      this.said.textContent = view.said ?? "";
      if (focus) this.first?.focus();
    }
    if (view.recording) {
      this.meter(view.recording);
      this.later();
    }
    if (ended) this.onResult();
  }

  draw(focus) {
    const view = this.view;
    const box = this.box;
    box.replaceChildren();
    this.first = null;
    this.said = null;
    const title = make("p");
    title.append(make("b", "", b.provers[view.prover]), " ");
    if (view.source === "simulated") title.append(make("span", "tag", b.invented));
    box.append(title);
    this.cautions(box);
    if (view.notes.length) {
      const notes = make("ul", "read");
      for (const note of view.notes) notes.append(make("li", "", note));
      box.append(notes);
    }
    const step = make("div", "step");
    box.append(step);
    if (view.step.type === "finished") this.finished(step);
    else this.question(step);
    this.soFar(box);
    if (focus) this.first?.focus();
  }

  cautions(box) {
    const view = this.view;
    if (!view.cautions.length) return;
    const list = make("ul", view.caution_now ? "cautions" : "");
    for (const line of view.cautions) list.append(make("li", "", line));
    if (view.caution_now) {
      box.append(list);
    } else {
      const folded = make("details", "cautions");
      folded.append(make("summary", "", b.cautions), list);
      box.append(folded);
    }
  }

  question(box) {
    const { step, number, recording } = this.view;
    box.append(make("p", "of", fill(b.step, number + 1)));
    const title = make("h3", "", step.words);
    title.id = "question";
    box.append(title);
    this.said = make("p", "trouble", this.view.said ?? "");
    this.said.id = "refused";
    this.said.setAttribute("role", "alert");
    if (recording) this.recording(box, recording);
    else if (step.type === "ask") this.typed(box, step);
    else if (step.type === "more") this.more(box, step);
    else this.measure(box, step);
    box.append(this.said);
    const turns = make("div", "turns");
    if (!recording && number > 0) turns.append(this.button(b.back, () => this.act({ do: "back" })));
    if (!recording) turns.append(this.button(b.end, () => this.end()));
    box.append(turns);
  }

  async end() {
    const { id } = this.view;
    this.forget();
    await ask(`/bench/proofs/${id}`, { do: "end" });
    document.querySelector("#begin-test select").focus();
  }

  button(text, act, name = "") {
    const button = make("button", name, text);
    button.type = "button";
    button.addEventListener("click", act);
    return button;
  }

  /** A form that answers on Enter. */
  form(box, text) {
    const form = make("form", "typed");
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.act({ do: "reply", text: text() });
    });
    box.append(form);
    return form;
  }

  typed(box, step) {
    const offered = this.view.reading ?? step.usual ?? "";
    if (step.choices.length) {
      const form = this.form(box, () => form.querySelector("input:checked")?.value ?? "");
      const choices = make("fieldset");
      choices.append(make("legend", "unseen", step.words));
      for (const choice of step.choices) {
        const label = make("label");
        const input = make("input");
        input.type = "radio";
        input.name = "choice";
        input.value = choice;
        input.checked = choice === (offered || step.choices[0]);
        if (input.checked) this.first = input;
        label.append(input, choice);
        choices.append(label);
      }
      form.append(choices, make("button", "main", b.answer));
      this.hint(form, step);
      return;
    }
    const input = make("input");
    input.autocomplete = "off";
    input.setAttribute("aria-describedby", "hint refused");
    this.first = input;
    if (!step.units.length) {
      input.value = offered;
      const form = this.form(box, () => input.value);
      form.append(field(b.yourAnswer, input), make("button", "main", b.answer));
      this.hint(form, step);
      return;
    }
    const [value, its] = split(offered);
    const [, usualUnit] = split(step.example);
    input.inputMode = "decimal";
    input.value = value;
    const unit = options(step.units.map((name) => [name, name]), its || usualUnit);
    const form = this.form(box, () => {
      const text = input.value.trim();
      return text === "" ? "" : /[a-z%°]/i.test(text) ? text : `${text.replace(",", ".")} ${unit.value}`;
    });
    form.append(field(fill(b.value), input), field(b.unit, unit), make("button", "main", b.answer));
    this.hint(form, step);
  }

  hint(form, step) {
    const parts = [];
    if (this.view.reading) parts.push(b.reading);
    else if (step.usual) parts.push(fill(b.usual, step.usual));
    else if (!step.choices.length) parts.push(fill(b.example, step.example));
    const hint = make("p", "hint", parts.join(" "));
    hint.id = "hint";
    form.append(hint);
  }

  more(box, step) {
    const turns = make("div", "turns");
    for (const [text, value] of [[b.yes, true], [b.no, false]]) {
      const button = this.button(text, () => this.act({ do: "reply", text: value ? "yes" : "no" }), value === step.usual ? "main" : "");
      button.setAttribute("aria-describedby", "question");
      if (value === step.usual) this.first = button;
      turns.append(button);
    }
    box.append(turns);
  }

  measure(box, step) {
    if (this.view.can_record) {
      const begin = this.button(step.signal === "ports" ? b.list : b.record, () => this.act({ do: "record" }), "main");
      this.first = begin;
      const turns = make("div", "turns");
      turns.append(begin);
      box.append(turns);
      if (this.view.source === "simulated" && (step.signal === "pulses" || step.signal === "metres")) box.append(make("p", "hint", b.handsDo));
    }
    if (step.example) {
      const input = make("input");
      input.autocomplete = "off";
      input.setAttribute("aria-describedby", "hint refused");
      const form = this.form(box, () => input.value);
      form.append(field(this.view.can_record ? b.orType : b.typeCount, input, "wide"), make("button", this.view.can_record ? "" : "main", b.answer));
      const hint = make("p", "hint", fill(b.example, step.example));
      hint.id = "hint";
      form.append(hint);
      this.first ??= input;
    } else if (!this.view.can_record) {
      box.append(make("p", "", b.needsPort));
    }
  }

  recording(box, recording) {
    const meter = make("div", "meter");
    this.numbers = {};
    for (const name of ["amount", "rate", "elapsed"]) {
      const one = make("div");
      this.numbers[name] = make("b");
      this.numbers[name + "Of"] = make("small");
      one.append(this.numbers[name], this.numbers[name + "Of"]);
      meter.append(one);
    }
    this.state = make("p");
    this.state.setAttribute("role", "status");
    this.state.textContent = recording.state === "starting" ? b.starting : recording.state === "ending" ? b.ending : recording.by_person ? b.recordingOpen : b.recording;
    this.word = make("p", "note");
    box.append(this.state, meter, this.word);
    const turns = make("div", "turns");
    if (recording.state === "recording" && recording.by_person) turns.append(this.button(b.stop, () => this.act({ do: "stop" }), "main"));
    if (recording.state === "recording" && recording.wants_mark && this.view.source !== "simulated") {
      this.state.textContent = b.markNow;
      turns.append(this.button(b.mark, () => this.act({ do: "mark" }), "main"));
    }
    if (recording.state !== "ending") turns.append(this.button(b.drop, () => this.act({ do: "drop" })));
    // A second Enter must not drop what the first began.
    this.state.tabIndex = -1;
    this.first = turns.querySelector("button.main") ?? this.state;
    box.append(turns);
  }

  meter(recording) {
    const n = this.numbers;
    if (!n || recording.amount === undefined) {
      if (this.word && recording.so_far) this.word.textContent = recording.so_far;
      return;
    }
    const of = b.counted[recording.of];
    n.amount.textContent = recording.amount.toLocaleString("en", { maximumFractionDigits: 1, useGrouping: false });
    n.amountOf.textContent = of[0];
    n.rate.textContent = recording.per_s === null ? "…" : recording.per_s.toFixed(recording.per_s < 100 ? 1 : 0);
    n.rateOf.textContent = of[1];
    n.elapsed.textContent = recording.elapsed_s.toFixed(1);
    n.elapsedOf.textContent = recording.seconds > 0 ? fill(b.elapsedOf, recording.seconds) : b.elapsed;
    this.word.textContent = recording.so_far;
  }

  soFar(box) {
    const { given, step } = this.view;
    if (!given.length) return;
    const part = make("details", "so-far");
    part.open = step.type !== "finished";
    part.append(make("summary", "", fill(b.soFar, given.length)));
    const list = make("ol");
    for (const one of given) {
      const item = make("li");
      item.append(make("span", "", one.words), make("b", "", one.text));
      list.append(item);
    }
    part.append(list);
    box.append(part);
  }

  finished(box) {
    const { result, prover, source: from, truth } = this.view;
    const missed = result.findings.filter((one) => !one.met).length;
    const verdict = make("h3", `verdict ${result.passed ? "good" : "bad"}`, result.passed ? fill(b.passed, result.findings.length) : fill(b.failed, missed, result.findings.length));
    verdict.tabIndex = -1;
    this.first = verdict;
    box.append(verdict);
    if (from === "simulated") box.append(make("p", "tag", b.provesNothing));
    for (const one of result.constants) {
      box.append(make("p", "found", fill(b.found, one.of.charAt(0).toUpperCase() + one.of.slice(1), one.text, b.keys[one.key] ?? one.key, one.expanded)));
      if (one.rig_place) {
        box.append(make("p", "", fill(b.intoRig, one.rig_place.split(".").slice(0, -1).join(", "))));
        const line = make("pre");
        line.append(make("code", "rig-line", `${one.key}: ${one.text}`));
        box.append(line);
      }
    }
    const limits = make("ul", "limits");
    for (const one of result.findings) {
      const unit = b.limitUnits[one.unit] ?? one.unit;
      const none = one.at_most === 0;
      limits.append(make("li", "", fill(one.met ? (none ? b.noneMet : b.limitMet) : none ? b.noneMissed : b.limitMissed, one.title, plain(one.measured), plain(one.at_most), unit)));
    }
    box.append(limits);
    if (result.advice.length) {
      const advice = make("ul", "advice");
      for (const one of result.advice) advice.append(make("li", "", one));
      box.append(advice);
    }
    box.append(make("pre", "", result.lines.join("\n")));
    for (const line of truth ?? []) box.append(make("p", "note truth", line.trim()));
    if (result.file) {
      const kept = make("p");
      const page = make("a", "report", b.openReport);
      page.href = `/bench/kept/${result.file.replace(/\.json$/, ".html")}`;
      kept.append(fill(b.keptAs, result.file), " ", page);
      box.append(kept);
    }
    this.said = make("p", "trouble", this.view.said ?? "");
    box.append(this.said);
    const turns = make("div", "turns");
    turns.append(this.button(b.back, () => this.act({ do: "back" })), this.button(b.close, () => this.end()));
    box.append(turns);
  }
}

const split = (text) => {
  const match = /^\s*([-+]?[0-9.]+)\s+(.*)$/.exec(text);
  return match ? [match[1], match[2].trim()] : [text, ""];
};
const plain = (value) => String(Number(value.toFixed(2)));
