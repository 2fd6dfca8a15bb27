// @ts-check
// The tools in the page's head: other scenarios, the faults and their tests, a recording of one's own, theme and language.

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
  $("tools").replaceChildren(...others, tool("tools-faults", "cards", () => (location.hash = "#faults")), tool("tools-open", "open", chooseRecording), themeChoice(), ...(language ? [language] : []));
  $("brand").addEventListener("click", (event) => {
    event.preventDefault();
    goHome();
  });
}
