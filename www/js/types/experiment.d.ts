// What the core tells of an experiment. Times in s, rates in beats/min, heights in mV, swings in ms.

import type { Action } from "./action";

export type Measure = "rate" | "amplitude" | "swing";
export type Direction = "up" | "down" | "same";

/** A value with its uncertainty, one standard deviation. */
export type Reading = { value: number; u: number };
/** A condition: begins is what starts it, null where only the bench's start does. */
export type Condition = { id: string; label: string; begins: Action | null; at_start: boolean; from_s: number; to_s: number };
/** What an experiment asks, before it is begun. */
export type AskedExperiment = {
  question: string; measures: Measure[]; repeats: number; window_s: number; reasons: string[]; recovery: boolean; conditions: Condition[];
};

export type ExperimentRow = {
  condition: string; label: string; recording: number; a: number; b: number;
  /** Middle of the window since the condition began (of exercise: since its end). */
  since_s: number | null; count: number | null; seconds: number;
  rate: Reading | null; amplitude: Reading | null; swing: Reading | null; note: string;
};
export type Contrast = { measure: Measure; first: Reading; last: Reading; difference: Reading };
/** A recovery as one exponential; high_s is null where the points set no upper end. */
export type RecoveryFit = { tau_s: number; low_s: number; high_s: number | null; rest: number; above: number; n: number };
export type Outcome = "shown" | "none_shown" | "missed" | "overclaimed" | "opposite";
export type JudgedConclusion = {
  measure: Measure; said: Direction; outcome: Outcome; right: boolean; difference: number; u: number;
  /** The difference in the subject, once the attempt is over. */
  truth: number | null;
};

/** The experiment as it stands. */
export type Experiment = {
  asked: AskedExperiment;
  predicted: { measure: Measure; direction: Direction; reason: string }[];
  may_predict: boolean;
  rows: ExperimentRow[];
  /** The condition that runs, and the world's time from which it counts; null where the bench was found in it. */
  now: { condition: string; from_s: number | null } | null;
  contrasts: Contrast[];
  fit: RecoveryFit | null;
  concluded: { measure: Measure; direction: Direction }[];
  closed: boolean;
  judged: JudgedConclusion[];
  remarks: { code: string; args: Record<string, number> }[];
  /** Rows whose count is not that of the beats, once the attempt is over. */
  off: number[];
};
