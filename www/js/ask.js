// One question in a dialog: whether to go on with a kept attempt.

import { h } from "./dom.js";
import { t } from "./text.js";

/** Asks; resolves true to resume, false to start afresh (also when the dialog is closed by Escape: nothing is lost yet). */
export function askResume(kept) {
  const dialog = document.getElementById("ask");
  const minutes = Math.max(0, Math.round((Date.now() - kept.at) / 60000));
  const when = minutes < 1 ? t("resume.now") : minutes < 90 ? t("resume.minutes", { n: minutes }) : minutes < 2880 ? t("resume.hours", { n: Math.round(minutes / 60) }) : t("resume.days", { n: Math.round(minutes / 1440) });
  return new Promise((done) => {
    const answer = (yes) => () => dialog.close(yes ? "resume" : "fresh");
    dialog.replaceChildren(h("h2", { id: "ask-h" }, t("resume.title")), h("p", {}, t("resume.text", { when })),
      h("div", { class: "row" }, h("button", { type: "button", class: "btn btn-strong", autofocus: true, onclick: answer(true) }, t("resume.yes")), h("button", { type: "button", class: "btn", onclick: answer(false) }, t("resume.no"))));
    dialog.returnValue = "";
    dialog.addEventListener("close", () => done(dialog.returnValue !== "fresh"), { once: true });
    dialog.showModal();
  });
}
