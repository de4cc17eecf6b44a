import words, { fill } from "./words.js";
import { text, unit } from "./units.js";

const GRAVITY_MPS2 = 9.80665;
const HIGH = 230;
const GROUND_UP = 62;
const PX_PER_M_UP = 115;
const FRAME_MS = 45;
const FLOWS_KPA = 5;
const TWO_LINES_PX = 520;
/** The monitor does not look at heights above, m. */
const TALLEST_LOOKED_AT_M = 2;

/**
 * How a stream leaves its outlet without drag: m/s down and to the right. It falls a height h in t = (−u + √(u² + 2 g h)) / g seconds.
 * pressureKPa at the outlet; sg of the product.
 */
function leaves(stream, outlet, pressureKPa, sg) {
  const exit = stream.exit_mps * Math.sqrt(Math.max(0, pressureKPa) / (outlet.rated_kPa * sg));
  return { right: exit * stream.right, down: exit * stream.down };
}

const fallS = (down, heightM) => (heightM <= 0 ? 0 : (Math.sqrt(down * down + 2 * GRAVITY_MPS2 * heightM) - down) / GRAVITY_MPS2);

/** Straight between the sensors that know, level beyond the outermost. */
function between(known, at) {
  let left = known[0];
  for (const right of known) {
    if (right.right_m >= at) {
      if (right === left || at <= left.right_m) return left.height_m.value;
      const share = (at - left.right_m) / (right.right_m - left.right_m);
      return left.height_m.value + share * (right.height_m.value - left.height_m.value);
    }
    left = right;
  }
  return left.height_m.value;
}

const mix = (a, b, share) => a + share * (b - a);

/** What is to be drawn, in m: arrays that last from frame to frame. */
class Scene {
  constructor(outlets, streams) {
    this.ground = new Float32Array(outlets);
    this.height = new Float32Array(outlets);
    this.lands = Array.from({ length: streams }, () => new Float32Array(outlets));
    this.known = false;
    this.true = false;
  }

  fits(about) {
    return this.ground.length === about.outlet_m.length && this.lands.length === about.outlet.streams.length;
  }

  /** The truth where there is a picture of it, else what the monitor knows. */
  show(lane, nowMs) {
    this.true = lane.picture !== null;
    if (this.true) this.showTruth(lane, Math.min(1, (nowMs - lane.pictureAt) / FRAME_MS));
    else this.showTold(lane);
  }

  showTruth({ before, picture }, share) {
    const n = this.ground.length;
    for (let i = 0; i < n; i++) {
      this.ground[i] = mix(before.ground[i], picture.ground[i], share) / 1000;
      this.height[i] = mix(before.h[i], picture.h[i], share) / 1000;
    }
    for (let k = 0; k < this.lands.length; k++) {
      const lands = this.lands[k];
      for (let i = 0; i < n; i++) {
        const to = picture.lands[k]?.[i] ?? null;
        lands[i] = to === null ? NaN : mix(before.lands[k]?.[i] ?? to, to, share) / 1000;
      }
    }
    this.known = true;
  }

  showTold({ about, live }) {
    const n = this.ground.length;
    const known = live ? live.heights.filter((sensor) => sensor.height_m.value !== null) : [];
    const pressure = live?.pressure_kPa.value ?? null;
    const flows = pressure !== null && pressure >= FLOWS_KPA;
    this.known = known.length > 0;
    this.ground.fill(0);
    for (let i = 0; i < n; i++) this.height[i] = this.known ? between(known, about.outlet_m[i]) : NaN;
    for (let k = 0; k < this.lands.length; k++) {
      const stream = about.outlet.streams[k];
      const { right, down } = leaves(stream, about.outlet, pressure ?? 0, about.sg);
      for (let i = 0; i < n; i++) this.lands[k][i] = this.known && flows ? about.outlet_m[i] + stream.offset_m + right * fallS(down, this.height[i]) : NaN;
    }
  }
}

