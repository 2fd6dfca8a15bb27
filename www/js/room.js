// @ts-check
// No work makes room by itself: when a device keeps as many attempts as it may, whoever begins another is asked.

import { asked } from "./ask.js";
import { dialog as question, h } from "./dom.js";
import { forgetAttempt, keptAttempts, MOST_ATTEMPTS, roomFor } from "./store.js";
import { agoText, t } from "./text.js";
import { button } from "./widgets.js";

/**
 * Asks, where there is no room for an attempt: the older half of one's own may go; nobody else's. Whoever goes back begins nothing.
 * @param {string} key
 */
export async function askRoom(key) {
  if (roomFor(key)) return;
  const mine = keptAttempts();
  const going = mine.slice(Math.floor(mine.length / 2));
  const dialog = question();
  const list = h("ul", {}, going.slice(0, 6).map(({ title, scenario, at }) => h("li", {}, `${title ?? scenario}, ${agoText(at)}`)));
  dialog.returnValue = "";
  dialog.replaceChildren(h("div", {}, h("h2", { id: "ask-h" }, t("room-title", { n: MOST_ATTEMPTS })), h("p", {}, t(going.length ? "room-text" : "room-others", { n: going.length })), going.length > 0 && list,
    h("div", { class: "row" }, going.length > 0 && button(t("room-forget", { n: going.length }), () => dialog.close("forget"), { kind: "btn-strong" }), button(t("room-without"), () => dialog.close("without"), { autofocus: going.length === 0 }), button(t("room-back"), () => dialog.close("back"), { kind: "btn-plain" }))));
  await asked(dialog);
  if (dialog.returnValue === "back") {
    location.hash = "#";
    await new Promise(() => {}); // nothing is begun: the navigation that waits here gives way to the one to the start
  }
  if (dialog.returnValue === "forget") await Promise.all(going.map((one) => forgetAttempt(one.key)));
}
