// @ts-check
// What stands on the page while someone works: one session with its bench, trace and worksheet, one loop, and an end to all of it.

import { afterwards } from "./afterwards.js";
import { BenchPane } from "./bench/index.js";
import { brief, whereabouts } from "./brief.js";
import { byId as $, h, say } from "./dom.js";
import { calm, entitle, report, show } from "./frame.js";
import { Caution } from "./help/caution.js";
import { Offer } from "./help/offer.js";
import { Rewire } from "./help/rewire.js";
import { Keeper } from "./kept.js";
import { Loop } from "./loop.js";
import { packed } from "./packed.js";
import { watchRoute } from "./route.js";
import { scenarioWords } from "./scenarios.js";
import { Session } from "./session.js";
import { SheetPane } from "./sheet/index.js";
import { TracePane } from "./trace/index.js";
import { Steps } from "./steps.js";
import { bringTexts, t } from "./text.js";
import { addView, focusView, offerViews, showView } from "./views.js";
import { button } from "./widgets.js";
/** @import { Bench } from './core.js' */
/** @import { Action } from './types/action' */
/** @import { Aid } from './types/names' */
/** @import { StepName } from './types/told' */
/** @import { Assigned, KeepsAttempt, Route } from './types/page' */

/**
 * @typedef {{
 *   scenario?: string | null, seed?: string | null, deeds?: number, begun?: number, again?: () => unknown, assigned?: Assigned | null,
 *   follow?: (session: Session) => void, back?: (() => unknown) | null, watched?: string | null, nowYou?: () => unknown, told?: string,
 *   keeper?: KeepsAttempt | null, handOver?: (root: HTMLElement, session: Session) => unknown,
 *   wiring?: Action[],
 * }} What
 */

/** @type {Lab | null} */
let standing = null;

/** The lab that stands on the page, or null. */
export const lab = () => standing;

/** Takes down what stands there. */
export function closeLab() {
  standing?.end();
  standing = null;
}

/**
 * Puts a lab on the page and lets it run. bench: a Bench of core.js. what: its scenario (an id) and seed, where it has them;
 * deeds and begun (ms since 1970) of an attempt that is taken up; again(): opens the next bench; assigned: {address, student,
 * tries, closing, own} of a link; follow(session): somebody else hears of it; keeper: who keeps it, if not this device;
 * handOver(root, session): what stands under the debrief in place of the way to hand in; back(): where a replay came from, which
 * stands still and is only looked at; watched: the scenario of a worked example, which the narrator plays, and nowYou(): after it;
 * told: words to begin with; wiring: deeds that connect it as it was connected in an attempt before.
 * @param {Bench} bench @param {What} [what]
 */
export function stand(bench, what = {}) {
  closeLab();
  calm(what.told ?? "");
  standing = new Lab(bench, what);
  return standing;
}

/** What stands there, from stand() to closeLab(). */
export class Lab {
  /** @param {Bench} bench @param {What} what */
  constructor(bench, { scenario = null, seed = null, deeds = 0, begun = Date.now(), again, assigned = null, follow, back = null, watched = null, nowYou, keeper = null, handOver, wiring = [] }) {
    this.scenario = scenario;
    this.seed = seed;
    this.assigned = assigned;
    this.watched = watched;
    this.handOver = handOver;
    this.wiring = wiring;
    this.ended = false;
    /** @type {{ ran: boolean } | null} */
    this.waits = null; // while something beside the bench is looked at
    /** @type {Offer | null} */
    this.offer = null;
    /** @type {{ frame(dt: number): void } | null} */
    this.narrator = null;
    const session = (this.session = new Session(bench, scenario, seed));
    Object.assign(session, { deeds, begun, looksOnly: Boolean(back) });
    session.address = assigned?.address ?? null;
    if (keeper) session.keepWith(keeper);
    else if (scenario && seed && !back) session.keepWith(new Keeper(scenario, seed, calm, { title: session.view.scenario?.title, address: assigned?.address, tries: assigned?.tries }));
    this.recording = bench.kind === "recording";
    show("lab");
    scrollTo({ top: 0 });
    document.body.dataset.kind = watched ? "worked" : bench.kind;
    this.title = whereabouts(session.view, back);
    entitle(this.title);
    $("brief").replaceChildren(...brief(session.view));
    $("narrator").hidden = true;
    $("worksheet").hidden = false;
    offerViews(this.recording ? ["brief"] : ["brief", "bench", "list", ...(session.view.experiment ? /** @type {const} */ (["experiment"]) : []), ...(session.view.scenario?.name_faults ? /** @type {const} */ (["name"]) : [])]);
    showView(this.recording ? "brief" : "bench");
    this.loop = new Loop((dt) => this.frame(dt));
    this.bench = this.recording ? null : new BenchPane({ root: $("bench"), list: $("list"), says: $("says") }, session);
    this.trace = new TracePane($("strip"), session, this.loop);
    const places = { row: $("worksheet"), brief: $("brief"), name: $("name"), result: $("result") };
    this.sheet = new SheetPane(places, session, { settle: () => this.trace.cursors.settleAll(), again: again ?? (() => {}), judged: () => showView("result"), another: () => this.another() });
    $("result").append(this.trace.trail);
    if (session.view.experiment) this.late(this.bringExperiment());
    this.steps = new Steps($("steps"), session, { title: this.title, go: (step) => this.go(step), tells: (next) => this.bench?.pointOut(next), leads: !this.recording && !back && !watched && !assigned, watched: Boolean(watched) });
    $("views-more").replaceChildren(button(t("undo"), () => session.undo() || say(t("undo-nothing")), { kind: "btn-plain", pic: "undo", title: t("undo") }));
    this.told = false; // whether there is a result to be seen
    session.onView(({ check }) => {
      if (!check || this.told) return;
      this.told = true;
      addView("result");
      if (deeds > 0 || back) showView("result");
    });
    afterwards(session, { trace: this.trace, debrief: this.sheet.debrief }, { keeps: !back && !watched, calm, report });
    follow?.(session);
    if (back) this.loop.running = false;
    else if (watched) this.late(this.narrate(nowYou ?? (() => {})));
    else if (!this.recording) this.takeUp();
    this.loop.start();
  }

