// @ts-check
// What this device keeps: who works here now, whose work lies here, and how to take it away. No student ID is ever shown whole.

import { asked } from "../ask.js";
import { aside, forgetAside } from "../device.js";
import { dialog as question, h, newId, say } from "../dom.js";
import { download } from "../download.js";
import { plainName } from "../hand/file.js";
import { closeLab, lab } from "../lab.js";
import { forgetAttempt, keptAttempts, openJournal } from "../store.js";
import { agoText, bringTexts, t } from "../text.js";
import { beGuest, beWho, guest, ownerOf, who } from "../who.js";
import { button } from "../widgets.js";
import { asideText, forgetAll, forgetMe, owners } from "./forget.js";
import { addressOf, titleOf } from "./titles.js";
/** @import { Kid, Ways } from '../types/page' */

/**
 * Fills the section.
 * @param {HTMLElement} root @param {Ways} ways
 */
export async function showDevice(root, { allLoaded, goBack }) {
  await Promise.all([bringTexts("device"), allLoaded()]);
  show(root, goBack);
}

/** @param {HTMLElement} root @param {() => unknown} goBack */
function show(root, goBack) {
  const done = h("p", { class: "undo", role: "status" });
  /** After something has changed: everything anew, and what was done. @param {string} [told] */
  const anew = (told) => {
    show(root, goBack);
    root.querySelector("h1")?.focus({ preventScroll: true });
    if (!told) return;
    root.querySelector(".undo")?.replaceChildren(told);
    say(told);
  };
  root.replaceChildren(
    h("div", { class: "side-lead" }, h("h1", { id: "device-h", tabindex: "-1" }, t("device-title")), h("p", { class: "lede" }, t("device-lede")),
      h("div", { class: "row" }, button(t(lab() ? "side-back" : "side-back_start"), goBack), h("a", { class: "btn btn-plain", href: "#notebook" }, t("side-notebook")))),
    done, now(anew), whose(anew), mine(anew), ...laidAside(anew));
}

/** @param {string} title @param {...Kid} more */
function part(title, ...more) {
  const id = newId("device");
  return h("section", { class: "device-part", "aria-labelledby": id }, h("h2", { id }, title), more);
}

/** @typedef {(told?: string) => void} Anew */

/** @param {Anew} anew */
function now(anew) {
  const id = newId("student");
  const input = h("input", { id, class: "txt", autocomplete: "off", maxlength: "60" });
  const mine = owners().find(({ owner }) => owner === who());
  /** What stands on the page belongs to whoever was here before. @param {() => unknown} change */
  const change = async (change) => {
    closeLab();
    change();
    await openJournal();
    anew();
  };
  const be = button(t("device-be"), () => input.value.trim() && change(() => beWho(input.value)));
  return part(t("device-you"), h("p", {}, guest() ? t("device-you_guest") : who() ? t("device-you_known", { hint: mine?.hint ?? "…" }) : t("device-you_none")),
    !guest() && !who() && h("form", { class: "device-who", onsubmit: (event) => { event.preventDefault(); be.click(); } }, h("div", { class: "fld" }, h("label", { for: id }, t("device-id")), input), be),
    h("div", { class: "row" }, !guest() && who() && button(t("device-leave"), () => change(() => beWho(""))),
      button(t(guest() ? "device-guest_leave" : "device-guest"), () => change(() => beGuest(!guest())))));
}

/** @param {Anew} anew */
function whose(anew) {
  const all = owners();
  /** @param {"me" | "all"} what @param {() => Promise<void>} take */
  const forgets = (what, take) => button(t(`device-forget_${what}`), async () => {
    if (!(await sure(t(`device-forget_${what}`), what === "me" && !who() ? t("device-forget_sure_nobody") : t(`device-forget_sure_${what}`)))) return;
    closeLab();
    await take();
    anew(t("device-forgotten"));
  }, { pic: "bin" });
  return part(t("device-whose"), all.length === 0 && h("p", {}, t("device-whose_none")),
    h("ul", { class: "device-list" }, all.map(({ owner, hint, attempts, pages, at }) => h("li", {},
      h("b", {}, owner ? t("device-owner_known", { hint }) : t("device-owner_none")), " ", owner === who() && h("span", { class: "quiet" }, t("device-owner_you")),
      h("span", { class: "quiet" }, [t("device-owner_has", { attempts, pages }), at > 0 && agoText(at)].filter(Boolean).join(" · "))))),
    h("div", { class: "row" }, all.some(({ owner }) => owner === who()) && forgets("me", forgetMe), !guest() && forgets("all", forgetAll)));
}

/** @param {Anew} anew */
function mine(anew) {
  const all = keptAttempts();
  return part(t("device-mine"), all.length === 0 && h("p", {}, t("device-mine_none")),
    h("ul", { class: "device-list" }, all.map((one) => h("li", {}, h("a", { href: addressOf(one) }, titleOf(one)), " ", h("span", { class: "quiet" }, t("device-attempt", { when: agoText(one.at) })),
      button(t("device-drop"), async () => {
        await forgetAttempt(one.key);
        anew(t("device-forgotten"));
      }, { kind: "btn-plain", "aria-label": t("device-drop_one", { title: titleOf(one) }) })))));
}

/** @param {Anew} anew */
function laidAside(anew) {
  const all = aside().filter(({ key }) => [who(), null].includes(ownerOf(`aside:${key}`)));
  if (all.length === 0) return [];
  return [part(t("device-aside"), h("p", { class: "quiet" }, t("device-aside_about")),
    h("ul", { class: "device-list" }, all.map(({ key }) => h("li", {}, h("span", {}, key.replace(/@\d+/g, "")),
      button(t("device-aside_save"), () => download(`dicrotic-${plainName(key.replace(/@\d+/g, ""))}.txt`, asideText(key), "text/plain"), { kind: "btn-plain", pic: "save" }),
      button(t("device-drop"), () => {
        forgetAside(key);
        anew(t("device-forgotten"));
      }, { kind: "btn-plain", "aria-label": t("device-drop_one", { title: key.replace(/@\d+/g, "") }) })))))];
}

/**
 * Asks before something is taken away for good. Escape is no.
 * @param {string} title @param {string} text
 */
async function sure(title, text) {
  const dialog = question();
  dialog.returnValue = "";
  dialog.replaceChildren(h("h2", { id: "ask-h" }, title), h("p", {}, text),
    h("div", { class: "row" }, button(t("device-forget_yes"), () => dialog.close("yes"), { kind: "btn-strong" }), button(t("device-forget_no"), () => dialog.close("no"), { autofocus: true })));
  await asked(dialog);
  return dialog.returnValue === "yes";
}
