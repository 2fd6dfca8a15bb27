// Starts the page: texts, theme, core, scenarios; then opens what the address asks for.

import { afterwards } from "./afterwards.js";
import { askResume } from "./ask.js";
import { BenchPane } from "./bench/index.js";
import { Bench, CoreError, loadCore } from "./core.js";
import { packed } from "./packed.js";
import { h, words } from "./dom.js";
import { chooseFiles, readRecording, takeDrops } from "./files.js";
import { Caution } from "./help/caution.js";
import { Offer } from "./help/offer.js";
import { icon } from "./icons.js";
import { chooseLanguage, languageChoice } from "./language.js";
import { Keeper, takeUpKept } from "./kept.js";
import { Loop } from "./loop.js";
import { keepOffline } from "./offline.js";
import { makePanes } from "./panes.js";
import { newSeed, readRoute, routeTo, watchRoute, writeRoute } from "./route.js";
import { briefOf, inWords, loadScenarios, scenarioWords } from "./scenarios.js";
import { Session } from "./session.js";
import { SheetPane } from "./sheet/index.js";
import { sectionOf, SIDES } from "./sides.js";
import { showStart } from "./start.js";
import { copiesOf, attemptKey, forgetAttempt, keep, keptAttempts, openJournal, recall } from "./store.js";
import { StripPane } from "./strip/index.js";
import { bringTexts, fillTexts, loadTexts, t } from "./text.js";
import { startTheme, toggleTheme } from "./theme.js";
import { button } from "./widgets.js";

const $ = (id) => document.getElementById(id);
let scenarios = [];
let running = null; // what stands on the page now: {session, loop, strip, ends}
let panes = null;
let shown = null; // an instructor's screen that stands on the page: {view, screen}
let screens = 0; // counts the screens that were asked for: one that comes late gives way
let course = null; // the course site around this page
let reading = null; // a screen beside the bench is open: which, whether the bench ran before, and the page's title then

/** Shows a calm message above everything; no words, no message. */
function calm(text) {
  $("calm").hidden = !text;
  words($("calm"), text);
}

function show(view) {
  document.body.dataset.view = view;
  for (const later of ["assign", "class"]) $(later).hidden = view !== later;
  if (shown && shown.view !== view) {
    shown.screen.end();
    shown = null;
  }
  $("skeleton").hidden = view !== "loading";
  $("start").hidden = view !== "start";
  for (const section of new Set(Object.keys(SIDES).map(sectionOf))) $(section).hidden = view !== section;
  $("lab").hidden = view !== "lab";
  $("panes").hidden = view !== "lab";
}

function close() {
  if (!running) return;
  running.loop.stop();
  running.strip.end();
  running.bench?.end();
  running.session.end();
  running = null;
  for (const part of ["narrator", "brief", "offer", "bench", "strip", "worksheet"]) $(part).replaceChildren();
}

/**
 * Puts a lab on the page and lets it run. given: begun (ms since 1970), again(): opens the next bench, assigned: {address,
 * student, tries, closing}, and for a replay back(): where it came from; such a lab stands still and is only looked at.
 * watched: the scenario of a worked example, which the narrator plays.
 */
function stand(bench, scenario, seed, deeds = 0, given = {}) {
  close();
  calm("");
  const session = new Session(bench, scenario, seed);
  Object.assign(session, { deeds, begun: given.begun ?? Date.now(), looksOnly: Boolean(given.back) });
  if (scenario && !given.back) session.keepWith(new Keeper(scenario, seed, calm));
  const recording = bench.kind === "recording";
  show("lab");
  let narrator = null;
  const loop = new Loop((dt) => {
    if (dt > 0 && given.watched) narrator?.frame(dt);
    else if (dt > 0) bench.advance(dt);
    session.refresh();
    const drawn = strip.frame();
    if (drawn && (dt > 0 || recording)) moved();
  });
  document.body.dataset.kind = given.watched ? "worked" : bench.kind;
  showWhere(session.view, recording, given.back);
  $("bench").hidden = recording;
  panes.setBench(!recording);
  panes.show(recording ? "strip" : "bench");
  const benchPane = recording ? null : new BenchPane($("bench"), session);
  const strip = new StripPane($("strip"), session, loop);
  const sheet = new SheetPane($("worksheet"), session, { settle: () => strip.cursors.settleAll(), again: given.again ?? (() => open(scenario, newSeed()).catch(report)) });
  running = { session, loop, strip, bench: benchPane, address: given.assigned?.address, watched: given.watched };
  for (const part of ["narrator", "offer"]) $(part).hidden = true;
  afterwards(session, { strip, debrief: sheet.debrief }, { keeps: !given.back && !given.watched, calm, report });
  given.follow?.(session);
  if (given.back) loop.running = false;
  else if (given.watched) narrate(session, strip, sheet, given.watched).then((made) => (narrator = made)).catch(report);
  else if (!recording) takeUp(session, scenario, given.assigned);
  loop.start();
}

