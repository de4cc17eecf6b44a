import words, { fill } from "./words.js";
import { text as withUnit } from "./units.js";
import { make } from "./ask.js";

// As the height test has it: a board at least this much nearer than the ground was.
const NEARER_M = 0.1;
const b = words.bench;

/** Which height sensor answers where: a board under each in turn, from the left. */
export class Cover {
  constructor(box, simulated) {
    this.box = make("div", "cover");
    this.simulated = simulated;
    this.begin = make("button", "", b.coverBegin);
    this.begin.type = "button";
    this.begin.addEventListener("click", () => this.start());
    this.text = make("p");
    this.text.setAttribute("role", "status");
    this.done = make("ul");
    this.box.append(make("b", "", b.coverTitle), this.text, this.done, this.begin);
    this.text.textContent = simulated ? b.coverLeadSimulated : b.coverLead;
    box.append(this.box);
    this.at = -1;
  }

  start() {
    this.at = 0;
    this.base = [];
    this.done.replaceChildren();
    this.begin.textContent = b.coverAgain;
    this.waitsFree = true;
  }

  say(text) {
    if (this.text.textContent !== text) this.text.textContent = text;
  }

  hear(heights) {
    if (this.at < 0) return;
    if (this.at >= heights.length) {
      this.say(b.coverDone);
      return;
    }
    const covered = [];
    heights.forEach((one, i) => {
      if (one.value === null) return;
      this.base[i] = Math.max(this.base[i] ?? one.value, one.value);
      if (one.value <= this.base[i] - NEARER_M) covered.push(i);
    });
    const wanted = heights[this.at].name;
    if (this.waitsFree && covered.length) {
      this.say(b.coverAway);
      return;
    }
    this.waitsFree = false;
    if (!covered.length) {
      this.say(fill(b.coverNow, wanted, withUnit(NEARER_M, "height")));
    } else if (covered.length === 1 && covered[0] === this.at) {
      this.done.append(make("li", "", fill(b.coverGood, wanted)));
      this.say(b.coverAway);
      this.at++;
      this.waitsFree = true;
    } else {
      this.say(fill(b.coverWrong, covered.map((i) => heights[i].name).join(", "), wanted));
    }
  }
}
