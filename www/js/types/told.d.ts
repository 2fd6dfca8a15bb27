// What else the core tells, outside the view.

import type { Action, TestDeed } from "./action";
import type { Aid, Args } from "./names";
import type { Lane } from "./check";
import type { Assignment, Criteria } from "./view";

/** A fault of the catalogue, for choosing names from. */
export type CatalogueFault = { id: string; impression: string; confused_with: string[]; tests: TestDeed[]; mends: Action; severity: [number, number]; sensor: "optical" | null; shown_s: number | null; shown_range_v: number | null; shown_fresh: boolean; shown_bare: boolean };

/** The part of the page where an action's control is. */
export type DeedPane = "bench" | "axes" | "drawer" | "trace" | "sheet" | "page";
/** A row of the table of actions; looks: whether it only changes what one sees of a recording. */
export type DeedRow = { do: Action["do"]; nature: "change" | "test" | "look" | "tune" | "measure" | "paper"; lane: Lane; pane: DeedPane; looks: boolean };

/** A step of a worked example; its last one is followed by null. */
export type WorkedStep = { action: Action | null; wait_s?: number; remaining: number; code: string; args: Args };

/** A part of the work; where it stands: which parts are done, which one is next, and the code of what comes next in it. */
export type StepName = "power" | "sensor" | "adjust" | "record" | "measure" | "name" | "check";
export type Steps = { steps: { step: StepName; done: boolean }[]; at: StepName | null; next: string | null };

/** What can be said of the visible stretch without counting. */
export type Summary = {
  state: "no_data" | "flat" | "trace"; seconds: number; fuzz: "none" | "mild" | "clear" | "heavy"; clipped: boolean; drift: boolean;
  height: "tiny" | "small" | "good" | "tall" | "over";
};

/** What an attempt shows of each skill; with at_ms when it is kept. */
export type Evidence = {
  v: number; scenario: string; level: number; seed: string; mode: Aid; kind: string; passed: boolean; tries: number; hints: number; revealed: boolean;
  over: boolean; misreading: string | null; rubric: { total: number; ready: boolean };
  /** What each skill rests on. */
  skills: Record<string, { got: "pass" | "fail" | "none"; code: string | null }>;
  /** Every judged step; told: it had been told before, or hinted at; misread: a well-known misreading explains it. */
  judged: { skill: string; code: string; right: boolean; told: boolean; misread: boolean }[];
  /** The faults, once the attempt is over. */
  faults: { id: string; set: string; of: number; skill: string | null; named: boolean | null; gone: boolean | null; tested: boolean }[];
  /** Why what was right gives no credit, where it gives none. */
  no_credit: "hasty" | "many_names" | "scattered" | null;
};
/** As it is kept; one of the first form has no steps and no faults. */
export type KeptEvidence = Omit<Evidence, "judged" | "faults" | "no_credit"> & Partial<Pick<Evidence, "judged" | "faults" | "no_credit">> & { at_ms: number };
/** How far a skill is, or a set of faults that look alike: how likely a step comes out right, and between what. */
export type Standing = {
  state: "new" | "practising" | "once" | "ready" | "due"; share: number; low: number; high: number;
  /** Right ones among the last steps that were judged, and all that ever were. */
  right: number; of: number; judged: number; last_ms: number | null;
  needs: ("more" | "other" | "later")[]; later_ms: number | null; retest_ms: number | null; help: Aid;
};
/** without: attempts that gave no credit, by why. */
export type SkillMap = {
  skills: Record<string, Standing>; sets: Record<string, Standing>; help: Aid; readiness: { ready: boolean; times: number; need: number }; without: Record<string, number>;
};
/** A bench to choose from, and the one that was chosen. */
export type OfferedBench = { id: string; level: number; skills: string[]; may_ask: Record<string, number>; worked: boolean };
export type NextBench = { id: string; skill: string; why: "new" | "practice" | "unsure" | "other" | "later" | "due"; aid: Aid };

/** What stands in a code or a result beside the attempt. */
export type About = { student: string; try: number; begun_s: number; ended_s: number };

/** How many of so many right students each way of grading fails. */
export type Fairness = { students: number; without: number; own_window: number; exact_count: number; record_mean: number[]; tolerances: number[] };

/** A fault as a scenario file lays it down. */
export type FaultSpec = { name: string; severity?: number | [number, number] | null };
/** A misreading and a hint of the instructor's own. */
export type OwnMisreading = { name: string; field: string; formula: string; tolerance?: number | null; words: string };
export type OwnHint = { about: string; rung: string; words: string };
/** A scenario as a value for editing; what is not named here stays as it was. */
export type ScenarioValue = {
  id?: string; level?: number; title?: string; aim?: string; brief?: string; help?: string; power_line?: { hz: number; volts: number };
  task?: { kind: string }; subject?: Record<string, unknown>; recorder?: Record<string, unknown>; fault?: FaultSpec[];
  pool?: { faults?: string[]; with_nothing?: boolean };
  name_faults?: boolean; pass?: Partial<Criteria>; assignment?: Omit<Assignment, "study"> & { study?: string; password?: string; worked?: boolean }; attempt?: unknown[];
  misreading?: OwnMisreading[]; hint?: OwnHint[];
};

