import words, { label } from "./words.js";
import { chooseUnits } from "./units.js";
import { Kept } from "./kept.js";
import { Test } from "./test.js";
import { Signals } from "./signals.js";

label();
chooseUnits(document.getElementById("units"));
for (const item of words.benchItems) {
  const box = document.createElement("label");
  const tick = document.createElement("input");
  tick.type = "checkbox";
  box.append(tick, document.createElement("span"));
  box.lastChild.textContent = item;
  document.getElementById("check").append(box);
}

async function open() {
  let about;
  try {
    const answer = await fetch("/bench/about");
    if (!answer.ok) throw new Error(await answer.text());
    about = await answer.json();
  } catch {
    document.getElementById("lost").textContent = words.failed;
    document.getElementById("lost").hidden = false;
    setTimeout(open, 1000);
    return;
  }
  document.getElementById("lost").hidden = true;
  const kept = new Kept(about);
  new Signals(about);
  await new Test(about, () => kept.again()).resume();
}
open();
