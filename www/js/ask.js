// Questions in a dialog: whether to go on with a kept attempt; how fast a recording was sampled.

import { attr, h, newId, words } from "./dom.js";
import { agoText, t } from "./text.js";

/** Asks; resolves true to resume, false to start afresh (also when the dialog is closed by Escape: nothing is lost yet). */
export function askResume(kept) {
  const dialog = document.getElementById("ask");
  const when = agoText(kept.at);
  return new Promise((done) => {
    const answer = (yes) => () => dialog.close(yes ? "resume" : "fresh");
    dialog.replaceChildren(h("h2", { id: "ask-h" }, t("resume-title")), h("p", {}, t("resume-text", { when })),
      h("div", { class: "row" }, h("button", { type: "button", class: "btn btn-strong", autofocus: true, onclick: answer(true) }, t("resume-yes")), h("button", { type: "button", class: "btn", onclick: answer(false) }, t("resume-no"))));
    dialog.returnValue = "";
    dialog.addEventListener("close", () => done(dialog.returnValue !== "fresh"), { once: true });
    dialog.showModal();
  });
}

/** Asks for the sampling rate of a recording that does not tell it; resolves to Hz, or null when the student gives up. */
export function askRate(file, { low, high }) {
  const dialog = document.getElementById("ask");
  const id = newId("rate"), problemId = newId("problem");
  const input = h("input", { id, class: "txt", inputmode: "decimal", autocomplete: "off", autofocus: true, "aria-describedby": problemId });
  const problem = h("p", { class: "problem", id: problemId, role: "status" });
  return new Promise((done) => {
    let found = null;
    const take = (event) => {
      event.preventDefault();
      const hz = Number(input.value.trim().replace(",", "."));
      if (hz >= low && hz <= high) {
        found = hz;
        dialog.close();
        return;
      }
      words(problem, t("rate-problem", { low, high }));
      attr(input, "aria-invalid", "true");
      input.focus();
    };
    dialog.replaceChildren(h("form", { method: "dialog", onsubmit: take },
      h("h2", { id: "ask-h" }, t("rate-title")), h("p", {}, t("rate-text", { file })),
      h("div", { class: "fld" }, h("label", { for: id }, t("rate-label")), input), problem,
      h("div", { class: "row" }, h("button", { type: "submit", class: "btn btn-strong" }, t("rate-yes")), h("button", { type: "button", class: "btn", onclick: () => dialog.close() }, t("rate-no")))));
    dialog.addEventListener("close", () => done(found), { once: true });
    dialog.showModal();
  });
}
