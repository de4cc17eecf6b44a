import words, { fill } from "./words.js";
import { text } from "./units.js";

const GRAVITY_MPS2 = 9.80665;
const HIGH = 230;
const GROUND_UP = 62;
const PX_PER_M_UP = 115;
const FRAME_MS = 45;
const FLOWS_KPA = 5;

/**
 * Where a stream lands without drag, m right of its outlet, and how long it falls, s: t = (−u + √(u² + 2 g h)) / g.
 * pressureKPa at the outlet; sg of the product.
 */
export function flight(stream, outlet, pressureKPa, sg, heightM) {
  const exit = stream.exit_mps * Math.sqrt(Math.max(0, pressureKPa) / (outlet.rated_kPa * sg));
  const down = exit * stream.down;
  const t = heightM < 0 ? 0 : (-down + Math.sqrt(down * down + 2 * GRAVITY_MPS2 * heightM)) / GRAVITY_MPS2;
  return { right: stream.offset_m + exit * stream.right * t, seconds: t, down };
}

/** Straight between the sensors that know, level beyond the outermost; null where none knows. */
function between(sensors, at) {
  const known = sensors.filter((sensor) => sensor.height_m.value !== null);
  if (known.length === 0) return null;
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

/** What is to be drawn: ground, heights and landings by outlet, in m. The truth where there is a picture of it, else what the monitor knows. */
function view(lane, nowMs) {
  const about = lane.about;
  const n = about.outlet_m.length;
  const streams = about.outlet.streams;
  const pressure = lane.live?.pressure_kPa.value ?? null;
  const out = { ground: new Float32Array(n), height: new Float32Array(n), lands: streams.map(() => new Float32Array(n)), known: true, true: lane.picture !== null };
  if (lane.picture) {
    const share = Math.min(1, (nowMs - lane.pictureAt) / FRAME_MS);
    const { before, picture } = lane;
    for (let i = 0; i < n; i++) {
      out.ground[i] = mix(before.ground[i], picture.ground[i], share) / 1000;
      out.height[i] = mix(before.h[i], picture.h[i], share) / 1000;
      for (let k = 0; k < out.lands.length; k++) {
        const to = picture.lands[k]?.[i];
        const from = before.lands[k]?.[i];
        out.lands[k][i] = to === null || to === undefined ? NaN : mix(from ?? to, to, share) / 1000;
      }
    }
    return out;
  }
  for (let i = 0; i < n; i++) {
    const h = lane.live ? between(lane.live.heights, about.outlet_m[i]) : null;
    out.height[i] = h ?? NaN;
    for (let k = 0; k < streams.length; k++) {
      out.lands[k][i] = h === null || pressure === null || pressure < FLOWS_KPA ? NaN : about.outlet_m[i] + flight(streams[k], about.outlet, pressure, about.sg, h).right;
    }
  }
  out.known = Number.isFinite(out.height[0]);
  return out;
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
    const now = view(lane, nowMs);
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
    const said = now.true ? fill(words.rearTruth, times) : fill(words.rearTold, times, lane.live?.heights.length ?? 0);
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
    for (const m of [window.low_m, Math.min(window.high_m, 1.4)]) {
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
      for (let i = 0; i < at.length; i++) {
        const land = now.lands[k][i];
        if (!Number.isFinite(land)) continue;
        const top = now.ground[i] + now.height[i];
        const { seconds, down } = flight(stream, about.outlet, pressure, about.sg, Math.max(0, now.height[i]));
        const from = at[i] + stream.offset_m;
        // A parabola: its middle control point lies on the tangent at the hole, half way across.
        pen.moveTo(x(from), y(top));
        pen.quadraticCurveTo(x((from + land) / 2), y(top - (down * seconds) / 2), x(land), y(groundAt(land)));
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

  heights(lane, x) {
    const { pen, wide } = this;
    const live = lane.live;
    if (!live) return;
    pen.fillStyle = "#000";
    pen.font = "600 15px system-ui, sans-serif";
    const half = lane.about.machine.half_width_m;
    const hinge = lane.about.machine.hinge_m;
    const places = { left: -(half + hinge) / 2, centre: 0, right: (half + hinge) / 2 };
    const says = [];
    for (const segment of live.segments) {
      const h = segment.height_m.value;
      const out = h === null || live.window.low_m === null ? "" : h < live.window.low_m ? "▼ " + words.tooLow : h > live.window.high_m ? "▲ " + words.tooHigh : "";
      const said = `${words.places[segment.name] ?? segment.name} ${text(h, "height")}`;
      says.push(said + (out ? " " + out : ""));
      pen.textAlign = "center";
      const at = Math.max(56, Math.min(wide - 56, x(places[segment.name] ?? 0)));
      pen.fillStyle = "#000";
      pen.fillText(said, at, HIGH - 30);
      pen.fillStyle = "#7a0016";
      if (out) pen.fillText(out, at, HIGH - 10);
    }
    const label = says.join(", ");
    if (this.said !== label && (!this.saidAt || performance.now() - this.saidAt > 1000)) {
      this.said = label;
      this.saidAt = performance.now();
      this.canvas.setAttribute("aria-label", label);
    }
  }
}
