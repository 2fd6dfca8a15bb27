// What the page's own modules hand to one another.

import type { Bench } from "../core";
import type { Check, Truth } from "./check";
import type { Experiment } from "./experiment";
import type { Aid } from "./names";
import type { CatalogueFault } from "./told";
import type { Assignment, Brief, Cursors, Kept, RecorderSettings } from "./view";

/** What can stand in an element; what is empty is left out. */
export type Kid = Node | string | number | boolean | null | undefined | readonly Kid[];
/** Attributes of an element that is made: null, undefined and false leave one out; `data` goes to the dataset; `on…` listens. */
export type Attributes<E extends Element = Element> = {
  [name in keyof GlobalEventHandlersEventMap as `on${name}`]?: (event: GlobalEventHandlersEventMap[name] & { currentTarget: E }) => unknown;
} & { data?: Record<string, string | number | boolean | null | undefined>; [attribute: string]: unknown };

/** A scenario of the index; toml once it is loaded, brief once it is read. */
export type ScenarioEntry = {
  id: string; level: number; file: string; title: string; aim: string; help: string; path: boolean; toml?: string; brief?: Brief; load(): Promise<string>;
};
/** One whose brief has been read. */
export type KnownScenario = ScenarioEntry & { toml: string; brief: Brief };

/** An attempt as it is kept on this device. */
export type KeptAttempt = {
  at: number; deeds: number; begun: number; saved: string;
  /** Whether its checks are used up: it can be looked at and not gone on with. */
  over?: boolean;
  /** What a list says of it: its scenario's title; of an assignment the link's part and the number of the try. */
  title?: string; address?: string; tries?: number;
  /** In a course site: whether the site has ever taken a state of it. */
  taken?: boolean;
};
/** Who keeps an attempt that is under way; resolves to "kept" or to the word for what is in the way. */
export type KeepsAttempt = { keep(attempt: KeptAttempt): Promise<string | undefined>; end(): void; again: (() => void) | null };
/** Where one is kept; owner: see who.js. */
export type KeptPlace = { key: string; scenario: string; seed: string; owner: string; at: number; title: string | undefined; address: string | undefined; tries: number; over: boolean };

/** A link's assignment as a student has begun it. */
export type Assigned = { address: string; student: string; tries: number; closing: string; own: boolean };

/** A course as its link carries it, and a part of it that can be opened. Moments in ms since 1970. */
export type CoursePart = { task: LinkTask; address: string; words: string; opens: number | null; due: number | null };
export type Course = { id: string; title: string; words: string; parts: CoursePart[] };
/** What a link's assignment is: worked tells whether its example may be watched. */
export type LinkTask = { id: string; toml: string; title: string; assignment: Assignment | null; worked: boolean };

/** What an address asks for. */
export type Route = {
  scenario: string | null; seed: string | null; watch: string | null; assigned: string | null; course: string | null;
  screen: ScreenName | null; look: number | null; side: SideName | null; turn: string | null;
};
export type SideName = "faults" | "skills" | "notebook" | "report" | "words" | "teach" | "device" | "own";
/** A screen for instructors. */
export type ScreenName = "assign" | "class" | "paper";
export type ViewName = "loading" | "start" | "lab" | "parts" | ScreenName | "faults" | "skills" | "notebook" | "report" | "read" | "device" | "own";
/** What the left side of the workspace shows. */
export type SideView = "brief" | "bench" | "list" | "experiment" | "name" | "result";

/** What a screen beside the bench is given. */
export type Ways = { inLab: boolean; goBack: () => unknown; allLoaded: () => Promise<ScenarioEntry[]> };

/** A fault with its words, and all of them. */
export type FaultWords = CatalogueFault & { name: string; cause: string; seen: string; test: string; remedy: string; model: string };
export type FaultBook = {
  faults: FaultWords[]; impressions: { id: string; name: string; faults: FaultWords[] }[]; of(id: string): FaultWords | undefined;
};

/** A stretch of a recording that is laid on the trace. */
export type Spot = { from_s: number; to_s: number };

/** A page of the notebook. */
export type NotebookPage = {
  v: number; id: string; at_ms: number; scenario: string | null; address?: string | null; title: string | null; seed: string | null; level: number | null; kind: string; mode: Aid | null;
  recorder: (Partial<RecorderSettings> & { unit?: string }) | null; time_base_s: number;
  recording: { recording: number; duration_s: number; label: string } | null;
  cursors: Pick<Cursors, "a" | "b" | "interval_s">; kept: Kept | null; marks: number[]; read: Record<string, string>; named: string[];
  check: PageCheck; hash: string | null; picture: Outline | null; note: string;
  /** Of a scenario that is an experiment; pages from before there were any have none. */
  experiment?: Experiment | null;
};
export type PageCheck = {
  tries: number; passed: boolean; over: boolean; first_wrong: string | null; hints: number;
  steps: Pick<Check["steps"][number], "step" | "verdict" | "code">[]; misreading: string | null;
  band: { low: number; high: number; rate: number } | null; window_s: number | null; others: { n: number; low: number; high: number } | null;
  rubric: { total: number; of: number; ready: boolean; rows: { row: string; got: number; of: number; applies: boolean }[] } | null;
  truth: { window: number | null; record: number | null; beats: number | null; source?: Truth["source"] } | null;
  beats: number[] | null;
};
/** A stretch of a recording as text: for each column its lowest and highest level, two digits each. */
export type Outline = { from_s: number; to_s: number; line: string };

/** What an instructor's screen is given; it gives back what is to be ended when it is left. */
export type ScreenWays = { scenarios: ScenarioEntry[]; report: (error: unknown) => void };
/** A screen as it stands; comeBack(): goes on where it was left, false where that was nowhere. */
export type Screen = { end(): void; comeBack?(): boolean };
/** What brings a screen; looked(k): one attempt of it as a bench, null where there is none of this number; lookedTold(k): whose it is, in words. */
export type ScreenModule = { showScreen(root: HTMLElement, ways: ScreenWays): Promise<Screen>; looked?(k: number): Promise<Bench | null>; lookedTold?(k: number): string };