/** The facts of a question of a bank: what its picture shows, what is right, and the answers in order (misreading null: the right one). */
export type BankTold = {
  id: string; number: number; scenario: string; title: string; seen: { seconds: number; division: number; a: number; b: number };
  right: { beats: number; seconds: number; rate: number }; answers: { rate: number; misreading: string | null }[];
};
/** Its words. */
export type BankWords = { title: string; question: string; alt: string; answers: string[]; feedback: string[] };

/** A course as a value for editing; moments as text. */
export type PartValue = { opens?: string | null; due?: string | null; words?: string; scenario: string };
export type CourseValue = { course: { id: string; title: string; words?: string }; part: PartValue[] };

/** Something handed in, as it came: a file's text, or a code with the text of its scenario. */
export type Source = { file: string; text?: string; code?: string; scenario?: string; within?: { file: string; course: string } };
export type ClassState = "absent" | "unusable" | "wrong_bench" | "tried" | "ready" | "waived";
/** What an instructor decided for a student; until_s: s since 1970, 0 for none. */
export type Care = { waived: boolean; tries: number; until_s: number; note: string };
/** A bench that was set, by its mark; severity: null or nothing where a seed draws it; rival: another one is set under its name. */
export type SetBench = { from: string; title: string; id: string; bench: string; tries: number | null; of_course: boolean; rival: boolean; faults: { id: string; severity: number | [number, number] | null }[] };
/** By what a class is judged; due_s: s since 1970, 0 for none. */
export type ClassTerms = { benches: number; rubric: boolean; pick: "best" | "last"; due_s: number };
/** How a student stands in a part of a course; remarks: before_open, after_due. */
export type PartLine = { state: ClassState; points: number | null; results: number; remarks: string[] };
/** A student's line; results and failed are places among what was graded and what could not be used. */
export type ClassLine = {
  code: string; name: string; email: string; group: string; listed: boolean; state: ClassState; results: number[]; failed: number[]; chosen: number | null;
  points: number | null; of: number; parts: PartLine[]; passes: number; minutes: number; first_wrong: string | null; faults_left: string[]; misreadings: string[]; trace: string[];
  doubts: string[]; against: string[]; copied: string[]; alike: string[]; met: string[]; remarks: string[]; care: Care;
};
/** Results whose first check, and whose last one, came to something. */
export type Often = { id: string; first: number; last: number };
export type ClassCourse = { title: string; parts: { title: string; opens_s: number | null; due_s: number | null }[] };
export type ClassGroup = { group: string; n: number; states: number[]; points: number | null; misreading: string };
export type ClassChange = { code: string; before: ClassState | null; now: ClassState; points: [number | null, number | null] };
/** All that there is to be seen of a class; states: of those on the list, counted in all; of everybody where there is none. */
export type ClassTold = {
  course: ClassCourse | null; states: Record<ClassState, number>; counted: number; groups: ClassGroup[]; changes: ClassChange[]; wrong: Often[]; misreadings: Often[]; trace: Often[]; checked: number;
  faults: { id: string; met: number; left: number }[]; steps: { step: string; judged: number; right: number }[]; skills: [string, number][];
  minutes: [number, number, number] | null; results: number; again: number; not_compared: number; turned: number; several: [string, number][];
  doubtful: number; failed: { file: string; student: string; why: string; args: Args }[]; listed: number; lines: ClassLine[];
};
/** How an item did: what was wrong in which scenario. Of too few answers all figures are null; discrimination also where nothing varies. */
export type ClassItem = {
  named: string; faults: string[]; n: number | null; right: number | null; discrimination: number | null; misreading: [string, number] | null; minutes: number | null;
};
export type GradebookOrder = { columns: { title: string; field: string }[]; divides: string; bom: boolean; maximum: number; blank: boolean };

/** The plot's place in the canvas (CSS px), and the times (s) and values (V) that it shows. */
export type Geometry = { left: number; top: number; width: number; height: number; t0: number; t1: number; v0: number; v1: number };

/** Five seconds of a channel of a file: lowest and highest value of each column in turn, 0 at the bottom, 1 at the top. */
export type Glance = { channel: string; unit: string; from_s: number; outline: number[] };

/** What a finger on the camera needs, and why a heart rate is not told. */
export type PulseQuality = "no_finger" | "too_dark" | "too_bright" | "press_less" | "hold_still" | "wait" | "good";
export type PulseRefusal = "gap" | "too_dark" | "too_bright" | "no_finger" | "moving" | "weak" | "unsteady" | "disagree";
/** What the last ten seconds of a camera say; a rate, or why there is none, or neither as long as it is too early to tell. */
export type PulseState = { frames: number; dropped: number; from_s: number; to_s: number; fps: number; quality: PulseQuality; bpm: number | null; refused: PulseRefusal | null };
export type PulsePart = { from_s: number; to_s: number; bpm: number | null; refused: PulseRefusal | null };
export type PulseWhole = PulsePart & { uncertainty_bpm: number | null; beats: number };
/** What taps come to; nothing where there are too few. */
export type TapSum = { n: number; rate_bpm: number | null; uncertainty_bpm: number | null; intervals_ms: number[]; mean_ms: number | null; sd_ms: number | null; missed: number; doubled: number };
export type SilentCount = { rate_bpm: number; step_bpm: number };
export type RatesCompared = { difference_bpm: number; within: boolean };
