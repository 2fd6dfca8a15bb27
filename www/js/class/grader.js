// @ts-check
// Grading off the main thread: as many workers as the machine has to spare take what waits, one thing each at a time.

/** @import { Args } from '../types/names' */
/** @import { Source } from '../types/told' */

/** So many workers at most, here and for the answer key. */
export const WORKERS = Math.min(4, navigator.hardwareConcurrency || 2);

/**
 * What waits: its source, or how to get at it; joined: a code across the line ends of a mail.
 * @typedef {{ file: string, source?: Source, read?: () => Promise<Source>, joined?: string }} Waiting
 * @typedef {{ job: number, graded?: string, scenario?: string, used?: string, error?: string }} Answer
 * @typedef {{ worker: Worker, job: number | null }} Hand
 */

export class Grader {
  /**
   * took(source, graded): something was graded; refused(source, code, args): it could not be; moved(): so far it is.
   * @param {{ took: (source: Source, graded: string) => void, refused: (source: Source, code: string, args: Args) => void, moved: () => void }} ways
   */
  constructor(ways) {
    this.ways = ways;
    /** @type {Waiting[]} */
    this.queue = [];
    /** @type {Map<number, { one: Waiting, source: Source, stale: boolean }>} */
    this.running = new Map();
    /** @type {Hand[]} */
    this.hands = [];
    /** @type {[string, string][]} */
    this.set = [];
    /** @type {Record<string, string>} */
    this.known = {};
    /** @type {Map<number, () => void>} */
    this.out = new Map(); // what is told in the order in which it came in, whoever was faster
    this.done = this.total = this.jobs = this.reading = this.told = 0;
  }

  get busy() {
    return this.queue.length + this.running.size + this.reading + this.out.size > 0;
  }

  /** @param {Waiting[]} all */
  add(all) {
    if (!this.busy) this.done = this.total = 0;
    this.queue.push(...all);
    this.total += all.length;
    this.ways.moved();
    this.next();
  }

  /**
   * What results are compared with from now on; what is under way is graded once more.
   * @param {[string, string][]} set
   */
  give(set) {
    this.set = set;
    for (const one of this.running.values()) one.stale = true;
    for (const { worker } of this.hands) worker.postMessage({ set });
  }

  /**
   * Scenarios that codes may belong to, by the beginning of their digest.
   * @param {Record<string, string>} known
   */
  know(known) {
    Object.assign(this.known, known);
    for (const { worker } of this.hands) worker.postMessage({ known });
  }

  next() {
    while (this.queue.length > 0) {
      const hand = this.hands.find((one) => one.job === null) ?? (this.hands.length < WORKERS ? this.hire() : null);
      if (!hand) return;
      const one = this.queue.shift();
      if (one) this.start(hand, one);
    }
  }

  hire() {
    const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
    /** @type {Hand} */
    const hand = { worker, job: null };
    worker.addEventListener("message", ({ data }) => this.answered(hand, data));
    worker.addEventListener("error", (event) => hand.job !== null && this.answered(hand, { job: hand.job, error: JSON.stringify({ code: "core_stopped", args: { told: event.message ?? "" } }) }));
    worker.postMessage({ set: this.set, known: this.known });
    this.hands.push(hand);
    return hand;
  }

  /** @param {Hand} hand @param {Waiting} one */
  async start(hand, one) {
    const job = (hand.job = this.jobs += 1);
    this.reading += 1;
    /** @type {Source} */
    let source = { file: one.file };
    try {
      source = one.source ?? (await one.read?.()) ?? source;
    } catch { /* a file that has gone away since: it says no more than that it is no result */ }
    this.reading -= 1;
    if (hand.job !== job) return; // cancelled meanwhile
    this.running.set(job, { one, source, stale: false });
    hand.worker.postMessage({ job, source: source.text || source.code ? source : { ...source, text: " " }, joined: one.joined });
  }

  /** @param {Hand} hand @param {Answer} answer */
  answered(hand, { job, graded, scenario, used, error }) {
    const known = this.running.get(job);
    if (!known || hand.job !== job) return;
    this.running.delete(job);
    hand.job = null;
    const { one, source, stale } = known;
    if (stale) this.queue.push(one);
    else this.done += 1;
    this.out.set(job, () => {
      if (stale) return;
      if (graded !== undefined) this.ways.took(source.text ? source : { ...source, code: used ?? source.code, scenario }, graded);
      else {
        const { code, args } = JSON.parse(error ?? '{"code":"core_stopped"}');
        this.ways.refused(source.code ? { ...source, code: used ?? source.code } : source, code, args ?? {}); // joined it may be tried again, once its bench is at hand
      }
    });
    for (let tell = this.out.get(this.told + 1); tell; tell = this.out.get(this.told + 1)) {
      this.told += 1;
      this.out.delete(this.told);
      tell();
    }
    this.next();
    this.ways.moved();
  }

  /** Lets go of all that waits; how much that was. */
  cancel() {
    const left = this.queue.length + this.running.size + this.reading;
    this.queue = [];
    this.running.clear();
    const waits = [...this.out].sort(([a], [b]) => a - b);
    this.out.clear();
    for (const [, tell] of waits) tell(); // done is done
    this.told = this.jobs;
    this.end();
    this.ways.moved();
    return left;
  }

  end() {
    for (const hand of this.hands) {
      hand.job = null;
      hand.worker.terminate();
    }
    this.hands = [];
    this.reading = 0;
  }
}
