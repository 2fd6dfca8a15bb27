// What can be done in an attempt, and the core's answer. Lengths in cm, times in s, voltages in V.

import type { Direction, Measure } from "./experiment";
import type { Aid, Args, End, Face, Field, LookAt, Manoeuvre, OtherHand, Part, Place, Socket, Switch, Which } from "./names";

/** At the bench. */
type BenchAction =
  | { do: "plug"; end: End; socket: Socket } | { do: "unplug"; end: End }
  | { do: "switch"; id: Switch; on: boolean }
  | { do: "move"; part: Part; x: number; y: number }
  | { do: "charger"; plugged: boolean }
  | { do: "strap_on" } | { do: "strap_off" } | { do: "strap"; tightness: number }
  | { do: "sensor_place"; place: Place } | { do: "sensor_side"; side: Face }
  | { do: "shade"; on: boolean } | { do: "other_hand"; on: OtherHand } | { do: "hand_height"; cm: number };

/** To the subject, the sensor or a plug. */
type PokeAction =
  | { do: "wiggle"; end: End } | { do: "look"; at: LookAt }
  | { do: "tap_sensor" | "ask_still" | "rescan" | "ask_quiet" | "ask_finger" | "swap_cable" | "press_finger" | "rest_arm" | "tell_instructor" }
  | { do: "push_up_sleeve" | "dry_plug" | "wipe_sensor" | "close_programs" }
  | { do: "manoeuvre"; what: Manoeuvre } | { do: "let_pass"; s: number };

/** At the recorder's settings; null turns a filter off. */
type RecorderAction =
  | { do: "input"; n: number } | { do: "range"; v: number } | { do: "rate"; hz: number } | { do: "bits"; n: number }
  | { do: "zero" } | { do: "zero_clear" } | { do: "invert"; on: boolean }
  | { do: "high_pass" | "low_pass"; hz: number | null; order?: number } | { do: "notch"; hz: number | null } | { do: "average"; ms: number | null }
  | { do: "anti_alias" | "buffered" | "calibrator" | "integral"; on: boolean } | { do: "shown"; on: boolean } | { do: "scale"; by: number };

/** On the trace and the worksheet. */
type PageAction =
  | { do: "time_base"; s: number } | { do: "show"; mode: "live" | "paused" }
  | { do: "record" } | { do: "stop" } | { do: "open_recording"; recording: number } | { do: "label"; recording: number; text: string }
  | { do: "scroll"; start_s: number } | { do: "zoom"; from_s: number; to_s: number } | { do: "zoom_out" }
  | { do: "cursor"; which: Which; t: number | null }
  | { do: "mark"; t: number } | { do: "unmark"; t: number } | { do: "marks_clear" } | { do: "snap"; on: boolean }
  | { do: "answer"; field: Field; text: string } | { do: "keep_window" } | { do: "keep_clear" }
  | { do: "name" | "unname"; fault: string } | { do: "explain"; text: string }
  | { do: "help"; mode: Aid } | { do: "agree" } | { do: "consent"; given: boolean } | { do: "hint" } | { do: "check" } | { do: "reveal" } | { do: "another_window" };

/** In an experiment. */
type ExperimentAction =
  | { do: "predict"; measure: Measure; direction: Direction; reason: string } | { do: "conclude"; measure: Measure; direction: Direction }
  | { do: "add_row"; condition: string } | { do: "row_note"; row: number; text: string } | { do: "remove_row"; row: number };

export type Action = BenchAction | PokeAction | RecorderAction | PageAction | ExperimentAction;

/** A kind of action that can tell one cause from another, with what it is done to; one without a field is done whatever its fields are. */
export type TestDeed = { do: Action["do"]; end?: End; at?: LookAt; part?: Part; id?: Switch };

/** What came of an action. */
export type Answer = { ok: true } | { ok: false; code: string; args?: Args };
/** Does an action; true when the world let it happen. */
export type Act = (action: Action) => boolean;
