// @ts-check
// Lets the page open without a network after one visit, and brings new versions in without costing anyone an attempt.

import { h } from "./dom.js";
import { t } from "./text.js";
import { button } from "./widgets.js";

/**
 * Registers the worker once the page has nothing better to do. Not inside a frame (a course site's page is not ours to keep),
 * and not where the browser has none. free(): whether nothing is under way that a reload would disturb. note: a place for words.
 * @param {{ note: HTMLElement, free: () => boolean }} ways
 */
export function keepOffline({ note, free }) {
  if (window.top !== window || !isSecureContext || !navigator.serviceWorker) return;
  // Another copy of the page, in a folder above this one, has a worker that answers here until ours does: it is none of ours.
  const own = new URL("sw.js", document.baseURI).href;
  const controlled = () => navigator.serviceWorker.controller?.scriptURL === own;
  const first = !controlled();
  let asked = false;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (asked) location.reload();
    else if (first && controlled()) note.replaceChildren(t("offline-ready"));
  });
  /** @param {ServiceWorker} worker */
  const takeOver = (worker) => {
    asked = true;
    worker.postMessage("take-over");
  };
  /** @param {ServiceWorker} worker */
  const offer = (worker) => {
    if (free()) return takeOver(worker);
    return note.replaceChildren(h("span", {}, t("offline-new")), " ", button(t("offline-take"), () => takeOver(worker)));
  };
  /** @param {ServiceWorker} worker */
  const watch = (worker) => worker.addEventListener("statechange", () => worker.state === "installed" && controlled() && offer(worker));
  const begin = async () => {
    const registration = await navigator.serviceWorker.register("sw.js");
    if (registration.waiting && controlled()) offer(registration.waiting);
    registration.addEventListener("updatefound", () => registration.installing && watch(registration.installing));
  };
  const calm = window.requestIdleCallback ?? (/** @param {() => unknown} run */ (run) => setTimeout(run, 1500));
  // A private window may refuse: then the page works as before, from the network.
  setTimeout(() => calm(() => begin().catch(() => {})), 2000);
}
