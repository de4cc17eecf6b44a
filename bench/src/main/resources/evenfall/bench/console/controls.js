import words, { fill } from "./words.js";
import { inside, number, unit, onUnits } from "./units.js";

function option(value, text) {
  const node = document.createElement("option");
  node.value = value;
  node.textContent = text;
  return node;
}

function labelled(text, control, className = "") {
  const label = document.createElement("label");
  label.className = className;
  const span = document.createElement("span");
  span.textContent = text;
  label.append(span, " ", control);
  return label;
}

function select(options) {
  const node = document.createElement("select");
  node.append(...options);
  return node;
}

function input() {
  const node = document.createElement("input");
  node.inputMode = "decimal";
  node.autocomplete = "off";
  return node;
}

function form(name, button, ...parts) {
  const node = document.createElement("form");
  node.className = "one";
  node.setAttribute("aria-label", name);
  const set = document.createElement("button");
  set.type = "submit";
  set.textContent = button;
  node.append(...parts, set);
  return node;
}

/** Fills the form that begins a run. */
export function beginForm(catalogue, begin) {
  const node = document.getElementById("begin");
  const { scenario, outlet, second, seed } = node.elements;
  scenario.append(...catalogue.scenarios.map((one) => option(one.id, one.title)));
  outlet.append(...catalogue.outlets.map((one) => option(one.id, one.title)));
  second.append(option("", words.noSecond), ...catalogue.outlets.map((one) => option(one.id, one.title)));
  const usual = () => {
    const chosen = catalogue.scenarios.find((one) => one.id === scenario.value);
    outlet.value = chosen.outlet;
    seed.value = chosen.seed;
  };
  scenario.addEventListener("change", usual);
  scenario.value = catalogue.scenarios.some((one) => one.id === "terrace-crossing") ? "terrace-crossing" : scenario.value;
  usual();
  const settings = () => ({ scenario: scenario.value, outlet: outlet.value, second: second.value, seed: seed.value === "" ? null : Number(seed.value) });
  node.addEventListener("submit", (event) => {
    event.preventDefault();
    begin(settings());
  });
  return settings;
}

/** The forms that change a run. */
export class Changes {
  constructor(catalogue, order, say) {
    this.catalogue = catalogue;
    this.order = order;
    this.say = say;
    this.box = document.getElementById("changes");
    this.scenario = null;
    this.several = false;
    onUnits(() => this.build());
  }

  show(scenario, several) {
    if (scenario === this.scenario && several === this.several) return;
    this.scenario = scenario;
    this.several = several;
    this.build();
  }

  build() {
    if (!this.scenario) return;
    const about = this.catalogue.scenarios.find((one) => one.id === this.scenario);
    const outlet = select(this.catalogue.outlets.map((one) => option(one.id, one.title)));
    const of = select([option("", words.both), option("A", "A"), option("B", "B")]);
    const parts = [labelled(words.changeOutlet, outlet)];
    if (this.several) parts.push(labelled(words.changeLane, of));
    const outlets = this.form(words.changeOutlet, words.set, parts, () => ({ outlet: outlet.value, lane: this.several ? of.value : "" }));
    const product = select(this.catalogue.products.map((one) => option(one.id, one.title)));
    product.value = about.product;
    this.box.replaceChildren(
      outlets,
      this.number("height_m", words.changeHeight, "height", about.height_m),
      this.number("speed_mps", words.changeSpeed, "speed", about.speed_mps),
      this.number("rate_Lpha", words.changeRate, "rate", about.rate_Lpha),
      this.form(words.changeProduct, words.set, [labelled(words.changeProduct, product)], () => ({ product: product.value })),
      this.faults(about),
    );
  }

  form(name, button, parts, json) {
    const node = form(name, button, ...parts);
    node.addEventListener("submit", (event) => {
      event.preventDefault();
      const wanted = json();
      if (wanted === null) this.say(words.noNumber);
      else this.order({ do: "change", ...wanted });
    });
    return node;
  }

  number(key, name, quantity, usual) {
    const field = input();
    field.value = number(usual, quantity);
    const title = fill(name, unit(quantity));
    return this.form(title, words.set, [labelled(title, field, "short")], () => {
      const value = parse(field.value);
      return value === null ? null : { [key]: inside(value, quantity) };
    });
  }

  faults(about) {
    const fault = select(this.catalogue.faults.map((one) => option(one.id, one.id.replaceAll("-", " "))));
    const much = input();
    const notice = document.createElement("p");
    notice.className = "note";
    const where = document.createElement("span");
    let place = null;
    const chosen = () => this.catalogue.faults.find((one) => one.id === fault.value);
    const refresh = () => {
      const one = chosen();
      const names = about.places[one.place];
      place = one.place === "nowhere" ? null : names ? select(names.map((name) => option(name, name))) : input();
      if (place && !names) place.value = "1";
      where.replaceChildren(...(place ? [labelled(words.faultWhere, place, "short")] : []));
      much.value = one.usual === undefined ? "" : String(one.usual);
      much.disabled = one.usual === undefined;
      notice.textContent = `${one.notice} ${words.faultMuch}: ${one.how_much}.`;
    };
    fault.addEventListener("change", refresh);
    refresh();
    const node = this.form(words.changeFault, words.fault, [labelled(words.changeFault, fault), where, labelled(words.faultMuch, much, "short")], () => {
      const value = much.disabled ? undefined : parse(much.value);
      return value === null ? null : { fault: fault.value, where: place?.value ?? "", how_much: value };
    });
    node.classList.add("wide");
    node.append(notice);
    return node;
  }
}

function parse(text) {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !Number.isFinite(value) ? null : value;
}
export { parse };
