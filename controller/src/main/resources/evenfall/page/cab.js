import words from "./words.js";

// Shapes tell priorities apart without colour.
const SHAPES = {
  high: "M26 3 50 47H2z",
  medium: "M26 2 50 26 26 50 2 26z",
  low: "M26 4a22 22 0 1 0 .1 0z",
};
const STALE_MS = 1500;
const BACK_MS = 6000;
const UNITS = {
  metric: { rate: [1, 0, "L/ha"], height: [1, 2, "m"], speed: [3.6, 1, "km/h"], pressure: [1, 0, "kPa"] },
  us: { rate: [0.1069066, 1, "US gal/ac"], height: [39.37008, 1, "in"], speed: [2.236936, 1, "mph"], pressure: [0.1450377, 0, "psi"] },
};
const TALLEST_M = 1.2;
const $ = (id) => document.getElementById(id);
let rig = null;
let heardAt = null;
let unknownSeen = false;
let backAt = null;
const startedAt = performance.now();

const fill = (text, ...values) => text.replace(/\{(\d)\}/g, (whole, i) => values[i]);
const set = (id, text) => {
  if ($(id).textContent !== text) $(id).textContent = text;
};
function measure(value, quantity) {
  const [times, decimals, unit] = UNITS[rig.units][quantity];
  return [(value * times).toFixed(decimals), unit];
}
const span = (ms) => (ms < 90000 ? (ms / 1000).toFixed(0) + " s" : (ms / 60000).toFixed(0) + " min");
const text = (value, quantity) => measure(value, quantity).join(" ");

function known(id, quantity, name) {
  const value = quantity.value;
  $(id).classList.toggle("unknown", value === null);
  set(id, value === null ? words.notKnown : text(value, name));
  set(id + "-why", value === null ? quantity.why : "");
}

function showRate(live) {
  const rate = live.rate_Lpha.value;
  const error = live.rate_error_pct.value;
  $("rate-now").classList.toggle("unknown", rate === null);
  set("rate-now", rate === null ? words.notKnown : measure(rate, "rate")[0]);
  set("rate-unit", rate === null ? "" : UNITS[rig.units].rate[2]);
  const percent = error === null ? "" : Math.abs(error).toFixed(0) + " %";
  const wanted = text(live.target_Lpha, "rate");
  const phrase = error === null ? live.rate_error_pct.why : percent === "0 %" ? fill(words.rateEven, wanted) : fill(error > 0 ? words.rateOver : words.rateUnder, percent, wanted);
  set("rate-words", phrase);
  $("rate-mark").hidden = error === null;
  // The limits stand at a quarter and three quarters of the scale.
  if (error !== null) $("rate-mark").style.left = Math.max(1, Math.min(99, 50 + (25 * error) / rig.rate_error_pct_limit)) + "%";
}

function part(name) {
  let li = document.querySelector(`#parts li[data-part="${name}"]`);
  if (!li) {
    li = document.createElement("li");
    li.dataset.part = name;
    li.innerHTML = '<span class="part-name"></span><div class="gauge" aria-hidden="true"><i class="room"></i><i class="bar"></i></div><b class="part-height"></b><span class="part-rows"></span><span class="part-why"></span>';
    li.querySelector(".part-name").textContent = words.parts[name] || name;
    $("parts").append(li);
  }
  return li;
}

function showBoom(live) {
  const percent = (m) => Math.max(0, Math.min(100, (100 * m) / TALLEST_M)) + "%";
  for (const segment of live.segments) {
    const li = part(segment.name);
    const height = segment.height_m.value;
    const b = li.querySelector(".part-height");
    const said = height === null ? words.notKnown : text(height, "height");
    if (b.textContent !== said) b.textContent = said;
    b.classList.toggle("unknown", height === null);
    li.querySelector(".bar").hidden = height === null;
    if (height !== null) li.querySelector(".bar").style.bottom = percent(height);
    const room = li.querySelector(".room");
    room.hidden = live.window.low_m === null;
    const low = Math.max(rig.clearance_m, live.window.low_m ?? 0);
    const high = Math.min(rig.ceiling_m, live.window.high_m ?? 9);
    room.style.bottom = percent(low);
    room.style.top = `calc(100% - ${percent(high)})`;
    const rows = li.querySelector(".part-rows");
    const cv = segment.row_cv;
    const even = cv !== null && cv <= rig.row_cv_limit;
    rows.className = "part-rows " + (cv === null ? "unknown" : even ? "even" : "uneven");
    const got = cv === null ? words.rowsUnknown : fill(even ? words.rowsEven : words.rowsUneven, (100 * cv).toFixed(0) + " %");
    if (rows.textContent !== got) rows.textContent = got;
    const reasons = [height === null ? segment.height_m.why : null, cv === null ? segment.why : null].filter(Boolean);
    const why = [...new Set(reasons)].join("; ");
    const reason = li.querySelector(".part-why");
    if (reason.textContent !== why) reason.textContent = why;
  }
  set("window", windowWords(live));
}

function windowWords({ window, pressure_kPa, flow_Lpm }) {
  if (window.low_m === null) return pressure_kPa.value === null && flow_Lpm.value === null ? words.windowUnknown : words.windowNone;
  const round = (m) => text(m, "height").replace(/\.0+ /, " ");
  return window.low_m <= 0 ? fill(words.windowUpTo, round(window.high_m)) : fill(words.window, text(window.low_m, "height"), text(window.high_m, "height"));
}