export class RearView {
  constructor(canvas, note) {
    this.canvas = canvas;
    this.note = note;
    this.pen = canvas.getContext("2d");
    this.wide = 0;
    this.drawn = 0;
    this.resize();
    new ResizeObserver(() => this.resize()).observe(canvas);
  }

  resize() {
    const scale = window.devicePixelRatio || 1;
    const wide = this.canvas.clientWidth || 300;
    if (wide === this.wide) return;
    this.wide = wide;
    this.canvas.width = Math.round(wide * scale);
    this.canvas.height = Math.round(HIGH * scale);
    this.pen.setTransform(scale, 0, 0, scale, 0, 0);
    this.dirty = true;
  }

  draw(lane, nowMs) {
    const { pen, wide } = this;
    pen.clearRect(0, 0, wide, HIGH);
    if (!lane.about) return;
    this.drawn++;
    const half = lane.about.machine.half_width_m;
    const perM = (wide - 24) / (2 * half);
    if (!this.scene?.fits(lane.about)) this.scene = new Scene(lane.about.outlet_m.length, lane.about.outlet.streams.length);
    const now = this.scene;
    now.show(lane, nowMs);
    const at = lane.about.outlet_m;
    const n = at.length;
    const x = (m) => wide / 2 + m * perM;
    const y = (m) => HIGH - GROUND_UP - m * PX_PER_M_UP;
    const spacing = n > 1 ? at[1] - at[0] : 1;
    // Straight between outlets, so that streams end on the line that is drawn.
    const groundAt = (m) => {
      const place = Math.max(0, Math.min(n - 1.001, (m - at[0]) / spacing));
      const i = Math.floor(place);
      return mix(now.ground[i], now.ground[Math.min(n - 1, i + 1)], place - i);
    };
    this.ground(now, x, y, at);
    if (now.known) {
      this.window(lane, now, x, y, at);
      this.streams(lane, now, x, y, at, groundAt);
      this.boom(lane, now, x, y, at);
    }
    this.heights(lane, x);
    const times = (PX_PER_M_UP / perM).toFixed(0);
    const said = now.true ? fill(words.rearTruth, times) : lane.live ? fill(words.rearTold, times, lane.live.heights.length) : words.waiting;
    if (this.note.textContent !== said) this.note.textContent = said;
  }

  ground(now, x, y, at) {
    const { pen, wide } = this;
    pen.beginPath();
    pen.moveTo(0, HIGH);
    pen.lineTo(0, y(now.ground[0]));
    for (let i = 0; i < at.length; i++) pen.lineTo(x(at[i]), y(now.ground[i]));
    pen.lineTo(wide, y(now.ground[at.length - 1]));
    pen.lineTo(wide, HIGH);
    pen.closePath();
    pen.fillStyle = now.true ? "#cdbb9b" : "#e4e0d8";
    pen.fill();
    pen.lineWidth = 3;
    pen.strokeStyle = "#4d3b23";
    if (!now.true) pen.setLineDash([10, 6]);
    pen.stroke();
    pen.setLineDash([]);
  }

  window(lane, now, x, y, at) {
    const window = lane.live?.window;
    if (!window || window.low_m === null) return;
    const { pen } = this;
    pen.strokeStyle = "#00573a";
    pen.lineWidth = 1.5;
    pen.setLineDash([3, 4]);
    for (const m of [window.low_m, window.high_m]) {
      // Where every height will do there is no limit to draw.
      if (m <= 0 || m >= TALLEST_LOOKED_AT_M) continue;
      pen.beginPath();
      for (let i = 0; i < at.length; i++) pen.lineTo(x(at[i]), y(now.ground[i] + m));
      pen.stroke();
    }
    pen.setLineDash([]);
  }

