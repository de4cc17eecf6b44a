import words, { fill } from "./words.js";

const STALE_MS = 1500;
const AGAIN_MS = 1000;

/** One run on the server: begins it, hears its frames, and begins it anew when the server has forgotten it. */
export class Link {
  constructor(onFrame, onBegun, say) {
    this.onFrame = onFrame;
    this.onBegun = onBegun;
    this.say = say;
    this.settings = null;
    this.id = null;
    this.source = null;
    this.heardAt = performance.now();
    setInterval(() => this.watch(), 250);
  }

  async begin(settings) {
    this.settings = settings;
    this.source?.close();
    this.source = null;
    clearTimeout(this.timer);
    try {
      const answer = await fetch("/sessions", { method: "POST", body: JSON.stringify({ ...settings, instead_of: this.id || "" }) });
      if (!answer.ok) {
        this.say(await answer.text());
        if (answer.status === 503) this.later();
        return false;
      }
      this.id = (await answer.json()).id;
    } catch {
      this.later();
      return false;
    }
    this.onBegun();
    this.listen();
    return true;
  }

  later() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.begin(this.settings), AGAIN_MS);
  }

  listen() {
    const source = new EventSource(`/sessions/${this.id}/stream`);
    this.source = source;
    source.addEventListener("message", (event) => {
      this.heardAt = performance.now();
      const frame = JSON.parse(event.data);
      this.onFrame(frame.lane, frame.topic, frame.payload);
    });
    source.addEventListener("error", () => {
      // Closed: the server is there and does not know this run. Otherwise the browser tries again by itself.
      if (source.readyState === EventSource.CLOSED && source === this.source) this.later();
    });
  }

  /** Asks for something; true when it is under way. */
  async order(json) {
    if (!this.id) return false;
    try {
      const answer = await fetch(`/sessions/${this.id}/do`, { method: "POST", body: JSON.stringify(json) });
      this.say(answer.ok ? "" : await answer.text());
      return answer.ok;
    } catch {
      this.say(words.failed);
      return false;
    }
  }

  watch() {
    const ageMs = performance.now() - this.heardAt;
    const lost = document.getElementById("lost");
    lost.hidden = ageMs < STALE_MS;
    document.body.classList.toggle("stale", !lost.hidden);
    // The words are spoken once; the seconds are for the eye.
    const said = { "lost-age": fill(words.lostAge, (ageMs / 1000).toFixed(0) + " s"), "lost-words": words.lost };
    for (const [id, text] of Object.entries(said)) {
      const node = document.getElementById(id);
      const now = lost.hidden ? "" : text;
      if (node.textContent !== now) node.textContent = now;
    }
  }
}
