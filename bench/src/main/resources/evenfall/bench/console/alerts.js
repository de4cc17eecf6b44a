import words, { fill } from "./words.js";

// Shapes tell priorities apart without colour.
const SHAPES = { high: "M26 3 50 47H2z", medium: "M26 2 50 26 26 50 2 26z", low: "M26 4a22 22 0 1 0 .1 0z" };
const RANK = { high: 0, medium: 1, low: 2 };
const LONGEST_LOG = 80;

const what = (alert) => alert.place === "boom" ? words.kinds[alert.kind] ?? alert.kind : fill(words.at, words.kinds[alert.kind] ?? alert.kind, words.places[alert.place] ?? alert.place);

function element(name, className, content) {
  const node = document.createElement(name);
  node.className = className;
  node.textContent = content;
  return node;
}

/** The alerts that stand, of all lanes, and those that have been. */
export class Alerts {
  constructor() {
    this.list = document.getElementById("standing");
    this.calm = document.getElementById("calm");
    this.log = document.getElementById("log");
    this.standing = new Map();
    this.several = false;
    this.heard = false;
  }

  clear() {
    this.standing.clear();
    this.log.replaceChildren();
    this.heard = false;
    this.draw();
  }

  /** All that stands in a lane, as a lane's description brings it. */
  replace(lane, list) {
    for (const key of [...this.standing.keys()]) if (key.startsWith(lane + " ")) this.standing.delete(key);
    for (const alert of list) this.standing.set(`${lane} ${alert.kind}/${alert.place}`, { lane, alert });
    this.draw();
  }

  forget(lane) {
    this.replace(lane, []);
  }

  /** A message of the monitor; null where a retained one is taken away. */
  hear(lane, topic, alert) {
    const key = lane + " " + topic.split("/").slice(-2).join("/");
    if (alert === null) {
      this.standing.delete(key);
    } else if (alert.state === "standing") {
      this.standing.set(key, { lane, alert });
      this.note(fill(words.raised, alert.raised_s.toFixed(1), lane, what(alert)), alert);
    } else {
      this.note(fill(words.cleared, alert.at_s.toFixed(1), lane, what(alert)), alert);
    }
    this.draw();
  }

  note(text, alert) {
    const line = element("li", alert.state, text);
    line.title = alert.why;
    this.log.prepend(line);
    while (this.log.children.length > LONGEST_LOG) this.log.lastChild.remove();
  }

  draw() {
    const all = [...this.standing.values()].sort((a, b) => RANK[a.alert.priority] - RANK[b.alert.priority] || b.alert.raised_s - a.alert.raised_s);
    this.list.replaceChildren(
      ...all.map(({ lane, alert }) => {
        const card = element("li", `alert ${alert.priority}`, "");
        const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
        svg.setAttribute("viewBox", "0 0 52 52");
        svg.setAttribute("aria-hidden", "true");
        const shape = document.createElementNS("http://www.w3.org/2000/svg", "path");
        shape.setAttribute("d", SHAPES[alert.priority]);
        svg.append(shape);
        card.append(
          svg,
          element("p", "what", (this.several ? lane + "  " : "") + what(alert)),
          element("p", "act", alert.act),
          element("p", "why", `${words.priorities[alert.priority]}. ${alert.why}`),
        );
        return card;
      }),
    );
    this.calm.hidden = all.length > 0;
    this.calm.textContent = this.heard ? words.calm : words.waiting;
    this.calm.classList.toggle("good", this.heard);
  }
}
