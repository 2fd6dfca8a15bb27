// @ts-check
// No work makes room by itself: when a device keeps as many attempts as it may, whoever begins another is asked.

import { choose } from "./ask.js";
import { h } from "./dom.js";
import { forgetAttempt, keptAttempts, MOST_ATTEMPTS, roomFor } from "./store.js";
import { agoText, t } from "./text.js";

/**
 * Asks, where there is no room for an attempt: the older half of one's own may go; nobody else's. Whoever goes back begins nothing.
 * @param {string} key
 */
export async function askRoom(key) {
  if (roomFor(key)) return;
  const mine = keptAttempts();
  const going = mine.slice(Math.floor(mine.length / 2));
  const list = h("ul", {}, going.slice(0, 6).map(({ title, scenario, at }) => h("li", {}, `${title ?? scenario}, ${agoText(at)}`)));
  const some = going.length > 0;
  const answer = await choose(t("room-title", { n: MOST_ATTEMPTS }), [h("p", {}, t(some ? "room-text" : "room-others", { n: going.length })), some && list],
    [...(some ? [/** @type {[string, string]} */ (["forget", t("room-forget", { n: going.length })])] : []), ["without", t("room-without")], ["back", t("room-back"), "btn-plain"]]);
  if (answer === "back") {
    location.hash = "#";
    await new Promise(() => {}); // nothing is begun: the navigation that waits here gives way to the one to the start
  }
  if (answer === "forget") await Promise.all(going.map((one) => forgetAttempt(one.key)));
}
