import words from "./words.js";

/** One request; {json} or {said}, which is a sentence, and {gone} where the server has forgotten what was asked of. */
export async function ask(path, body) {
  try {
    const answer = await fetch(path, body ? { method: "POST", body: JSON.stringify(body) } : {});
    if (answer.ok) return { json: await answer.json() };
    return { said: (await answer.text()).trim(), gone: answer.status === 404 };
  } catch {
    return { said: words.failed, lost: true };
  }
}

/** An element with a class and words. */
export function make(tag, name = "", text = "") {
  const node = document.createElement(tag);
  if (name) node.className = name;
  if (text !== "") node.textContent = text;
  return node;
}

/** A labelled field. */
export function field(text, control, name = "") {
  const box = make("label", name);
  box.append(make("span", "", text), control);
  return box;
}

export function options(entries, chosen) {
  const select = document.createElement("select");
  for (const [value, text] of entries) {
    const option = make("option", "", text);
    option.value = value;
    select.append(option);
  }
  if (chosen !== undefined && entries.some(([value]) => value === chosen)) select.value = chosen;
  return select;
}

/** Ports to choose from, as what is sent for each. */
export function sources(about, alsoByHand) {
  const b = words.bench;
  const all = [["simulated", b.simulated]];
  if (about.rig) all.push(["rig", b.ofRig.replace("{0}", about.rig)]);
  for (const port of about.ports) all.push([`port ${port.device}`, `${port.device}, ${port.title}`]);
  if (alsoByHand) all.push(["by_hand", b.byHand]);
  return all;
}

export const source = (chosen) => (chosen.startsWith("port ") ? { source: "port", device: chosen.slice(5) } : { source: chosen });
