// Starts the page: texts, theme, core, scenarios; then opens what the address asks for.

import { askRate, askResume } from "./ask.js";
import { BenchPane } from "./bench/index.js";
import { Bench, CoreError, loadCore } from "./core.js";
import { h, words } from "./dom.js";
import { noteEvidence } from "./evidence.js";
import { Caution } from "./help/caution.js";
import { Offer } from "./help/offer.js";
import { icon } from "./icons.js";
import { chooseLanguage, languageChoice } from "./language.js";
import { Loop } from "./loop.js";
import { keepOffline } from "./offline.js";
import { makePanes } from "./panes.js";
import { newSeed, readRoute, routeTo, watchRoute, writeRoute } from "./route.js";
import { briefOf, inWords, loadScenarios, scenarioWords } from "./scenarios.js";
import { Session } from "./session.js";
import { SheetPane } from "./sheet/index.js";
import { showStart } from "./start.js";
import { attemptKey, forget, keep, recall } from "./store.js";
import { StripPane } from "./strip/index.js";
import { fillTexts, loadTexts, t } from "./text.js";
import { startTheme, toggleTheme } from "./theme.js";

const $ = (id) => document.getElementById(id);
const RATES_HZ = { low: 10, high: 10000 }; // what the core takes
let scenarios = [];
let running = null; // what stands on the page now: {session, loop, strip, ends}
let panes = null;
let reading = null; // a screen beside the bench is open: which, whether the bench ran before, and the page's title then

/** Shows a calm message above everything; no words, no message. */
function calm(text) {
  $("calm").hidden = !text;
  words($("calm"), text);
}

function show(view) {
  document.body.dataset.view = view;
  $("skeleton").hidden = view !== "loading";
  $("start").hidden = view !== "start";
  for (const side of Object.keys(SIDES)) $(side).hidden = view !== side;
  $("lab").hidden = view !== "lab";
  $("panes").hidden = view !== "lab";
}

function close() {
  if (!running) return;
  running.session.saveNow();
  running.loop.stop();
  running.strip.end();
  running.bench?.end();
  running.session.bench.free();
  running = null;
}

/** Puts a lab on the page and lets it run; a worked example is played by the narrator. */
function stand(bench, scenario, seed, { deeds = 0, watched = false } = {}) {
  close();
  calm("");
  const session = new Session(bench, watched ? null : scenario, seed);
  session.deeds = deeds;
  const recording = bench.kind === "recording";
  show("lab");
  let narrator = null;
  const loop = new Loop((dt) => {
    if (dt > 0 && watched) narrator?.frame(dt);
    else if (dt > 0) bench.advance(dt);
    session.refresh();
    const drawn = strip.frame();
    if (drawn && (dt > 0 || recording)) moved();
  });
  document.body.dataset.kind = watched ? "worked" : bench.kind;
  showWhere(session.view, recording);
  $("bench").hidden = recording;
  panes.setBench(!recording);
  panes.show(recording ? "strip" : "bench");
  const benchPane = recording ? null : new BenchPane($("bench"), session);
  const strip = new StripPane($("strip"), session, loop);
  const sheet = new SheetPane($("worksheet"), session, { settle: () => strip.cursors.settleAll(), again: () => open(scenario, newSeed()).catch(report) });
  running = { session, loop, strip, bench: benchPane, watched: watched ? scenario : null };
  for (const id of ["offer", "narrator"]) {
    $(id).hidden = true;
    $(id).replaceChildren();
  }
  afterwards(session, strip, sheet, watched);
  if (watched) {
    narrate(session, strip, sheet, scenario).then((made) => (narrator = made)).catch(report);
  } else if (!recording) {
    running.offer = new Offer($("offer"), session, { watch: () => (location.hash = watchRoute(scenario)), chosen: (mode) => mode === "half" && halfDone() });
    new Caution($("brief"), session);
  }
  loop.start();
}

/** From a half-finished example the student goes on at the strip. */
function halfDone() {
  panes.show("strip");
  $("strip").scrollIntoView({ block: "start" });
}

async function narrate(session, strip, sheet, scenario) {
  const { makeNarrator } = await import("./help/narrator.js");
  if (running?.session !== session) return null;
  return makeNarrator($("narrator"), session, { strip, sheet, showPane: (pane) => panes.show(pane), stop: () => nowYou(scenario).catch(report) });
}

/** After a worked example: a bench of one's own, with the help that goes with having watched. */
async function nowYou(scenario) {
  await open(scenario, newSeed());
  running.offer.begin("shown");
  $("main").focus();
}

