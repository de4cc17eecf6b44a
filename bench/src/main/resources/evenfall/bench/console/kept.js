import words, { fill } from "./words.js";
import { ask, make } from "./ask.js";

/** Results kept, newest first. */
export class Kept {
  constructor(about) {
    document.getElementById("kept-where").textContent = fill(words.bench.keptIn, about.folder);
    this.draw(about);
  }

  async again() {
    const { json } = await ask("/bench/kept");
    if (json) this.draw(json);
  }

  draw(about) {
    const b = words.bench;
    const list = document.getElementById("kept");
    list.replaceChildren();
    if (about.kept_trouble) list.append(make("li", "", about.kept_trouble));
    for (const one of about.kept ?? []) {
      const item = make("li");
      item.append(make("b", "", `${one.passed ? "✓" : "✗"} ${b.provers[one.prove] ?? one.prove}`));
      item.append(make("span", "", one.passed ? b.passedShort : b.failedShort));
      item.append(make("small", "", one.at_utc.replace("T", ", ").replace("Z", " UTC")));
      if (one.simulated) item.append(make("small", "tag", b.invented));
      else if (one.rig) item.append(make("small", "", one.rig));
      for (const found of one.constants) {
        if (found.key) item.append(make("small", "", `${found.of}: ${round(found.value, found.expanded)} ± ${round(found.expanded, found.expanded)} ${b.keys[found.key] ?? found.key}`));
      }
      const page = make("a", "", b.openReport);
      page.href = `/bench/kept/${one.name.replace(/\.json$/, ".html")}`;
      const raw = make("a", "", one.name);
      raw.href = `/bench/kept/${one.name}`;
      item.append(page, raw);
      list.append(item);
    }
    if (!list.children.length) list.append(make("li", "", b.keptNone));
    if (about.kept_more) list.append(make("li", "", fill(b.keptMore, about.kept_more)));
  }
}

/** As many decimals as the uncertainty is worth: its last digit is at most a tenth of it. */
function round(value, expanded) {
  let decimals = 0;
  for (let digit = 1; decimals < 6 && digit > 0.1 * expanded; digit /= 10) decimals++;
  return value.toFixed(decimals);
}
