// @ts-check
// The tools in the page's head: other scenarios, the faults and their tests, a recording of one's own, one's own pulse, theme and language.

import { byId as $, h } from "./dom.js";
import { icon } from "./icons.js";
import { lab } from "./lab.js";
import { languageChoice } from "./language.js";
import { goHome } from "./open/home.js";
import { chooseRecording } from "./open/recording.js";
import { packed } from "./packed.js";
import { t } from "./text.js";
import { themeChoice } from "./theme.js";

/** @param {string} key @param {string} pic @param {() => unknown} onclick */
const tool = (key, pic, onclick) => h("button", { type: "button", class: "btn", title: t(key), onclick }, icon(pic), h("span", { class: "word" }, t(key)));

/** To the list itself: whoever asks for the scenarios has seen the rest of the first screen. */
function toList() {
  const list = document.getElementById("scenarios-h") ?? $("main");
  list.focus({ preventScroll: true });
  list.scrollIntoView({ block: "start" });
}

export function makeTools() {
  const others = packed ? [] : [tool("tools-scenarios", "list", () => goHome().then(toList))];
  const language = languageChoice(() => lab()?.session.saveNow());
  // In a narrow head they are entries of one menu, each by its name.
  const ways = h("div", { class: "tools-ways", id: "tools-ways" }, others, tool("tools-faults", "cards", () => (location.hash = "#faults")), tool("tools-open", "open", chooseRecording), tool("tools-own", "pulse", () => (location.hash = "#own")));
  /** @type {HTMLButtonElement} */
  const menu = h("button", { type: "button", class: "btn tools-menu", "aria-expanded": "false", "aria-controls": "tools-ways", title: t("tools-menu"), onclick: () => turn(!isOpen()) }, icon("menu"), h("span", { class: "word" }, t("tools-menu")));
  /** @returns {boolean} */
  const isOpen = () => menu.getAttribute("aria-expanded") === "true";
  /** @param {boolean} open */
  const turn = (open) => menu.setAttribute("aria-expanded", String(open));
  const box = h("div", { class: "tools-box", onkeydown: (event) => {
    if (event.key !== "Escape" || !isOpen()) return;
    turn(false);
    menu.focus();
  } }, menu, ways);
  ways.addEventListener("click", () => turn(false));
  addEventListener("pointerdown", (event) => event.target instanceof Node && !box.contains(event.target) && turn(false));
  $("tools").replaceChildren(box, themeChoice(), ...(language ? [language] : []));
  $("brand").addEventListener("click", (event) => {
    event.preventDefault();
    goHome();
  });
}