/** What belongs to a checked attempt: the debrief's further parts, and what is kept of it. */
function afterwards(session, strip, sheet, watched) {
  let brought = null;
  session.onView(({ check }) => {
    if (!check || brought) return;
    const toReport = watched ? null : () => import("./notebook/pages.js").then(({ idOf }) => (location.hash = `#report=${encodeURIComponent(idOf(session))}`), report);
    brought = import("./after/index.js").then(({ showAfter }) => showAfter(session, strip, sheet.debrief, toReport)).catch((error) => {
      brought = null;
      report(error);
    });
  });
  session.onDeed((action) => {
    if (!["check", "reveal", "hint"].includes(action.do)) return;
    const kept = session.scenario ? noteEvidence(session.bench.evidence()) : true;
    keepTrial(session, kept).catch(report);
  });
}

/** Keeps the trial in the notebook; where the device does not allow it, that is told. */
async function keepTrial(session, kept) {
  const [{ pageOf }, { keepPage }] = await Promise.all([import("./notebook/entry.js"), import("./notebook/pages.js")]);
  if (!(keepPage(pageOf(session, Date.now())) && kept)) calm(t("notebook-full"));
}

/** Tells the tests and the clock that a trace has moved on the page. */
function moved() {
  if (document.documentElement.dataset.ready) return;
  document.documentElement.dataset.ready = "1";
  performance.mark("first-trace");
}

function showWhere(view, recording) {
  const told = view.scenario && inWords(view.scenario);
  const title = told?.title ?? view.recording_name;
  $("where").replaceChildren(h("b", {}, title), recording ? "" : h("span", { class: "seed" }, t("where-seed", { v: view.seed })));
  document.title = t("where-title", { title });
  $("brief").replaceChildren(h("h1", { id: "brief-h" }, title), recording ? h("p", { class: "aim" }, t("recording-about")) : briefing(told));
}

/** The aim, and the brief behind it: open where there is room, or as the student left it. */
function briefing({ aim, brief }) {
  if (!brief) return h("p", { class: "aim" }, aim);
  const more = h("details", { open: recall("brief") ?? innerHeight >= 1000 },
    h("summary", {}, h("span", { class: "aim" }, aim), h("span", { class: "turn turn-open" }, t("brief-more")), h("span", { class: "turn turn-close" }, t("brief-less"))), h("p", { class: "pencil" }, brief));
  more.firstChild.addEventListener("click", () => keep("brief", !more.open));
  return more;
}

/** Opens a scenario with a seed, resuming a kept attempt if the student wants it; with goOn they have said so already. */
async function open(id, seed, goOn = false) {
  const scenario = scenarios.find((one) => one.id === id);
  if (!scenario) {
    await home();
    calm(t("error-no_scenario", { id }));
    return;
  }
  await scenario.load();
  const told = briefOf(scenario);
  writeRoute(told.id, seed);
  const kept = recall(attemptKey(id, seed));
  if (kept?.saved) {
    close();
    show("loading");
    if (goOn || (await askResume(kept))) {
      try {
        stand(Bench.restored(kept.saved), id, seed, { deeds: kept.deeds ?? 1 });
        return;
      } catch (error) {
        calm(t("resume-failed", { told: error.message }));
      }
    }
    forget(attemptKey(id, seed));
  }
  stand(Bench.fresh(scenario.toml, seed), id, seed);
}

async function home() {
  await allLoaded(); // what is missing says so in its place
  const { scenario, watch: watched } = readRoute();
  if (scenarios.some((one) => one.id === (scenario ?? watched))) return; // opened meanwhile
  close();
  $("where").replaceChildren();
  document.title = t("app-title");
  showStart($("start"), scenarios, { openFile: chooseFile, goOn: (id, seed) => open(id, seed, true).catch(report) });
  show("start");
}

async function follow() {
  calm("");
  const { scenario, seed, watch: watched, side, turn } = readRoute();
  if (side !== null) return openSide(side, turn);
  const { session, watched: playing } = running ?? {};
  const same = running && (watched ? playing === watched : !playing && session.scenario === scenario && (!seed || session.seed === seed));
  if (running && reading && same) return backToLab();
  reading = null;
  if (watched) return playing === watched ? undefined : watch(watched);
  if (!scenario) return home();
  return same && seed ? undefined : open(scenario, seed ?? newSeed());
}

/** Opens a scenario's worked example. */
async function watch(id) {
  const scenario = scenarios.find((one) => one.id === id);
  if (!scenario) return open(id, null);
  await scenario.load();
  briefOf(scenario);
  return stand(Bench.worked(scenario.toml), id, null, { watched: true });
}

