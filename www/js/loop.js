// @ts-check
// The frame loop: lets the world run on by real time and asks the strip to draw what is new.

const MAX_STEP_S = 0.25; // the core clamps too; a hidden tab must not come back with a leap

/** Runs `frame(dt)` each animation frame; running can be turned off (the world waits) and on. */
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
      this.frame(this.running ? dt : 0);
    };
    this.id = requestAnimationFrame(step);
  }
  stop() {
    cancelAnimationFrame(this.id);
  }
}
