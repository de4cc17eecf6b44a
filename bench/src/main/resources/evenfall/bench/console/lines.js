import uPlot from "./uplot.js";
import words, { fill } from "./words.js";
import { shown, unit, decimals } from "./units.js";

const GRID_S = 0.2;
const WINDOW_S = 90;
const QUANTITIES = [["h", "height"], ["rate", "rate"], ["p", "pressure"], ["cv", null]];
// Told and true differ by the dash, A and B by the width too; colour comes on top.
const STYLES = {
  A: { told: { stroke: "#000", width: 2.5 }, truth: { stroke: "#000", width: 2, dash: [7, 5] } },
  B: { told: { stroke: "#1c5fa8", width: 1.2 }, truth: { stroke: "#1c5fa8", width: 1.2, dash: [2, 4] } },
};
const FONT = "600 13px system-ui, sans-serif";

export class Lines {
  constructor(box) {
    this.box = box;
    this.charts = [];
    this.shape = "";
    new ResizeObserver(() => this.resize()).observe(box);
  }

  build(lanes, truth) {
    for (const chart of this.charts) chart.plot.destroy();
    this.box.replaceChildren();
    this.charts = QUANTITIES.map(([key, quantity]) => {
      const cell = document.createElement("figure");
      const title = document.createElement("figcaption");
      title.textContent = fill(words.charts[key], quantity ? unit(quantity) : "");
      cell.append(title);
      this.box.append(cell);
      const series = [{ label: words.time }];
      for (const lane of lanes) {
        for (const kind of truth ? ["told", "truth"] : ["told"]) {
          series.push({
            label: fill(words.series[kind], lane.name), ...STYLES[lane.name][kind], points: { show: false },
            value: (plot, v) => (v === null || v === undefined ? words.notKnown : v.toFixed(quantity ? decimals(quantity) : 0)),
          });
        }
      }
      const axis = { font: FONT, stroke: "#000", grid: { stroke: "#d0d0d0", width: 1 }, ticks: { stroke: "#555" } };
      const plot = new uPlot(
        {
          width: Math.max(220, cell.clientWidth), height: 170, series, cursor: { drag: { x: false, y: false } },
          scales: { x: { time: false }, y: { range: (p, low, high) => (low === null ? [0, 1] : high - low < 1e-6 ? [low - 0.5, high + 0.5] : [Math.min(low, low - 0.08 * (high - low)), high + 0.08 * (high - low)]) } },
          axes: [axis, { ...axis, size: 58 }], legend: { live: false },
        },
        [[0], ...series.slice(1).map(() => [null])],
        cell,
      );
      return { key, quantity, plot, cell };
    });
  }

  draw(lanes, truth, atS) {
    const shape = lanes.map((lane) => lane.name).join() + truth + unit("height");
    if (shape !== this.shape) {
      this.shape = shape;
      this.build(lanes, truth);
    }
    const first = Math.max(0, Math.ceil((atS - WINDOW_S) / GRID_S));
    const count = Math.max(1, Math.floor(atS / GRID_S + 1e-6) - first + 1);
    const x = Array.from({ length: count }, (_, i) => (first + i) * GRID_S);
    for (const { key, quantity, plot } of this.charts) {
      const data = [x];
      for (const lane of lanes) {
        for (const track of truth ? [lane.told, lane.truth] : [lane.told]) {
          const y = new Array(count).fill(null);
          const times = track.columns.t;
          const values = track.columns[key];
          for (let i = track.n - 1; i >= 0; i--) {
            const at = Math.round(times[i] / GRID_S) - first;
            if (at < 0) break;
            if (at < count && Number.isFinite(values[i])) y[at] = quantity ? shown(values[i], quantity) : 100 * values[i];
          }
          data.push(y);
        }
      }
      plot.setData(data);
    }
  }

  resize() {
    for (const { plot, cell } of this.charts) {
      const width = Math.max(220, cell.clientWidth);
      if (Math.abs(width - plot.width) > 1) plot.setSize({ width, height: 170 });
    }
  }
}
