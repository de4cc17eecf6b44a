import words from "./words.js";

// Inside all is SI with litres; these are the only places where a number changes its unit.
const SYSTEMS = {
  metric: {
    rate: [1, 0, "L/ha"], height: [1, 2, "m"], speed: [3.6, 1, "km/h"], pressure: [1, 0, "kPa"], distance: [1, 0, "m"], width: [1, 2, "m"], small: [1, 4, "m"], flow: [1, 1, "L/min"],
  },
  us: {
    // US gallon 231 in³, acre 43,560 ft² with the foot of 0.3048 m (NIST SP 811, appendix B); inch 25.4 mm, mile 1609.344 m, psi 6.894757 kPa.
    rate: [0.1069066, 1, "US gal/ac"], height: [39.37008, 1, "in"], speed: [2.236936, 1, "mph"], pressure: [0.1450377, 1, "psi"],
    distance: [3.280840, 0, "ft"], width: [3.280840, 1, "ft"], small: [39.37008, 2, "in"], flow: [0.2641721, 1, "US gal/min"],
  },
};
let system = localStorage.getItem("units") === "us" ? "us" : "metric";
const listeners = [];

export const units = () => system;
export const unit = (quantity) => SYSTEMS[system][quantity][2];
export const shown = (value, quantity) => value * SYSTEMS[system][quantity][0];
export const inside = (value, quantity) => value / SYSTEMS[system][quantity][0];
export const number = (value, quantity) => shown(value, quantity).toFixed(SYSTEMS[system][quantity][1]);
export const text = (value, quantity) => (value === null || value === undefined ? words.notKnown : number(value, quantity) + " " + unit(quantity));
export const temperature = (celsius) => (system === "us" ? (celsius * 1.8 + 32).toFixed(0) + " °F" : celsius.toFixed(1) + " °C");
export const decimals = (quantity) => SYSTEMS[system][quantity][1];
export const percent = (ratio) => (ratio === null || ratio === undefined ? words.notKnown : (100 * ratio).toFixed(0) + " %");

/** Has something drawn anew whenever the units change. */
export const onUnits = (listener) => listeners.push(listener);

/** Fills the choice of units and switches all at once. */
export function chooseUnits(fieldset) {
  for (const name of Object.keys(SYSTEMS)) {
    const choice = document.createElement("label");
    const input = document.createElement("input");
    input.type = "radio";
    input.name = "units";
    input.value = name;
    input.checked = name === system;
    input.addEventListener("change", () => {
      system = name;
      localStorage.setItem("units", name);
      for (const listener of listeners) listener();
    });
    choice.append(input, words.unitNames[name]);
    fieldset.append(choice);
  }
}
