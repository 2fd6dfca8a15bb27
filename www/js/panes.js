// On a small screen: one pane at a time, chosen at the foot of the screen; the strip docks above it on the other two.

import { attr, h } from "./dom.js";
import { t } from "./text.js";

const PANES = ["bench", "strip", "sheet"];

/** Makes the switch. Returns show(pane) and setBench(there): a recording has no bench. */
export function makePanes(nav) {
  const buttons = PANES.map((pane) => h("button", { type: "button", class: "pane-tab", data: { pane }, onclick: () => show(pane) }, t(`pane-${pane}`)));
  nav.replaceChildren(...buttons);
  nav.setAttribute("aria-label", t("pane-title"));
  const show = (pane) => {
    document.body.dataset.pane = pane;
    for (const one of buttons) attr(one, "aria-current", one.dataset.pane === pane ? "true" : null);
    scrollTo({ top: 0 });
    document.dispatchEvent(new CustomEvent("pane-shown"));
  };
  document.addEventListener("pane", (event) => show(event.detail));
  return { show, setBench: (there) => (buttons[0].hidden = !there) };
}
