// The ways in from the first screen: going on, rehearsing, checking oneself, and passing a scenario on to a class.

import { h, say, words } from "./dom.js";
import { newSeed, routeTo } from "./route.js";
import { keptAttempts } from "./store.js";
import { agoText, t } from "./text.js";
import { button, Choice, Tick } from "./widgets.js";

const MOST_KEPT = 3;

const way = (key, ...more) =>
  h("section", { class: `way way-${key}`, "aria-labelledby": `way-${key}` }, h("h2", { id: `way-${key}` }, t(`way-${key}`)), h("p", { class: "way-for pencil" }, t(`way-${key}_for`)), h("p", { class: "way-text" }, t(`way-${key}_text`)), more);

/** Attempts kept on this device, latest first; nothing where there are none. */
export function keptWay(scenarios, goOn) {
  const known = (id) => scenarios.find((one) => one.id === id);
  const kept = keptAttempts().filter((one) => known(one.scenario)).slice(0, MOST_KEPT);
  if (kept.length === 0) return null;
  return h("section", { class: "way-kept", "aria-labelledby": "way-kept" }, h("h2", { id: "way-kept" }, t("way-kept")),
    h("ul", { class: "kept" }, kept.map(({ scenario, seed, at }) => h("li", {},
      h("a", { href: routeTo(scenario, seed), onclick: (event) => { event.preventDefault(); goOn(scenario, seed); } }, known(scenario).brief.title),
      h("span", { class: "quiet" }, t("way-kept_from", { seed, when: agoText(at) }))))));
}

/** For a student before the lab: the first scenario. */
export const rehearseWay = (scenarios) =>
  way("rehearse", h("a", { class: "btn btn-strong", href: routeTo(scenarios[0].id) }, t("way-rehearse_go", { title: scenarios[0].brief.title })));

/** For a student who wants to know where they stand: some scenario that is done alone, with a heart of its own. */
export function checkWay(scenarios) {
  const alone = scenarios.filter((one) => one.brief.help === "alone");
  const from = alone.length > 0 ? alone : scenarios;
  const go = button(t("way-check_go"), () => {
    location.hash = routeTo(from[Math.floor(Math.random() * from.length)].id, newSeed());
  });
  return way("check", go);
}

/** For someone who comes back: the skill map and the notebook. */
export const standWay = () => way("stand", h("div", { class: "row" }, h("a", { class: "btn", href: "#skills" }, t("side-skills")), h("a", { class: "btn", href: "#notebook" }, t("side-notebook"))));

/** For an instructor: an address that opens a scenario, for all the same or for each their own. */
export function assignWay(scenarios) {
  let seed = newSeed();
  const address = h("output", { class: "address" });
  const said = h("span", { class: "quiet" });
  const which = new Choice(t("way-assign_scenario"), () => show());
  which.set(scenarios.map((one) => [one.id, one.brief.title]), scenarios[0].id);
  const same = new Tick(t("way-assign_same"), () => show());
  same.set(true);
  const show = () => {
    words(address, `${location.origin}${location.pathname}${routeTo(which.select.value, same.box.checked ? seed : null)}`);
    words(said, "");
  };
  const copy = button(t("way-assign_copy"), async () => {
    try {
      await navigator.clipboard.writeText(address.textContent);
      words(said, t("way-assign_copied"));
    } catch {
      getSelection().selectAllChildren(address); // the device does not let a page copy: the address is ready to be copied by hand
      words(said, t("way-assign_by_hand"));
    }
    say(said.textContent);
  });
  const fresh = button(t("way-assign_fresh"), () => { seed = newSeed(); show(); }, { kind: "btn-plain" });
  show();
  return way("assign", h("details", {}, h("summary", { class: "btn" }, t("way-assign_go")), which.el, same.el, address, h("div", { class: "row" }, copy, fresh, said)));
}
