// @ts-check
// One of three directions for a measure, as a group of radio buttons: for what is expected and for what is concluded.

import { h, newId } from "../dom.js";
import { t } from "../text.js";
/** @import { AskedExperiment, Direction, Measure } from '../types/experiment' */

/** @type {Direction[]} */
const DIRECTIONS = ["up", "down", "same"];

/** What is compared, in words. @param {AskedExperiment} asked */
export const fromTo = ({ conditions }) => t("experiment-from_to", { first: conditions[0].label, last: conditions[conditions.length - 1].label });

export class Directions {
  /** of: "expect" or "conclude". @param {"expect" | "conclude"} of @param {Measure} measure @param {() => unknown} changed */
  constructor(of, measure, changed) {
    const name = newId(of);
    this.measure = measure;
    this.inputs = DIRECTIONS.map((direction) => h("input", { type: "radio", name, value: direction, onchange: changed }));
    this.el = h("fieldset", { class: "experiment-choice" }, h("legend", {}, t(`experiment-measure-${measure}`)),
      this.inputs.map((input) => h("label", {}, input, h("span", {}, t(`experiment-${of}-${input.value}`)))));
  }

  /** @returns {Direction | null} */
  get chosen() {
    const found = this.inputs.find((input) => input.checked)?.value;
    return DIRECTIONS.find((one) => one === found) ?? null;
  }

  /** @param {Direction} direction */
  choose(direction) {
    for (const input of this.inputs) input.checked = input.value === direction;
  }
}