  /**
   * One frame: the world runs on, and what is new of it is shown.
   * @param {number} dt
   */
  frame(dt) {
    if (dt > 0 && this.watched) this.narrator?.frame(dt);
    else if (dt > 0) this.session.bench.advance(dt);
    this.session.refresh();
    this.steps.frame();
    if (this.trace.frame() && (dt > 0 || this.recording)) moved();
  }

  /** How the attempt was begun is told where one goes on. @param {Aid} mode */
  begun(mode) {
    showView("bench");
    this.bench?.tell(t(`offer-now-${mode}`));
    focusView(); // the button that was pressed is gone, and with it the place of whoever goes by keys
  }

  /** Another window of an opened recording: the last result is no more. */
  another() {
    this.told = false;
    offerViews(["brief"]);
    showView("brief");
    this.go("measure");
    const { a } = this.session.view.cursors;
    if (a !== null) this.trace.bringToSight(a, a);
    this.trace.tell(t("sheet-another_now"));
  }

  /** Brings one where a step is done. @param {StepName} step */
  go(step) {
    if (step === "power" || step === "sensor") showView("bench");
    if (step === "name") showView("name");
    /** @type {Record<StepName, string>} */
    const places = { power: "#bench", sensor: "#bench", name: "#name", adjust: ".range-at select", record: ".btn-record", measure: ".cursor-a", check: "#worksheet .btn-strong" };
    /** @type {HTMLElement | null} */
    const place = document.querySelector(places[step]);
    place?.scrollIntoView({ block: "nearest" });
    if (place?.matches("button, select, [tabindex]")) place.focus({ preventScroll: true });
  }

  /** A bench of the student's own: how to take it (an assigned one is taken as it is), the caution, and the way to hand in. */
  takeUp() {
    const { session, scenario, assigned } = this;
    const chosen = !assigned && !packed;
    const offer = h("section", { class: "offer", hidden: true });
    $("brief").prepend(offer);
    if (chosen) this.offer = new Offer(offer, session, { watch: () => (location.hash = watchRoute(scenario ?? "")), chosen: (mode) => this.begun(mode) });
    if (this.offer?.asks && !this.offer.met) showView("brief");
    new Caution(this.steps.more, session, { waits: chosen });
    if (chosen && this.wiring.length > 0) new Rewire(this.steps.more, session, this.wiring);
    let asked = false;
    session.onView((view) => {
      if (!view.check || asked) return;
      asked = true;
      this.late(this.offerHandIn());
    });
  }

  /** Brings the experiment of a scenario, with its words. */
  async bringExperiment() {
    const [{ ExperimentPane }] = await Promise.all([import("./experiment/index.js"), bringTexts("experiment"), scenarioWords()]);
    if (!this.ended) new ExperimentPane($("experiment"), this.session);
  }

  /** Brings the way to hand in under the worksheet once there is something to hand in. */
  async offerHandIn() {
    if (this.handOver) {
      await this.session.debriefed;
      return void (!this.ended && this.handOver($("result"), this.session));
    }
    const [{ HandIn }] = await Promise.all([import("./hand/handin.js"), bringTexts("hand"), this.session.debriefed]); // it stands below all of the debrief
    if (!this.ended) new HandIn($("result"), this.session, this.assigned);
  }

  /** @param {() => unknown} nowYou */
  async narrate(nowYou) {
    const { makeNarrator } = await import("./help/narrator.js");
    if (this.ended) return;
    const made = await makeNarrator($("narrator"), this.session, { trace: this.trace, sheet: this.sheet, stop: nowYou });
    if (!this.ended) this.narrator = made;
  }

  /**
   * Tells of what fails later, while the lab still stands.
   * @param {Promise<unknown>} coming
   */
  late(coming) {
    coming.catch((error) => !this.ended && report(error));
  }

  /**
   * Does it stand where the address (of readRoute) says?
   * @param {Route} route
   */
  isAt({ scenario, seed, watch, assigned }) {
    if (assigned !== null || this.assigned) return this.assigned?.address === assigned;
    if (watch || this.watched) return this.watched === watch;
    return this.scenario === scenario && (!seed || this.seed === seed);
  }

  /** Time stands still while something beside the bench is looked at. */
  wait() {
    this.waits ??= { ran: this.loop.running };
    this.loop.running = false;
  }

  /** Back from there, as it was left. */
  comeBack() {
    if (!this.waits) return;
    this.loop.running = this.waits.ran;
    this.waits = null;
    entitle(this.title);
    show("lab");
    $("main").focus();
  }

  end() {
    this.ended = true;
    this.loop.stop();
    this.trace.end();
    this.bench?.end();
    this.session.end();
    delete document.body.dataset.kind;
    for (const part of ["narrator", "brief", "bench", "list", "experiment", "name", "result", "says", "strip", "worksheet", "steps", "where"]) $(part).replaceChildren();
  }
}

/** Tells the tests and the clock that a trace has moved on the page. */
function moved() {
  if (document.documentElement.dataset.ready) return;
  document.documentElement.dataset.ready = "1";
  performance.mark("first-trace");
}
