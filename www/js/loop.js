// @ts-check
// The frame loop: lets the world run on by real time, or some times as fast, and asks the trace to draw what is new.

const MAX_STEP_S = 0.25; // the core clamps too; a hidden tab must not come back with a leap
const FASTEST = 16;
const KEY = "dicrotic:speed";
const page = document.documentElement.dataset;

/** @param {string | null | undefined} text */
const within = (text) => Math.min(FASTEST, Math.max(1, Number(text) || 1));

/**
 * How many times as fast as real time the world runs, 1 to 16: ?speed=4 in the address, which holds for the tab until another is
 * asked for; data-speed of the page tells it and can be set. For showing a long recovery to a room, and for tests. Nobody gains by
 * it: the log and the recordings count samples, which are the same at any speed.
 */
function askedSpeed() {
  const asked = new URLSearchParams(location.search).get("speed");
  try {
    if (asked !== null) sessionStorage.setItem(KEY, String(within(asked)));
    return within(sessionStorage.getItem(KEY));
  } catch { // storage is off: the address alone counts
    return within(asked);
  }
}

page.speed = String(askedSpeed());

/** Runs `frame(dt)` each animation frame, more than once where much time is to pass; running can be turned off (the world waits) and on. */
export class Loop {
  /** @param {(dt: number) => unknown} frame */
  constructor(frame) {
    this.frame = frame;
    this.running = true;
    /** @type {number | null} */
    this.last = null;
    this.id = 0;
  }
  start() {
    /** @param {number} now */
    const step = (now) => {
      this.id = requestAnimationFrame(step);
      const dt = this.last === null ? 0 : Math.min((now - this.last) / 1000, MAX_STEP_S);
      this.last = now;
      this.pass(dt * within(page.speed));
    };
    this.id = requestAnimationFrame(step);
  }
  /**
   * Lets so much time pass, in equal pieces that the core takes; what a piece brings about (the world is held, the bench is left) holds for the next.
   * @param {number} seconds
   */
  pass(seconds) {
    const pieces = Math.max(1, Math.ceil(seconds / MAX_STEP_S));
    const { id } = this;
    for (let k = 0; k < pieces && this.id === id; k += 1) this.frame(this.running ? seconds / pieces : 0);
  }
  stop() {
    cancelAnimationFrame(this.id);
    this.id = 0;
  }
}
