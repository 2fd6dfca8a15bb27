// @ts-check
// Tells on a screen that something could not be read and lies aside.

import { aside } from "../device.js";
import { h } from "../dom.js";
import { bringTexts, t } from "../text.js";

/**
 * Words for what was laid aside since the last time, or null. before: how many lay there before the screen was made.
 * @param {number} before
 */
export async function asideNote(before) {
  const n = aside().length - before;
  if (n <= 0) return null;
  await bringTexts("device");
  return h("p", { class: "calm", role: "status" }, t("device-aside_some", { n }), " ", h("a", { href: "#device" }, t("device-aside_go")));
}