/** A bench of the student's own: how to take it (an assigned one is taken as it is), the caution, and the way to hand in. */
function takeUp(session, scenario, assigned) {
  if (!assigned && !packed) running.offer = new Offer($("offer"), session, { watch: () => (location.hash = watchRoute(scenario)), chosen: (mode) => mode === "half" && halfDone() });
  new Caution($("brief"), session, { waits: !assigned && !packed });
  offerHandIn(session, assigned);
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

/** Opens a scenario's worked example. */
async function watch(id) {
  const scenario = scenarios.find((one) => one.id === id);
  if (!scenario) return open(id, null);
  await scenario.load();
  briefOf(scenario);
  return stand(Bench.worked(scenario.toml), null, null, 0, { watched: id });
}

/** Brings the way to hand in under the worksheet once there is something to hand in. */
function offerHandIn(session, assigned) {
  let asked = false;
  session.onView(async (view) => {
    if (!view.check || asked) return;
    asked = true;
    const [{ HandIn }] = await Promise.all([import("./hand/handin.js"), bringTexts("hand"), session.debriefed]); // it stands below all of the debrief
    if (running?.session === session) new HandIn($("worksheet"), session, assigned);
  });
}

/** Tells the tests and the clock that a trace has moved on the page. */
function moved() {
  if (document.documentElement.dataset.ready) return;
  document.documentElement.dataset.ready = "1";
  performance.mark("first-trace");
}

function showWhere(view, recording, back) {
  const told = view.scenario && inWords(view.scenario);
  const title = told?.title ?? view.recording_name;
  $("where").replaceChildren(h("b", {}, title), recording ? "" : h("span", { class: "seed" }, t("where-seed", { v: view.seed })), back ? button(t("class-back"), back, { kind: "btn-back" }) : "");
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
  const { id: known } = briefOf(scenario);
  writeRoute(known, seed);
  const { copies: [kept], damaged } = copiesOf(attemptKey(id, seed));
  let amiss = "";
  if (kept || damaged) {
    close();
    show("loading");
    if (!kept || goOn || (await askResume(kept))) {
      const found = takeUpKept(id, seed);
      amiss = found.told;
      if (found.bench) {
        stand(found.bench, id, seed, found.kept.deeds ?? 1, { begun: found.kept.begun });
        calm(amiss);
        return;
      }
    } else forgetAttempt(id, seed);
  }
  stand(Bench.fresh(scenario.toml, seed), id, seed);
  calm(amiss);
}

async function home() {
  if (packed) return openPacked();
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
  const { scenario, seed, watch: watched, side, turn, assigned, screen } = readRoute();
  screens += 1;
  if (side !== null) return openSide(side, turn);
  if (screen) return openScreen(screen);
  if (assigned !== null) return openAssigned(assigned);
  const same = running && !running.address && (watched ? running.watched === watched : !running.watched && running.session.scenario === scenario && (!seed || running.session.seed === seed));
  if (reading && same) return backToLab();
  reading = null;
  if (watched) return same ? undefined : watch(watched);
  if (!scenario) return home();
  return same && seed ? undefined : open(scenario, seed ?? newSeed());
}

const SCREENS = { assign: () => import("./assign/index.js"), class: () => import("./class/index.js") };

/** Opens a screen for instructors. */
async function openScreen(name) {
  const mine = screens;
  reading = null;
  close();
  calm("");
  show("loading");
  const [screen] = await Promise.all([SCREENS[name](), bringTexts("class"), bringTexts("hand")]);
  if (mine !== screens) return undefined;
  $("where").replaceChildren();
  const back = () => (location.hash === `#${name}` ? openScreen(name).catch(report) : (location.hash = `#${name}`));
  const made = await screen.showScreen($(name), { scenarios, report, standStill: (bench) => stand(bench, null, null, 0, { back }) });
  if (mine !== screens) return made.end();
  shown = { view: name, screen: made };
  document.title = t("where-title", { title: t(`${name}-title`) });
  show(name);
  $(name).querySelector("h1")?.focus({ preventScroll: true });
  return undefined;
}

/** Opens the assignment that this page was packed for: in a course site, or by itself. */
async function openPacked() {
  if (running) return undefined; // there is nothing else to open
  const [scenario] = scenarios;
  await scenario.load();
  const { assignment } = briefOf(scenario);
  if (packed.standard === "alone") {
    const kept = keptAttempts().find((one) => one.scenario === scenario.id);
    if (!assignment) return open(scenario.id, kept?.seed ?? newSeed());
    const { packText } = await import("./hand/link.js");
    return openAssigned(await packText(scenario.toml));
  }
  const [{ Course }] = await Promise.all([import("./course/index.js"), bringTexts("course")]);
  course ??= new Course(packed.standard, { id: scenario.id, toml: scenario.toml, assignment });
  $("course").replaceChildren(course.el);
  const ended = (text) => {
    close();
    show("loading");
    $("skeleton").hidden = true;
    calm(text);
  };
  const begin = (tries) => {
    const seed = course.seed(tries);
    stand(Bench.fresh(scenario.toml, seed), scenario.id, seed, 0, given(tries));
  };
  const given = (tries) => ({ again: () => begin(tries + 1), follow: (session) => course.follow(session, tries, ended) });
  const { state } = course;
  course.state = null;
  if (!state) return begin(1);
  try {
    const bench = Bench.fromCode(state.code, scenario.toml);
    return stand(bench, scenario.id, bench.view().seed, 1, given(state.tries));
  } catch {
    begin(state.tries + 1);
    return calm(t("course-other"));
  }
}

/** Opens an assignment whose text is in the address: asks who the student is, and takes up or begins a try. */
async function openAssigned(address) {
  const mine = screens;
  if (running?.address === address) return reading && backToLab();
  reading = null;
  const [{ readAssigned, whoAndWhich }] = await Promise.all([import("./hand/begin.js"), bringTexts("hand")]);
  let task;
  try {
    task = await readAssigned(address);
  } catch (error) {
    await home();
    calm(t("hand-link_bad", { told: error.message }));
    return;
  }
  close();
  show("loading");
  const chosen = await whoAndWhich(task);
  if (mine !== screens) return;
  if (!chosen) return leaveAssigned();
  const { student, tries, seed } = chosen;
  const { bench, kept, told } = takeUpKept(task.id, seed);
  const given = { begun: kept?.begun, assigned: { address, student, tries, closing: task.assignment?.closing ?? "", own: Boolean(task.assignment) }, again: () => { close(); openAssigned(address).catch(report); } };
  stand(bench ?? Bench.fresh(task.toml, seed), task.id, seed, bench ? kept.deeds ?? 1 : 0, given);
  calm(told);
}

function leaveAssigned() {
  leave();
  return home();
}

/** Opens a screen beside the bench; a bench that is open waits meanwhile. */
async function openSide(side, turn) {
  const mine = screens;
  reading ??= { ran: running?.loop.running, title: document.title };
  if (running) running.loop.running = false;
  if (reading.side !== side || !SIDES[side].turn) {
    reading.side = side;
    document.title = t("where-title", { title: t(SIDES[side].title) });
    await SIDES[side].open($(sectionOf(side)), turn, { inLab: Boolean(running), goBack: leaveSide, allLoaded });
    if (mine !== screens || reading?.side !== side) return; // left before it had come
    show(sectionOf(side));
    $(sectionOf(side)).querySelector("h1").focus({ preventScroll: true });
    scrollTo({ top: 0 });
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
  const bench = running?.watched ? watchRoute(running.watched) : scenario ? routeTo(scenario, seed) : location.pathname;
  history.replaceState(null, "", running?.address ? `#a=${running.address}` : bench);
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

/** Opens a recording from its files; a bad one is told and costs nothing. */
async function openFiles(files) {
  try {
    const bench = await readRecording(files);
    if (!bench) return;
    leave();
    stand(bench, null, null);
  } catch (error) {
    report(error);
    if (running) calm(`${$("calm").textContent} ${t("error-file_left")}`);
  }
}

const chooseFile = () => chooseFiles(openFiles);

function tools() {
  const tool = (key, pic, onclick) => h("button", { type: "button", class: "btn", title: t(key), onclick }, icon(pic), h("span", { class: "word" }, t(key)));
  const others = packed ? [] : [tool("tools-scenarios", "list", () => { leave(); home().then(() => $("main").focus(), report); })];
  $("tools").replaceChildren(...others, tool("tools-faults", "cards", () => (location.hash = "#faults")), tool("tools-open", "open", chooseFile), tool("tools-theme", "theme", toggleTheme));
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

takeDrops(openFiles);
addEventListener("error", (event) => report(event.error ?? event.message));
addEventListener("unhandledrejection", (event) => report(event.reason));
addEventListener("pagehide", () => running?.session.saveNow());

const core = loadCore();
const index = loadScenarios();
const texts = loadTexts(chooseLanguage());
const journal = openJournal();
const told = scenarioWords();
for (const early of [core, index, told]) early.catch(() => {}); // told below, once there are words
startTheme();
await texts;
fillTexts(document);
tools();
panes = makePanes($("panes"));
try {
  scenarios = await index;
  const { scenario, watch: watched } = readRoute();
  const wanted = scenario ?? watched;
  for (const one of scenarios) if (!wanted || one.id === wanted) one.load().catch(() => {}); // on its way while the core compiles
  await Promise.all([core, told, journal]);
  addEventListener("hashchange", () => follow().catch(report));
  await follow();
  if (!packed) keepOffline({ note: $("kept"), free: () => document.body.dataset.view === "start" });
} catch (error) {
  $("skeleton").hidden = true;
  report(error);
}