  streams(lane, now, x, y, at, groundAt) {
    const { pen } = this;
    const about = lane.about;
    const pressure = lane.live?.pressure_kPa.value ?? about.outlet.rated_kPa;
    pen.strokeStyle = "#14507d";
    pen.lineWidth = 1;
    pen.beginPath();
    for (let k = 0; k < about.outlet.streams.length; k++) {
      const stream = about.outlet.streams[k];
      const { down } = leaves(stream, about.outlet, pressure, about.sg);
      for (let i = 0; i < at.length; i++) {
        const land = now.lands[k][i];
        if (!Number.isFinite(land)) continue;
        const top = now.ground[i] + now.height[i];
        const from = at[i] + stream.offset_m;
        // A parabola: its middle control point lies on the tangent at the hole, half way across.
        pen.moveTo(x(from), y(top));
        pen.quadraticCurveTo(x((from + land) / 2), y(top - (down * fallS(down, now.height[i])) / 2), x(land), y(groundAt(land)));
      }
    }
    pen.stroke();
  }

  boom(lane, now, x, y, at) {
    const { pen } = this;
    const window = lane.live?.window;
    pen.strokeStyle = "#000";
    pen.lineWidth = 4;
    pen.lineJoin = "round";
    pen.beginPath();
    for (let i = 0; i < at.length; i++) pen.lineTo(x(at[i]), y(now.ground[i] + now.height[i]));
    pen.stroke();
    if (!now.true && lane.live) {
      // The sensors, which are all that the monitor has of the heights.
      pen.fillStyle = "#fff";
      pen.lineWidth = 2;
      for (const sensor of lane.live.heights) {
        if (sensor.height_m.value === null) continue;
        pen.beginPath();
        pen.arc(x(sensor.right_m), y(sensor.height_m.value), 5, 0, 2 * Math.PI);
        pen.fill();
        pen.stroke();
      }
    }
    if (!window || window.low_m === null) return;
    // A mark that points the way the boom has to go, on every outlet outside the window.
    pen.fillStyle = "#7a0016";
    pen.beginPath();
    for (let i = 0; i < at.length; i++) {
      const way = now.height[i] < window.low_m ? -1 : now.height[i] > window.high_m ? 1 : 0;
      if (way === 0) continue;
      const px = x(at[i]);
      const py = y(now.ground[i] + now.height[i]) + way * 5;
      pen.moveTo(px - 4, py);
      pen.lineTo(px + 4, py);
      pen.lineTo(px, py + way * 8);
    }
    pen.fill();
  }

  /** What stands under the three parts of the boom; worked out once for each message of the monitor. */
  words({ live }) {
    if (this.saidOf === live && this.saidIn === unit("height")) return;
    this.saidOf = live;
    this.saidIn = unit("height");
    this.says = live.segments.map((segment) => {
      const h = segment.height_m.value;
      const out = h === null || live.window.low_m === null ? "" : h < live.window.low_m ? words.tooLow : h > live.window.high_m ? words.tooHigh : "";
      return { name: segment.name, place: words.places[segment.name] ?? segment.name, height: text(h, "height"), out };
    });
    const label = this.says.map(({ place, height, out }) => `${place} ${height} ${out}`.trim()).join(", ");
    if (this.label !== label && (!this.labelAt || performance.now() - this.labelAt > 1000)) {
      this.label = label;
      this.labelAt = performance.now();
      this.canvas.setAttribute("aria-label", label);
    }
  }

  heights(lane, x) {
    const { pen, wide } = this;
    if (!lane.live) return;
    this.words(lane);
    pen.font = wide < 600 ? "600 13px system-ui, sans-serif" : "600 15px system-ui, sans-serif";
    pen.textAlign = "center";
    const half = lane.about.machine.half_width_m;
    const middle = (half + lane.about.machine.hinge_m) / 2;
    const narrow = wide < TWO_LINES_PX;
    for (const { name, place, height, out } of this.says) {
      const at = Math.max(56, Math.min(wide - 56, x(name === "left" ? -middle : name === "right" ? middle : 0)));
      pen.fillStyle = "#000";
      if (narrow) {
        pen.fillText(place, at, HIGH - 44);
        pen.fillText(height, at, HIGH - 27);
      } else {
        pen.fillText(place + " " + height, at, HIGH - 30);
      }
      pen.fillStyle = "#7a0016";
      if (out) pen.fillText(out, at, HIGH - 10);
    }
  }
}
