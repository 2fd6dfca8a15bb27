// Everything that the core tells of an attempt, for the page to show. A test holds real views against this file.
// Lengths in cm, times in s, voltages in V.

import type { TestDeed } from "./action";
import type { Check } from "./check";
import type { AskedExperiment, Experiment } from "./experiment";
import type { Aid, Args, End, Face, Field, OtherHand, Part, Place, Point, Rung, Shape, Socket, Step, Switch, Reads } from "./names";

/** A part with its middle and footprint; the handles of the sensor's cable are among them (Bench.view in core.js). */
export type PartAt = { id: Part; x: number; y: number; w: number; d: number; movable: boolean };
export type SocketAt = { id: Socket; part: Part | null; kind: Shape; x: number; y: number; taken_by: End | "charger" | null };
export type EndAt = { id: End; cable: "power" | "data" | "sensor"; kind: Shape; socket: Socket | null; x: number; y: number };
export type Strap = {
  on: boolean; tightness: number; place: Place; side: Face; feel: "off" | "loose" | "snug" | "tight"; shaded: boolean; other_hand: OtherHand;
};
export type HandAt = { x: number; y: number; height_cm: number; finger_x: number; finger_y: number; looks: "calm" | "moving" | "dusky" };

export type BenchView = {
  table: { w: number; d: number };
  parts: PartAt[];
  sockets: SocketAt[];
  ends: EndAt[];
  switches: Record<Switch, boolean>;
  lamps: { recorder: boolean; power_strip: boolean; charger: boolean; lamp: boolean };
  charger_plugged: boolean;
  strap: Strap;
  hand: HandAt;
  cable: { points: Point[]; slack_cm: number; handles: Point[]; shield: "good" | "damaged" | "none" };
  voice: "quiet" | "talking" | "sighing";
  /** What an eye sees beside: at the forearm, on the sensor, at the table, at the plug, on the screen of the computer. */
  sleeve_tight: boolean; thumb_holds: boolean; shaken: boolean; plug_damp: boolean; smeared: boolean; other_program: boolean;
  /** What the subject answered last. */
  said: "will_keep_still" | "am_still" | "will_be_quiet" | "finger_cold" | "finger_warm" | "finger_throbs" | "hand_full" | null;
};

export type RecorderSettings = {
  input: number; range_v: number; bits: number; rate_hz: number; zero_v: number; inverted: boolean;
  high_pass_hz: number | null; high_pass_order: number; low_pass_hz: number | null; low_pass_order: number; notch_hz: number | null;
  average_ms: number | null; integral: boolean; anti_alias: boolean; buffered: boolean; calibrator: boolean; shown: boolean; scale: number;
};
export type RecorderView = RecorderSettings & {
  choices: {
    range_v: number[]; time_base_s: number[]; rate_hz: number[]; bits: number[]; high_pass_hz: number[]; low_pass_hz: number[];
    notch_hz: number[]; average_ms: number[]; input: number[]; scale: number[];
  };
};

/** How an opened recording is shown. Range and zero are in its own unit: "V", what the file has, or "" where it tells none. */
export type DisplayView = Pick<RecorderSettings, "range_v" | "zero_v" | "inverted" | "high_pass_hz" | "high_pass_order" | "low_pass_hz" | "low_pass_order" | "notch_hz" | "integral" | "scale"> & {
  unit: string;
  /** Whether the samples that are shown are the file's own. */
  as_in_file: boolean;
  /** range_v: the widest first, and before it 0, the whole height. */
  choices: { range_v: number[]; high_pass_hz: number[]; low_pass_hz: number[]; notch_hz: number[]; scale: number[] };
};

export type Assignment = { key: string; seeds: "each" | "same"; attempts: number | null; opening: string; closing: string; study: string };
/** What a scenario asks of a reading; shares as 0 to 1. */
export type Criteria = {
  fill_min: number; fill_max: number; hum_ratio: number; quality_min: number; clip_share: number; record_s: number; window_s: number; edge_s: number;
};
/** What a scenario tells before it is begun. */
export type Brief = {
  id: string; level: number; title: string; aim: string; brief: string; help: "guided" | "alone"; power_line: { hz: number; volts: number };
  pass: Criteria; name_faults: boolean; task: { kind: string }; worked: boolean; assignment: Assignment | null;
  /** The skills that it asks for. */
  skills: string[];
  /** Skills that it may ask for beside those, by what its pool draws: in which share of the draws, 0 to 1. */
  may_ask: Record<string, number>;
  experiment: AskedExperiment | null;
};

export type Task = {
  kind: string; reads: Reads; windows: number; fields: Field[]; optional: Field[]; needs: { code: string; args: Record<string, number> }[];
  seconds?: number; n?: number; at_least_s?: number; longest_s?: number; within_s?: number;
};
/** A blank as the core reads it. */
export type Entry = {
  text: string; value: number | null; quotient: boolean;
  problem: "empty" | "not_a_number" | "two_signs" | "negative" | "too_long" | "divided_by_zero" | null;
};

export type Kept = { a: number; b: number; interval_s: number; recording: number };
export type Cursors = {
  a: number | null; b: number | null; interval_s: number | null; value_a: number | null; value_b: number | null; amplitude: number | null;
  /** The first of two windows. */
  kept: Kept | null;
};
export type KeptRecording = { recording: number; duration_s: number; rate_hz: number; label: string; after_s: number | null };
export type Note = { at_s: number; length_s: number | null; text: string };

/** Where a hint points: a stretch of the recording, a cursor, a blank, an action that would tell. */
export type Locate = { from_s?: number; to_s?: number; cursor?: "a" | "b"; field?: Field; action?: TestDeed };
export type Hint = { rung: Rung; step: Step; code: string; args: Args; locate?: Locate; words?: string };

export type TraceView = { mode: "live" | "paused" | "recording"; start_s: number; time_base_s: number; recording: number | null; zoomed: boolean };

export type View = {
  revision: number;
  kind: "bench" | "recording";
  seed: string;
  /** null for an opened recording, as are bench and recorder; then recording_name is its name. */
  scenario: Brief | null;
  recording_name: string | null;
  bench: BenchView | null;
  recorder: RecorderView | null;
  /** null on the bench. */
  display: DisplayView | null;
  link: { seen: boolean };
  trace: TraceView;
  time_base: { s: number; choices: number[] };
  recording: { on: boolean; elapsed_s: number };
  recordings: KeptRecording[];
  cursors: Cursors;
  marks: number[];
  marks_in_window: number;
  notes: Note[];
  task: Task;
  worksheet: { [field in Field]?: Entry };
  named: string[];
  /** How the student says that they know what is wrong. */
  explained: string;
  help: Aid;
  helped: boolean;
  snap: boolean;
  agreed: boolean;
  count_shown: boolean;
  exercise_ended_s: number | null;
  hint: Hint | null;
  hint_next: Rung | null;
  hints: number;
  /** The hints that were given, the last one last. */
  hints_taken: Hint[];
  /** How many checks were made, and how many there are. */
  checks: { done: number; most: number; /** which window of an opened recording is read, from 1 */ window: number };
  /** What the attempt is scored for: rows of the rubric with the codes of their points. */
  asked: { row: string; points: string[] }[];
  over: boolean;
  check: Check | null;
  /** null where the scenario has none. */
  experiment: Experiment | null;
};
