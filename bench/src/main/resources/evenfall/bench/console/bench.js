import words, { label } from "./words.js";

label();
for (const item of words.benchItems) {
  const box = document.createElement("label");
  const tick = document.createElement("input");
  tick.type = "checkbox";
  box.append(tick, document.createElement("span"));
  box.lastChild.textContent = item;
  document.getElementById("check").append(box);
}
