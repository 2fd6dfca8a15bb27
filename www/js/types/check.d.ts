// What a check found, as the view tells it. Rates in beats/min, times in s.

import type { Args, Step, Told, Verdict } from "./names";

/** A judged step; place: the stretch of the recording that it is about, from and to. */
export type Finding = { step: Step; verdict: Verdict; code: string; args: Args; place?: [number, number] };

/** The lane of the debrief in which an action is drawn. */
export type Lane = "wiring" | "strap" | "table" | "poke" | "subject" | "settings" | "record" | "measure" | "answer" | "check" | "hint" | "help";

/** An entry of the attempt's course: something that was done, perhaps several times in a row. */
export type CourseEntry = {
  /** Since the start. */
  t_s: number;
  do: string;
  what: Lane;
  times: number;
  args: Args;
  /** Its number in the log. */
  log: number;
  recording?: number;
  at_recording_s?: number;
  /** The first step that went wrong, where it was done here. */
  wrong?: Step;
};

export type RubricPoint = { code: string; got: boolean; evidence?: string; at_s?: number; log?: number };
export type RubricRow = { row: string; applies: boolean; got: number; of: number; points: RubricPoint[] };
export type Rubric = { got: number; possible: number; total: number; of: number; scored: boolean; ready: boolean; bar: "check" | "shown" | "help" | "row" | "points" | null; rows: RubricRow[] };

/** The band of rates that a count in a window allows. */
export type Band = { low: number; high: number; rate: number };
/** What other windows of the same length give. */
export type Others = { n: number; q05: number; q25: number; q50: number; q75: number; q95: number; starts: number[]; values: number[] };
export type Spread = { window_s: number; count: number; sd: number; band: Band; others: Others | null };

export type Truth = {
  source: "heart" | "detector";
  beat_times: number[];
  beats_in_window: number | null;
  faults: string[];
  /** At work beside them: to name one of these is right and not asked for. */
  also: string[];
  own_span: { intervals: number; rate: number; seconds: number } | null;
  own_window: { beats: number; rate: number; seconds: number } | null;
  record: { intervals: number; rate: number; seconds: number } | null;
  record_rate: number | null;
  window_rate: number | null;
  /** The range and the height of a beat that are asked for, where they are. */
  range_mv: number | null;
  amplitude_mv: number | null;
  /** Beats of which the detector is not sure. */
  unsure: number;
};

export type Trace = { pulse_v: number; fill: number; hum_ratio: number; clip_share: number; quality: number; smaller_range_fits: boolean };

export type Check = {
  try: number;
  passed: boolean;
  over: boolean;
  steps: Finding[];
  first_wrong: Step | null;
  /** name and words: of one of the instructor's own, whose id begins with "own-". */
  misreading: { id: string; step: Step; distance: number; args: Args; name?: string; words?: string } | null;
  process: Told[];
  course: CourseEntry[];
  rubric: Rubric;
  spread: Spread | null;
  trace: Trace | null;
  /** Only once it may be told. */
  truth: Truth | null;
  hints: number;
};
