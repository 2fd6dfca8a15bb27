// @ts-check
// The trace for the ear: a click a crest, higher for a taller one, and hum as hum. Off until asked for.

/** @import { Bench } from './core.js' */

const LATE_S = 0.06; // sounds are placed this far ahead, so that none comes too late
const LOW_HZ = 330, OCTAVES = 2; // pitch of a crest of no height, and how far up a full screen goes
const PLAY_HZ = 8000; // least that every browser plays

export class Sound {
  /**
   * bench: the core's side.
   * @param {Bench} bench
   */
  constructor(bench) {
    this.bench = bench;
    /** @type {AudioContext | null} */
    this.audio = null;
    this.next = 0;
    this.last = 0;
  }

  get on() {
    return this.audio !== null;
  }

  /** Turns it on or off; to be called from a press, as browsers ask. False where the device gives no sound. */
  toggle() {
    if (this.on) {
      this.end();
      return true;
    }
    if (!window.AudioContext) return false;
    const audio = (this.audio = new AudioContext());
    this.out = new GainNode(audio, { gain: 0.5 });
    // Small loudspeakers give nothing at 50 Hz: the shaper lifts what is faint and adds the harmonics that they do give.
    this.hum = new WaveShaperNode(audio, { curve: Float32Array.from({ length: 1025 }, (_, i) => Math.sign(i - 512) * Math.abs(i / 512 - 1) ** 0.5), oversample: "2x" });
    this.hum.connect(new GainNode(audio, { gain: 0.35 })).connect(this.out);
    this.out.connect(audio.destination);
    this.next = 0;
    return true;
  }

  end() {
    this.audio?.close();
    this.audio = null;
    this.bench.deafen();
  }

  /**
   * One frame: lets be heard what has come since the last one. running: whether the world runs.
   * @param {boolean} running
   */
  frame(running) {
    if (!this.audio || !running) return;
    const { hum, clicks, rate } = this.bench.hear();
    const now = this.audio.currentTime;
    for (let i = 0; i < clicks.length; i += 2) this.click(this.audio, Math.max(now, now + LATE_S - Math.min(clicks[i], LATE_S)), clicks[i + 1]);
    if (hum.length > 0 && rate > 0) this.play(this.audio, hum, rate, now);
  }

  /** @param {AudioContext} audio @param {number} at @param {number} height */
  click(audio, at, height) {
    const pitch = LOW_HZ * 2 ** (OCTAVES * Math.min(1, height));
    const tone = new OscillatorNode(audio, { type: "triangle", frequency: pitch });
    const loud = new GainNode(audio, { gain: 0 });
    loud.gain.setValueAtTime(0.8, at);
    loud.gain.exponentialRampToValueAtTime(0.001, at + 0.07);
    tone.connect(loud).connect(/** @type {GainNode} */ (this.out));
    tone.start(at);
    tone.stop(at + 0.08);
  }

  /**
   * Plays samples end to end with those before, by straight lines between them.
   * @param {AudioContext} audio @param {Float32Array} samples @param {number} rate @param {number} now
   */
  play(audio, samples, rate, now) {
    const step = Math.max(1, Math.ceil(PLAY_HZ / rate));
    const buffer = new AudioBuffer({ length: samples.length * step, sampleRate: rate * step });
    const out = buffer.getChannelData(0);
    let before = this.last;
    samples.forEach((value, k) => {
      for (let i = 0; i < step; i += 1) out[k * step + i] = before + ((value - before) * (i + 1)) / step;
      before = value;
    });
    this.last = before;
    if (this.next < now || this.next > now + 4 * LATE_S) this.next = now + LATE_S;
    const source = new AudioBufferSourceNode(audio, { buffer });
    source.connect(/** @type {WaveShaperNode} */ (this.hum));
    source.start(this.next);
    this.next += buffer.duration;
  }
}
