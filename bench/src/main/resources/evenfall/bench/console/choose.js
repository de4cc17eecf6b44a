import words, { fill, label } from "./words.js";
import { chooseUnits, onUnits, number, inside, unit, units } from "./units.js";

const WAIT_MS = 200;
// The usual job of the command line, in SI with L/ha.
const FIELDS = [
  ["rate_low_Lpha", "rate_low", "rate", 150], ["rate_high_Lpha", "rate_high", "rate", 250],
  ["speed_low_mps", "speed_low", "speed", 8 / 3.6], ["speed_high_mps", "speed_high", "speed", 14 / 3.6],
  ["width_m", "width", "width", 36], ["spacing_m", "spacing", "small", 0.508], ["row_m", "row", "small", 0.1905],
  ["height_m", "height", "height", 0.5], ["wander_m", "wander", "height", 0.1],
  ["limit_cv_pct", "limit", null, 15], ["thiosulphate_share", "thiosulphate", null, 0],
];
const values = Object.fromEntries(FIELDS.map(([key, , , usual]) => [key, usual]));
values.product = "uan-28";
const form = document.querySelector(".job");
const said = document.getElementById("said");
let timer = null;
let asking = null;

label();
chooseUnits(document.getElementById("units"));

const ratio = (key) => (key === "thiosulphate_share" ? 100 : 1);

function build(products) {
  form.replaceChildren();
  for (const [key, name, quantity] of FIELDS) {
    const box = document.createElement("label");
    box.className = "short";
    const span = document.createElement("span");
    span.textContent = fill(words.choose[name], quantity ? unit(quantity) : "");
    const input = document.createElement("input");
    input.inputMode = "decimal";
    input.name = key;
    input.autocomplete = "off";
    input.value = quantity ? number(values[key], quantity) : String(values[key] * ratio(key));
    input.addEventListener("input", () => {
      const value = Number(input.value.trim().replace(",", "."));
      values[key] = input.value.trim() === "" || !Number.isFinite(value) ? null : quantity ? inside(value, quantity) : value / ratio(key);
      later();
    });
    box.append(span, input);
    form.append(box);
  }
  const box = document.createElement("label");
  const span = document.createElement("span");
  span.textContent = words.product;
  const select = document.createElement("select");
  for (const product of products) {
    const option = document.createElement("option");
    option.value = product.id;
    option.textContent = product.title;
    select.append(option);
  }
  select.value = values.product;
  select.addEventListener("change", () => {
    values.product = select.value;
    later();
  });
  box.append(span, select);
  form.append(box);
}

function later() {
  clearTimeout(timer);
  timer = setTimeout(ask, WAIT_MS);
}

/** What has to be scrolled sideways can be reached by keyboard; what has not is no stop on the way. */
function reach() {
  for (const box of document.querySelectorAll("#answer .wide")) {
    const scrolls = box.scrollWidth > box.clientWidth;
    for (const [name, value] of [["tabindex", "0"], ["role", "group"], ["aria-label", words.scrolls]]) {
      if (scrolls) box.setAttribute(name, value);
      else box.removeAttribute(name);
    }
  }
}
new ResizeObserver(reach).observe(document.getElementById("answer"));

async function ask() {
  asking?.abort();
  const mine = new AbortController();
  asking = mine;
  try {
    const answer = await fetch("/choose/answer", { method: "POST", body: JSON.stringify({ ...values, units: units() }), signal: mine.signal });
    if (mine !== asking) return;
    if (answer.status === 503) later();
    said.textContent = answer.ok || answer.status === 503 ? "" : (await answer.text()).trim();
    if (!answer.ok) return;
    const { html } = await answer.json();
    if (mine !== asking) return;
    // Markup of the bench's own, with every text escaped there.
    document.getElementById("answer").innerHTML = html;
    reach();
  } catch (error) {
    if (error.name !== "AbortError") {
      said.textContent = words.failed;
      setTimeout(later, 1000);
    }
  }
}

form.addEventListener("submit", (event) => event.preventDefault());
const { products } = await (await fetch("/catalogue")).json();
build(products);
onUnits(() => {
  build(products);
  ask();
});
said.textContent = words.working;
ask();