/** The screens beside the bench: each fills its section, or turns to a place in it. */
const SIDES = {
  faults: { title: "faults-title", open: async (root, _turn, ways) => (await import("./faults/cards.js")).showFaults(root, ways), turn: async (root, turn) => (await import("./faults/cards.js")).turnToCard(root, turn) },
  skills: { title: "side-skills", open: async (root, _turn, ways) => (await import("./skills/index.js")).showSkills(root, { ...ways, scenarios: await allLoaded() }) },
  notebook: { title: "side-notebook", open: async (root, _turn, ways) => (await import("./notebook/index.js")).showNotebook(root, ways) },
  report: { title: "side-report", open: async (root, turn, ways) => (await import("./notebook/report.js")).showReport(root, turn, ways) },
};

/** Opens a screen beside the bench; a bench that is open waits meanwhile. */
async function openSide(side, turn) {
  reading ??= { ran: running?.loop.running, title: document.title };
  if (running) running.loop.running = false;
  if (reading.side !== side || !SIDES[side].turn) {
    reading.side = side;
    document.title = t("where-title", { title: t(SIDES[side].title) });
    await SIDES[side].open($(side), turn, { inLab: Boolean(running), goBack: leaveSide });
    show(side);
  }
  await SIDES[side].turn?.($(side), turn);
}

async function allLoaded() {
  await Promise.allSettled(scenarios.map((one) => one.load()));
  return scenarios;
}

/** Back to the bench as it was left, or to the scenarios. */
function leaveSide() {
  const { scenario, seed } = running?.session ?? {};
  history.replaceState(null, "", running?.watched ? watchRoute(running.watched) : scenario ? routeTo(scenario, seed) : location.pathname);
  if (running) return backToLab();
  reading = null;
  return home().then(() => $("main").focus(), report);
}

function backToLab() {
  running.loop.running = reading.ran;
  document.title = reading.title;
  reading = null;
  show("lab");
  document.dispatchEvent(new CustomEvent("pane-shown")); // the strip finds its place anew
  $("main").focus();
}

/** Reads a recording; where the file does not tell its sampling rate, the student is asked. Null when they give up. */
async function readRecording(name, text) {
  try {
    return Bench.fromRecording(name, text);
  } catch (error) {
    if (error.code !== "csv_rate_missing") throw error;
    const hz = await askRate(name, RATES_HZ);
    return hz === null ? null : Bench.fromRecordingAt(hz, name, text);
  }
}

function chooseFile() {
  const input = h("input", { type: "file", accept: ".csv,.txt,text/csv,text/plain" });
  input.addEventListener("change", async () => {
    const [file] = input.files;
    if (!file) return;
    try {
      const bench = await readRecording(file.name, await file.text());
      if (!bench) return;
      leave();
      stand(bench, null, null);
    } catch (error) {
      report(error);
      if (running) calm(`${$("calm").textContent} ${t("error-file_left")}`);
    }
  });
  input.click();
}

function tools() {
  const tool = (key, pic, onclick) => h("button", { type: "button", class: "btn", title: t(key), onclick }, icon(pic), h("span", { class: "word" }, t(key)));
  $("tools").replaceChildren(tool("tools-scenarios", "list", () => { leave(); home().then(() => $("main").focus(), report); }), tool("tools-faults", "cards", () => (location.hash = "#faults")), tool("tools-open", "open", chooseFile), tool("tools-theme", "theme", toggleTheme));
  $("language").replaceChildren(...languageChoice(() => running?.session.saveNow()));
  $("brand").addEventListener("click", (event) => { event.preventDefault(); leave(); home().catch(report); });
}

/** Takes scenario and card out of the address. */
function leave() {
  reading = null;
  history.replaceState(null, "", location.pathname);
}

/** Shows any error in words; the core's by its code. */
function report(error) {
  calm(error instanceof CoreError ? error.message : t("error-page", { told: error?.message ?? String(error) }));
}

addEventListener("error", (event) => report(event.error ?? event.message));
addEventListener("unhandledrejection", (event) => report(event.reason));
addEventListener("pagehide", () => running?.session.saveNow());

const core = loadCore();
const index = loadScenarios();
for (const early of [core, index]) early.catch(() => {}); // told below, once there are words
startTheme();
await loadTexts(chooseLanguage());
fillTexts(document);
tools();
panes = makePanes($("panes"));
try {
  scenarios = await index;
  const { scenario, watch: watched } = readRoute();
  const wanted = scenario ?? watched;
  for (const one of scenarios) if (!wanted || one.id === wanted) one.load().catch(() => {}); // on its way while the core compiles
  await Promise.all([core, scenarioWords()]);
  addEventListener("hashchange", () => follow().catch(report));
  await follow();
  keepOffline({ note: $("kept"), free: () => document.body.dataset.view === "start" });
} catch (error) {
  $("skeleton").hidden = true;
  report(error);
}
