// @ts-check
// A page of the notebook made from an attempt that has been checked: what was asked, how the recorder stood, what was read, what
// the debrief said, and the trace as a small outline.

import { taskOf } from "../sheet/task.js";
import { idOf, readPage } from "./pages.js";
import { outline } from "./picture.js";
/** @import { Bench } from '../core.js' */
/** @import { Session } from '../session.js' */
/** @import { Check } from '../types/check' */
/** @import { NotebookPage, PageCheck } from '../types/page' */
/** @import { DisplayView, KeptRecording, RecorderSettings, View } from '../types/view' */

/** @type {(keyof RecorderSettings)[]} */
const SETTINGS = ["range_v", "high_pass_hz", "high_pass_order", "low_pass_hz", "low_pass_order", "notch_hz", "average_ms", "integral", "buffered", "inverted", "scale", "shown", "rate_hz", "bits"];
/** @type {(keyof DisplayView & keyof RecorderSettings)[]} */
const SHOWN = ["range_v", "high_pass_hz", "high_pass_order", "low_pass_hz", "low_pass_order", "notch_hz", "integral", "inverted", "scale"]; // of an opened recording
const ROOM = 0.06; // so much of the window is shown before and after it

/**
 * The page of a session, in place of what is kept of the same attempt; its note stays. at: ms since 1970.
 * @param {Session} session @param {number} at @returns {NotebookPage}
 */
export function pageOf(session, at) {
  const { view, bench } = session;
  const id = idOf(session);
  const old = readPage(id);
  const { check, cursors, trace, recordings, recorder, display } = view;
  if (!check) throw new Error("a page is made of a checked attempt");
  const kept = recordings.find((one) => one.recording === trace.recording);
  const task = taskOf(view);
  return {
    v: 1, id, at_ms: at, scenario: session.scenario, address: session.address, title: view.scenario?.title ?? view.recording_name, seed: session.seed, level: view.scenario?.level ?? null, kind: task.kind, mode: view.help ?? null,
    recorder: recorder ? Object.fromEntries(SETTINGS.map((name) => [name, recorder[name]])) : display && { unit: display.unit, ...Object.fromEntries(SHOWN.map((name) => [name, display[name]])) },
    time_base_s: view.time_base.s,
    recording: kept ? { recording: kept.recording, duration_s: kept.duration_s, label: kept.label ?? "" } : null,
    cursors: { a: cursors.a, b: cursors.b, interval_s: cursors.interval_s }, kept: cursors.kept ?? null, marks: view.marks,
    read: Object.fromEntries(Object.entries(view.worksheet).map(([field, { text }]) => [field, text])),
    named: view.named ?? [],
    check: { ...summary(check), ...(session.scenario ? {} : { rubric: null }) },
    hash: session.scenario ? bench.debriefHash() : null,
    picture: kept ? picture(bench, kept, cursors) : null,
    note: old?.note ?? "", experiment: view.experiment ?? null,
  };
}

/**
 * What a page keeps of a check.
 * @param {Check} check @returns {PageCheck}
 */
function summary({ try: tries, passed, over, steps, first_wrong: first, misreading, spread, rubric, truth, hints }) {
  return {
    tries, passed, over, first_wrong: first, hints: hints ?? 0,
    steps: steps.map(({ step, verdict, code }) => ({ step, verdict, code })),
    misreading: misreading?.id ?? null,
    band: spread?.band ?? null, window_s: spread?.window_s ?? null, others: spread?.others ? { n: spread.others.n, low: spread.others.q05, high: spread.others.q95 } : null,
    rubric: rubric ? { total: rubric.total, of: rubric.of, ready: rubric.ready, rows: rubric.rows.map(({ row, got, of, applies }) => ({ row, got, of, applies })) } : null,
    truth: truth ? { window: truth.own_window?.rate ?? truth.own_span?.rate ?? truth.window_rate ?? null, record: truth.record?.rate ?? truth.record_rate ?? null, beats: truth.beats_in_window ?? null, source: truth.source } : null,
    beats: truth?.beat_times ?? null,
  };
}

/** @param {Bench} bench @param {KeptRecording} kept @param {Pick<View["cursors"], "a" | "b">} cursors */
function picture(bench, kept, { a, b }) {
  const both = a !== null && b !== null;
  const [from, to] = both ? [Math.min(a, b), Math.max(a, b)] : [0, Math.min(kept.duration_s, 20)];
  const room = both ? ROOM * (to - from) : 0;
  return outline(bench.recordingCsv(kept.recording), Math.max(0, from - room), Math.min(kept.duration_s, to + room));
}