function showLive(live) {
  heardAt = performance.now();
  if (!rig) return;
  showRate(live);
  showBoom(live);
  known("speed", live.speed_mps, "speed");
  known("pressure", live.pressure_kPa, "pressure");
  unknownSeen = live.rate_Lpha.value === null || live.segments.some((segment) => segment.row_cv === null);
  showCalm();
}

function showCalm() {
  $("calm").hidden = $("alerts").children.length > 0;
  $("calm").classList.toggle("partly", heardAt === null || unknownSeen);
  set("calm", heardAt === null ? words.waiting : unknownSeen ? words.calmUnknown : words.calm);
}

/** What is wrong, and where unless it is the whole boom. */
function title({ kind, place }) {
  const what = words.kinds[kind] || kind;
  return place === "boom" ? what : fill(words.at, what, words.parts[place] || place);
}

const RANK = { high: 0, medium: 1, low: 2 };

function showAlerts(list) {
  list.sort((a, b) => a.acknowledged - b.acknowledged || RANK[a.alert.priority] - RANK[b.alert.priority] || b.alert.raised_s - a.alert.raised_s);
  $("alerts").classList.toggle("many", list.length > 1);
  const focused = document.activeElement?.dataset?.key;
  $("alerts").replaceChildren(
    ...list.map(({ acknowledged, alert }) => {
      const li = document.createElement("li");
      li.className = `alert ${alert.priority}` + (acknowledged ? " seen" : "");
      const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
      svg.setAttribute("viewBox", "0 0 52 52");
      svg.setAttribute("aria-hidden", "true");
      const shape = document.createElementNS("http://www.w3.org/2000/svg", "path");
      shape.setAttribute("d", SHAPES[alert.priority]);
      svg.append(shape);
      const add = (name, content) => {
        const p = document.createElement("p");
        p.className = name;
        p.textContent = content;
        return p;
      };
      li.append(svg, add("what", title(alert)), add("act", alert.act), add("why", alert.why));
      if (acknowledged) {
        li.append(add("mark", words.seenMark));
      } else {
        const button = document.createElement("button");
        button.type = "button";
        button.textContent = words.seen;
        button.dataset.key = alert.kind + "/" + alert.place;
        button.setAttribute("aria-label", `${words.seen}: ${title(alert)}`);
        button.disabled = document.body.classList.contains("stale");
        button.addEventListener("click", () => seen(button, alert));
        li.append(button);
      }
      return li;
    }),
  );
  if (focused) document.querySelector(`button[data-key="${focused}"]`)?.focus();
  showCalm();
}

/** The box answers by marking the alert for everyone; until then it stands as it was. */
async function seen(button, alert) {
  button.disabled = true;
  const answer = await fetch("acknowledge", { method: "POST", body: JSON.stringify({ kind: alert.kind, place: alert.place }) }).catch(() => null);
  // 404: it has cleared meanwhile, and goes by itself.
  if (answer?.ok || answer?.status === 404 || !button.isConnected) return;
  button.disabled = false;
  let note = button.parentNode.querySelector(".failed");
  if (!note) {
    note = document.createElement("p");
    note.className = "failed";
    note.setAttribute("role", "alert");
    button.parentNode.append(note);
  }
  note.textContent = words.seenFailed;
}

function tick() {
  const ageMs = performance.now() - (heardAt ?? startedAt);
  const stale = ageMs > STALE_MS;
  if (stale !== document.body.classList.contains("stale")) {
    document.body.classList.toggle("stale", stale);
    for (const button of document.querySelectorAll("#alerts button")) button.disabled = stale;
    set("lost-words", stale ? words.lost : "");
    backAt = stale || heardAt === null ? null : performance.now();
    set("back", backAt === null ? "" : words.back);
  }
  if (backAt !== null && performance.now() - backAt > BACK_MS) {
    backAt = null;
    set("back", "");
  }
  set("age", heardAt === null ? "–" : fill(words.ageOf, (ageMs / 1000).toFixed(ageMs < 10000 ? 1 : 0)));
  $("lost").hidden = !stale;
  if (stale) set("lost-age", heardAt === null ? words.noneYet : fill(words.lostAge, span(ageMs)));
}

for (const [id, word] of [["warnings-title", "warnings"], ["rate-title", "rate"], ["boom-title", "boom"], ["speed-title", "speed"], ["pressure-title", "pressure"], ["age-title", "age"]]) set(id, words[word]);
showCalm();
setInterval(tick, 100);

function listen() {
  const source = new EventSource("live");
  source.addEventListener("rig", (event) => { rig = JSON.parse(event.data); document.title = "Evenfall " + rig.rig; });
  source.addEventListener("live", (event) => showLive(JSON.parse(event.data)));
  source.addEventListener("alerts", (event) => showAlerts(JSON.parse(event.data)));
  source.addEventListener("error", () => {
    // A browser gives up after an answer that is no stream, such as too many pages; this page never does.
    if (source.readyState === EventSource.CLOSED) setTimeout(listen, 2000);
  });
}
listen();
