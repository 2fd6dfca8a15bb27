// A camera for the tests: films that are made here, from a pulse that is known, in the form that Chromium's fake camera plays (Y4M: one
// header, then raw pictures). Each picture has its number drawn into it, so that it can be read back which one came when: the fake
// camera has a jitter of its own, and slows down on a machine that has other work.
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";
import { browserFlags, browserPath } from "./lib.mjs";

const WIDE = 160, HIGH = 120, FPS = 30;
const BITS = 12, BLOCK = 8; // the number: so many blocks along the upper edge, outside of the middle that the page looks at

/** A small repeatable noise, -1 to 1. */
function noise(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2147483648 - 1;
  };
}

/** The wave of a beat, 0 to 1, at a part of the beat from 0 to 1: a steep rise, a slow fall with a second wave on it. */
const wave = (u) => Math.exp(-(((u - 0.2) / 0.09) ** 2)) + 0.38 * Math.exp(-(((u - 0.5) / 0.13) ** 2));

/** The film of a pulse: of each picture how many beats there have been. A whole number of beats in all, so that it can be played round. */
export function rhythm({ bpm, seconds, breath = 0.03 }) {
  const frames = Math.round(seconds * FPS);
  const total = Math.round((bpm * seconds) / 60);
  const breaths = Math.max(1, Math.round(seconds * 0.25)); // whole ones, for the same reason
  return { total, beats: Array.from({ length: frames + 1 }, (_, k) => (total * k) / frames + (((breath * total) / breaths) / (2 * Math.PI)) * Math.sin((2 * Math.PI * breaths * k) / frames)) };
}

/** Colours are given as red, green and blue; pictures are kept as brightness and two differences (BT.601, studio range, as Y4M has it). */
function yuv([r, g, b]) {
  return [16 + 0.257 * r + 0.504 * g + 0.098 * b, 128 - 0.148 * r - 0.291 * g + 0.439 * b, 128 + 0.439 * r - 0.368 * g - 0.071 * b];
}

/**
 * Writes a film: colour(x, y, k) gives red, green and blue at a place of 0..1 for the picture k. To be quick, a picture is worked out in
 * cells of 4 by 4 points, each point with its own noise.
 */
export function film(name, frames, colour, grain = 3) {
  const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-film-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true })); // a film has some 35 MB
  const file = path.join(folder, `${name}.y4m`);
  const out = openSync(file, "w");
  const next = noise(7);
  const grains = Float32Array.from({ length: 65536 }, () => grain * (next() + next()));
  writeSync(out, `YUV4MPEG2 W${WIDE} H${HIGH} F${FPS}:1 Ip A1:1 C420jpeg\n`);
  const picture = Buffer.alloc(WIDE * HIGH * 1.5);
  const half = WIDE / 2;
  for (let k = 0; k < frames; k += 1) {
    let g = Math.floor((next() + 1) * 30000);
    for (let cy = 0; cy < HIGH; cy += 4) {
      for (let cx = 0; cx < WIDE; cx += 4) {
        const [y, u, v] = yuv(colour(cx / WIDE, cy / HIGH, k));
        for (let py = cy; py < cy + 4; py += 1) for (let px = cx; px < cx + 4; px += 1) picture[py * WIDE + px] = Math.max(0, Math.min(255, Math.round(y + grains[(g += 1) & 65535])));
        for (let py = cy / 2; py < cy / 2 + 2; py += 1) {
          for (let px = cx / 2; px < cx / 2 + 2; px += 1) {
            const at = WIDE * HIGH + py * half + px;
            picture[at] = Math.max(0, Math.min(255, Math.round(u + grains[(g += 1) & 65535] / 2)));
            picture[at + WIDE * HIGH * 0.25] = Math.max(0, Math.min(255, Math.round(v + grains[(g += 1) & 65535] / 2)));
          }
        }
      }
    }
    for (let bit = 0; bit < BITS; bit += 1) {
      const y = (k >> bit) & 1 ? 235 : 16;
      for (let py = 0; py < BLOCK; py += 1) picture.fill(y, py * WIDE + bit * BLOCK, py * WIDE + (bit + 1) * BLOCK);
      for (let py = 0; py < BLOCK / 2; py += 1) for (const plane of [1, 1.25]) {
        const at = WIDE * HIGH * plane + py * half + (bit * BLOCK) / 2;
        picture.fill(128, at, at + BLOCK / 2);
      }
    }
    writeSync(out, "FRAME\n");
    writeSync(out, picture);
  }
  closeSync(out);
  return file;
}

/** A fingertip on the lens, lit through: red, with the pulse in all three colours, a little darker towards one side. */
export function fingertip({ bpm, seconds = 40, depth = 0.02, ...more }) {
  const { total, beats } = rhythm({ bpm, seconds, ...more });
  const file = film(`finger-${bpm}`, beats.length - 1, (x, y, k) => {
    const blood = depth * wave(beats[k] % 1);
    const shade = 1 - 0.15 * x;
    return [205 * shade * (1 - 0.6 * blood), 62 * shade * (1 - 2 * blood), 44 * shade * (1 - 1.6 * blood)];
  });
  return { file, beats, total };
}

