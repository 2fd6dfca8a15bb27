// The names that view and actions share: what lies on the table, what is asked, how it was judged.

export type End = "power_recorder" | "power_wall" | "data_recorder" | "data_computer" | "sensor";
export type Socket =
  | "recorder_inlet" | "recorder_data" | "in1" | "in2" | "in3" | "calibrator" | "port1" | "port2" | "port_charge"
  | "outlet1" | "outlet2" | "outlet3" | "outlet4" | "wall";
export type Shape = "inlet" | "outlet" | "data" | "port" | "signal" | "post";
/** What can be moved: parts, and the two handles of the sensor's cable. */
export type Part = "recorder" | "computer" | "power_strip" | "charger" | "phone" | "lamp" | "hand" | "cable1" | "cable2";
export type Switch = "recorder" | "power_strip" | "lamp";
export type Place = "pulp" | "middle" | "joint";
export type Face = "to_skin" | "away";
export type OtherHand = "lap" | "laptop" | "case";
export type Which = "a" | "b";

/** How much help an attempt has. */
export type Aid = "shown" | "half" | "alone";
/** What a question has read off the trace. */
export type Reads = "beats" | "intervals" | "heights" | "stretch" | "nothing";
/** A blank of the worksheet. */
export type Field =
  | "count" | "seconds" | "multiplier" | "rate" | "uncertainty" | "middle" | "range" | "amplitude" | "count_1" | "seconds_1" | "rate_1";
/** A step of the measurement. */
export type Step =
  | "name" | "trace" | "window_1" | "count_1" | "seconds_1" | "rate_1" | "window" | "count" | "seconds" | "multiplier" | "rate" | "middle"
  | "range" | "amplitude" | "uncertainty" | "plausible";
export type Verdict = "right" | "edge" | "wrong" | "note" | "missing";
export type Rung = "look" | "locate" | "rule" | "worked" | "answer";

/** What the subject can be asked to do. */
export type Manoeuvre =
  | "rest" | "deep_breath" | "breath_hold" | "stand_up" | "sit_down" | "grip" | "cold_other_hand" | "talk" | "laugh" | "ice_water"
  | "warm_hand" | "valsalva" | "face_immersion"
  | { paced_breathing: { per_min: number } } | { exercise: { seconds: number; effort: number } };

/** Numbers and names for a sentence of the page; which there are depends on its code. */
export type Args = Record<string, unknown>;
/** Something that the core says, for the page to put into words. */
export type Told = { code: string; args: Args };

/** A place of the bench that one can look at. */
export type LookAt = "recorder" | "computer" | "power_strip" | "cable" | "sensor" | "subject" | "around";

/** A point of the table in cm, or of a drawing. */
export type Point = [number, number];
export type ReadonlyPoint = readonly [number, number];
