import words, { fill } from "./words.js";
import { text } from "./units.js";
import { NOTHING } from "./lane.js";

const TOLD_HIGH = 8;
/** Where the strip of rows begins: under that of the monitor and two lines of words. */
const TOP = 3 * TOLD_HIGH + 34;
const HIDDEN_HIGH = 138;
const CELL_PX = 4;
const HATCH_PX = CELL_PX;
const AXIS_HIGH = 24;
const UNDER_HATCHED = 80;

/** OKLab to 8-bit sRGB (B. Ottosson, 2020). */
function rgb(L, a, b) {
  const l = (L + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (L - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (L - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s, -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s, -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s].map((v) => {
    const c = Math.max(0, Math.min(1, v));
    return Math.round(255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055));
  });
}

/**
 * Colours for 0 to 200 % of the target: orange where a row got less, blue where it got more, straight lines through OKLab, so that
 * equal steps look equal, and both ends equally dark. Orange and blue differ for every common kind of colour blindness.
 */
export const SHARES = Array.from({ length: 201 }, (_, percent) => {
  const away = Math.abs(percent - 100) / 100;
  const [a, b] = percent < 100 ? [0.075, 0.095] : [-0.03, -0.13];
  return rgb(0.97 - 0.49 * away, a * away, b * away);
});
/** Greys for a row CV from 0 to 0.4 and more. */
const GREYS = Array.from({ length: 101 }, (_, i) => rgb(0.97 - 0.0067 * i, 0, 0));
// As the four bytes of a pixel, so that a strip is drawn by looking up.
const pixel = ([r, g, b]) => new Uint32Array(new Uint8Array([r, g, b, 255]).buffer)[0];
const UNKNOWN = pixel([214, 214, 214]);
const SHARE_PIXELS = SHARES.map(pixel);
const HATCH_PIXELS = SHARES.map((colour) => pixel(colour.map((v) => v * 0.45)));
const GREY_PIXELS = GREYS.map(pixel);

export class Strip {
  constructor(canvas, readout) {
    this.canvas = canvas;
    this.readout = readout;
    this.pen = canvas.getContext("2d");
    this.cursor = null;
    this.sheets = {};
    canvas.addEventListener("pointermove", (event) => this.point(event.offsetX, event.offsetY));
    canvas.addEventListener("keydown", (event) => this.key(event));
    new ResizeObserver(() => { this.drawnVersion = -1; }).observe(canvas);
  }

  high(lane) {
    return TOP + (lane.rows ? lane.rows.rows : HIDDEN_HIGH) + AXIS_HIGH;
  }

  draw(lane, changes) {
    if (!lane.about) return;
    this.lane = lane;
    const wide = Math.max(200, this.canvas.clientWidth || 300);
    const high = this.high(lane);
    if (this.canvas.width !== wide || this.canvas.height !== high) {
      this.canvas.width = wide;
      this.canvas.height = high;
      this.canvas.style.height = high + "px";
    }
    const cells = Math.floor(wide / CELL_PX);
    const end = Math.max(lane.parts.end, lane.rows ? lane.rows.end : 0);
    const first = Math.max(0, end - cells);
    this.first = first;
    const { pen } = this;
    pen.fillStyle = "#fff";
    pen.fillRect(0, 0, wide, high);
    pen.fillStyle = "#000";
    pen.font = "600 13px system-ui, sans-serif";
    pen.textAlign = "left";
    pen.fillText(`${words.stripTold} (${["left", "centre", "right"].map((part) => words.places[part]).join(", ")})`, 0, 12);
    this.parts(lane.parts, cells, first);
    const top = TOP;
    this.top = top;
    const rows = lane.rows ? lane.rows.rows : HIDDEN_HIGH;
    if (lane.rows) {
      pen.fillText(words.stripTruth, 0, top - 4);
      this.rows(lane.rows, cells, first, top);
    } else {
      pen.strokeStyle = "#555";
      pen.setLineDash([6, 6]);
      pen.strokeRect(1, top, wide - 2, rows - 2);
      pen.setLineDash([]);
      pen.textAlign = "center";
      pen.fillText(words.stripHidden, wide / 2, top + rows / 2, wide - 10);
    }
    this.bottom = top + rows;
    this.marks(changes, first, cells, wide);
    this.axis(first, cells, wide);
  }

  /** Room for a picture, kept from one drawing to the next; null where nothing is to be drawn yet. */
  sheet(name, ground, cells, first, high) {
    const wide = Math.max(0, Math.min(cells, ground.end - first)) * CELL_PX;
    if (wide === 0) return null;
    let sheet = this.sheets[name];
    if (!sheet || sheet.image.width !== wide || sheet.image.height !== high) {
      const image = this.pen.createImageData(wide, high);
      sheet = this.sheets[name] = { image, wide, pixels: new Uint32Array(image.data.buffer) };
    }
    return sheet;
  }

  parts(ground, cells, first) {
    const sheet = this.sheet("parts", ground, cells, first, 3 * TOLD_HIGH);
    if (!sheet) return;
    const { pixels, wide } = sheet;
    for (let cell = 0; cell * CELL_PX < wide; cell++) {
      const from = ground.from(first + cell);
      for (let part = 0; part < 3; part++) {
        const cv = from < 0 ? NOTHING : ground.cells[from + part];
        const pixel = cv === NOTHING ? UNKNOWN : GREY_PIXELS[Math.min(100, cv)];
        for (let py = part * TOLD_HIGH; py < (part + 1) * TOLD_HIGH; py++) pixels.fill(pixel, py * wide + cell * CELL_PX, py * wide + (cell + 1) * CELL_PX);
      }
    }
    this.pen.putImageData(sheet.image, 0, 16);
  }

  rows(ground, cells, first, top) {
    const sheet = this.sheet("rows", ground, cells, first, ground.rows);
    if (!sheet) return;
    const { pixels, wide } = sheet;
    for (let cell = 0; cell * CELL_PX < wide; cell++) {
      const from = ground.from(first + cell);
      for (let row = 0; row < ground.rows; row++) {
        const percent = from < 0 ? NOTHING : ground.cells[from + row];
        const pixel = percent === NOTHING ? UNKNOWN : SHARE_PIXELS[Math.min(200, percent)];
        const at = row * wide + cell * CELL_PX;
        for (let i = 0; i < CELL_PX; i++) pixels[at + i] = pixel;
        // A cell is as wide as the hatching repeats: one dark pixel in each of its rows.
        if (percent < UNDER_HATCHED) pixels[at + ((HATCH_PX - (row % HATCH_PX)) % HATCH_PX)] = HATCH_PIXELS[percent];
      }
    }
    this.pen.putImageData(sheet.image, 0, top);
  }

  marks(changes, first, cells, wide) {
    const { pen } = this;
    for (const change of changes) {
      const px = (change.x - first) * CELL_PX;
      if (px < 0 || px > wide) continue;
      pen.fillStyle = "#000";
      pen.fillRect(px - 1, 16, 2, this.bottom - 16);
      pen.beginPath();
      pen.moveTo(px - 6, 16);
      pen.lineTo(px + 6, 16);
      pen.lineTo(px, 26);
      pen.fill();
    }
  }

  axis(first, cells, wide) {
    const { pen } = this;
    pen.fillStyle = "#000";
    pen.font = "600 13px system-ui, sans-serif";
    const step = wide < 500 ? 25 : 50;
    for (let m = Math.ceil(first / step) * step; m < first + cells; m += step) {
      const px = (m - first) * CELL_PX;
      pen.fillRect(px, this.bottom, 1, 5);
      pen.textAlign = px < 20 ? "left" : "center";
      pen.fillText(text(m, "distance"), px, this.bottom + 18);
    }
    if (this.cursor && this.lane.rows) {
      const px = (this.cursor.cell - first) * CELL_PX;
      pen.strokeStyle = "#000";
      pen.lineWidth = 2;
      pen.strokeRect(px - 3, this.top + this.cursor.row - 5, CELL_PX + 6, 10);
    }
  }

  point(px, py) {
    if (!this.lane?.rows || py < this.top || py >= this.bottom) return;
    this.cursor = { cell: this.first + Math.floor(px / CELL_PX), row: Math.floor(py - this.top) };
    this.tell();
  }

  key(event) {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!way || !this.lane?.rows) return;
    event.preventDefault();
    this.cursor ??= { cell: Math.max(0, this.lane.rows.end - 1), row: Math.floor(this.lane.rows.rows / 2) };
    const times = event.shiftKey ? 10 : 1;
    this.cursor.cell = Math.max(0, Math.min(this.lane.rows.end - 1, this.cursor.cell + times * way[0]));
    this.cursor.row = Math.max(0, Math.min(this.lane.rows.rows - 1, this.cursor.row + times * way[1]));
    this.tell();
  }

  tell() {
    const { cell, row } = this.cursor;
    const percent = this.lane.rows?.at(cell, row) ?? NOTHING;
    const rightM = this.lane.row0 + row * this.lane.about.row_m;
    const side = fill(rightM < 0 ? words.stripSide.left : words.stripSide.right, text(Math.abs(rightM), "width"));
    this.readout.textContent = percent === NOTHING ? words.stripNothing : fill(words.stripAt, text(cell, "distance"), side, percent + " %");
    this.drawnVersion = -1;
  }
}

/** The scale in words and colours. */
export function legend() {
  const box = document.createElement("p");
  box.className = "legend";
  const bar = document.createElement("canvas");
  bar.width = 201;
  bar.height = 16;
  bar.setAttribute("role", "img");
  bar.setAttribute("aria-label", `${words.legendUnder} 0 %, ${words.legendMean} 100 %, ${words.legendOver} 200 %`);
  const pen = bar.getContext("2d");
  for (let percent = 0; percent <= 200; percent++) {
    pen.fillStyle = `rgb(${SHARES[percent].join(" ")})`;
    pen.fillRect(percent, 0, 1, 16);
  }
  pen.fillStyle = "#000";
  for (let x = 0; x < UNDER_HATCHED; x++) for (let y = 0; y < 16; y++) if ((x + y) % 6 === 0) pen.fillRect(x, y, 1, 1);
  pen.fillRect(100, 0, 1, 16);
  box.append(`0 % ${words.legendUnder} `, bar, ` ${words.legendOver} 200 %. ${words.legendHatch}.`);
  return box;
}