/** A table top: brown, with a grain, and nothing that beats. */
export const tableTop = () => film("table", 300, (x, y) => {
  const vein = Math.sin(40 * y + 6 * Math.sin(3 * x));
  return [150 + 18 * vein, 112 + 14 * vein, 76 + 10 * vein];
});

/** A finger that does not keep still: it slides off and on, and presses more and less, each by far more than a pulse changes anything. */
export function movingFinger() {
  const next = noise(3);
  const walk = () => {
    let at = 0, to = 0, left = 0;
    return Array.from({ length: 600 }, () => {
      if ((left -= 1) < 0) [to, left] = [next(), 6 + Math.floor(9 * (next() + 1))]; // another place every quarter to whole second
      return (at += (to - at) * 0.25);
    });
  };
  const slides = walk(), presses = walk();
  const { beats } = rhythm({ bpm: 70, seconds: 20 });
  return film("moving", 600, (x, y, k) => {
    const light = Math.max(0, Math.min(1, 4 * (x - 0.62 + 0.3 * slides[k]))); // what comes past the finger
    const blood = 0.02 * wave(beats[k] % 1) + 0.25 * presses[k];
    const skin = [195 * (1 - 0.3 * blood), 62 * (1 - blood), 44 * (1 - 0.8 * blood)];
    return skin.map((v, i) => v * (1 - light) + [214, 206, 190][i] * light);
  });
}

/** A face-like picture: an oval of the colour of skin before a wall, with eyes and a mouth, and the faint pulse that skin has in open
 * light: a few thousandths in green (from memory), where a fingertip on the lens has a hundredth and more. */
export function faceLike() {
  const { beats } = rhythm({ bpm: 75, seconds: 20 });
  return film("face", 600, (x, y, k) => {
    const inside = ((x - 0.5) / 0.26) ** 2 + ((y - 0.52) / 0.4) ** 2 < 1;
    if (!inside) return [120, 132, 140];
    const eyes = Math.abs(y - 0.42) < 0.03 && (Math.abs(x - 0.4) < 0.04 || Math.abs(x - 0.6) < 0.04);
    const mouth = Math.abs(y - 0.72) < 0.02 && Math.abs(x - 0.5) < 0.09;
    if (eyes) return [60, 48, 44];
    if (mouth) return [168, 84, 80];
    const blood = 0.0025 * wave(beats[k] % 1);
    return [206 * (1 - 0.3 * blood), 164 * (1 - blood), 138 * (1 - 0.6 * blood)];
  });
}

/** Notes for each picture that a page's video gets when it came and which number it has. Put into the page before it loads. */
export const countPictures = ({ BITS: bits, BLOCK: block }) => {
  const asked = HTMLVideoElement.prototype.requestVideoFrameCallback;
  const canvas = document.createElement("canvas");
  canvas.width = bits * block;
  canvas.height = block;
  const context = canvas.getContext("2d", { willReadFrequently: true });
  window.pictures = [];
  HTMLVideoElement.prototype.requestVideoFrameCallback = function (callback) {
    return asked.call(this, (now, told) => {
      context.drawImage(this, 0, 0, canvas.width, block, 0, 0, canvas.width, block);
      const { data } = context.getImageData(0, block / 2, canvas.width, 1);
      let number = 0;
      for (let bit = 0; bit < bits; bit += 1) if (data[4 * (bit * block + block / 2)] > 127) number |= 1 << bit;
      window.pictures.push([told.captureTime ?? told.mediaTime * 1000, number]);
      callback(now, told);
    });
  };
};
export const counterShape = { BITS, BLOCK };

/** Beats a minute that the pictures truly showed in the last so many seconds, by their own numbers and times. */
export function shownRate(pictures, { beats, total }, seconds) {
  const frames = beats.length - 1;
  const end = pictures.at(-1)[0];
  const part = pictures.filter(([at]) => at >= end - seconds * 1000);
  let rounds = 0;
  let before = part[0][1];
  const sum = part.map(([at, number]) => {
    if (number < before - frames / 2) rounds += 1;
    before = number;
    return [at, beats[number] + rounds * total];
  });
  const [first, last] = [sum[0], sum.at(-1)];
  return ((last[1] - first[1]) / (last[0] - first[0])) * 60000;
}

/** The longest time between two pictures in the last so many seconds, s. */
export function longestGap(pictures, seconds) {
  const part = pictures.filter(([at]) => at >= pictures.at(-1)[0] - seconds * 1000);
  return Math.max(...part.slice(1).map(([at], k) => at - part[k][0])) / 1000;
}

/** A Chromium of its own whose camera plays a film; without one it has no camera. `more` are further flags. */
export const withCamera = (file, more = []) => chromium.launch({
  executablePath: browserPath,
  args: [...browserFlags, "--use-fake-ui-for-media-stream", ...(file === null ? [] : ["--use-fake-device-for-media-stream", ...(file ? [`--use-file-for-fake-video-capture=${file}`] : [])]), ...more],
});
