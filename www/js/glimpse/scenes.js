// @ts-check
// The pictures of the three doors: five to each, drawn in the page's own line. A picture is a function of a stage (see player.js): it
// draws on a field of 240 x 150 and says what is drawn, moved or faded in while it is on.

import { s } from "../dom.js";
import { pen } from "../bench/pen.js";
import { drawPalm, TIP } from "../bench/palm.js";
import { fixed } from "../text.js";
/** @import { Stage } from './stage.js' */


/** One drawn beat, as a height of 0 to 1 over its length of 0 to 1: an upstroke, a fall, a notch and the small bump behind it. */
const TOP = 0.17;
/** @param {number} u @param {number} at @param {number} wide */
const bell = (u, at, wide) => Math.exp(-(((u - at) / wide) ** 2));
/** @param {number} u */
const beat = (u) => (u < TOP ? (1 - Math.cos((Math.PI * u) / TOP)) / 2 : (1 - (u - TOP) / (1 - TOP)) ** 2 - 0.1 * bell(u, 0.42, 0.06) + 0.17 * bell(u, 0.55, 0.08));

/**
 * A trace of `n` beats from x to x + w, its feet on y, `h` tall; `fuzz` is the height of the hum on it.
 * @param {number} n @param {number} x @param {number} y @param {number} w @param {number} h @param {number} [fuzz]
 */
function trace(n, x, y, w, h, fuzz = 0) {
  const steps = fuzz > 0 ? 260 : 30 * n;
  let d = "";
  for (let i = 0; i <= steps; i += 1) {
    const u = i / steps;
    const v = y - h * beat((u * n) % 1) + (fuzz > 0 && i % 2 ? fuzz : -fuzz) / 2;
    d += `${i ? "L" : "M"}${(x + u * w).toFixed(1)} ${v.toFixed(1)}`;
  }
  return d;
}

/**
 * Where the beats of a trace have their peaks.
 * @param {number} n @param {number} x @param {number} w
 */
const peaks = (n, x, w) => Array.from({ length: n }, (_, k) => x + (w * (k + TOP)) / n);

/**
 * The face of a small strip: its time line with a scratch a second.
 * @param {Stage} stage @param {number} [y]
 */
const face = (stage, y = 132) => stage.line(`M14 ${y}${"h21l.6 -4l.6 4".repeat(9)}h14`, "faint");

/** @param {Stage} stage @param {number} x @param {number} y */
function unit(stage, x, y) {
  const p = pen("glimpse-unit", 0.4);
  stage.shape(p.rect(x, y, 104, 60, 7));
  for (const k of [0, 1, 2]) stage.shape(p.circle(x + 104, y + 12 + 18 * k, 5.4));
  stage.line(p.line(x + 80, y + 2, x + 80, y + 58) + p.rect(x + 28, y + 30, 40, 20, 3));
}

/**
 * A hand from above, its fingertips at x, y.
 * @param {Stage} stage @param {number} x @param {number} y @param {number} [scale]
 */
function hand(stage, x, y, scale = 5.2) {
  const { skin, detail, sleeve } = drawPalm("glimpse-hand");
  const el = s("g", { class: "glimpse-hand", transform: `translate(${x - TIP[0] * scale} ${y - TIP[1] * scale}) scale(${scale})` }, sleeve, skin, detail);
  stage.add(el);
  return el;
}

/**
 * A sheet or card.
 * @param {Stage} stage @param {number} x @param {number} y @param {number} w @param {number} h @param {string} name
 */
const card = (stage, x, y, w, h, name) => stage.shape(pen(name, 0.4).rect(x, y, w, h, 4));

/** @param {Stage} stage @param {number} x @param {string} name @param {number} from */
const cursor = (stage, x, name, from) => {
  const el = stage.group(stage.line(`M${x} 22V128`, "amber", null), stage.text(name, x, 18, "amber middle", null));
  stage.fade(el, from);
  return el;
};


/** @type {Record<string, ((stage: Stage) => unknown)[]>} */
export const SCENES = {
  rehearse: [
    (stage) => { // a plug goes into its socket, and the lamp comes on
      unit(stage, 20, 34);
      const lead = stage.line("M236 128C190 150 150 148 128 126", "", null);
      const plug = stage.group(stage.shape("M-9 0h18v22h-18Z"), stage.line("M-4 0v-9M4 0v-9M0 22v16"));
      stage.move(plug, "translate(176px, 112px) rotate(-90deg)", "translate(131px, 46px) rotate(-90deg)", 1, 3.4);
      stage.draw(lead, 0, 1);
      const lead2 = stage.line("M169 46C188 46 192 78 202 100S224 124 236 128");
      stage.draw(lead2, 2.6, 3.6);
      const lamp = stage.group(stage.dot(77, 74, 9, "glow"), stage.dot(77, 74, 4, "amber"));
      stage.fade(lamp, 3.6);
    },
    (stage) => { // the fingertip lies in the cradle, and the strap goes over it
      const lead = stage.line("M80 62C60 70 40 104 8 110", "amber");
      stage.draw(lead, 2.6, 4);
      const pad = stage.group(stage.shape("M-13 18V-6C-12 -25 12 -25 13 -6V18Z", "warm"), stage.line("M-9 18V-5C-8 -19 8 -19 9 -5V18"));
      stage.move(pad, "translate(40px, 34px)", "translate(92px, 54px)", 0.6, 2.4);
      hand(stage, 92, 44, 6.2);
      const strap = stage.line("M78 54C86 51 98 51 106 54V63C98 60 86 60 78 63Z");
      stage.draw(strap, 2.4, 3.4);
    },
    (stage) => { // a small pulse is made to fill the strip
      face(stage);
      const small = stage.line(trace(5, 16, 118, 208, 92), "trace");
      stage.grow(small, "16px 118px", 0.16, 1, 2.2, 4.2);
      stage.fade(small, 0.2);
      const up = stage.line("M214 96V34M206 44l8 -12l8 12", "amber");
      stage.draw(up, 1.2, 2.4);
    },
    (stage) => { // the charger is taken away, and the fuzz with it
      face(stage);
      const fuzzy = stage.line(trace(5, 16, 116, 208, 66, 20), "trace fine");
      const clean = stage.line(trace(5, 16, 116, 208, 66), "trace");
      stage.draw(fuzzy, 0, 1.6);
      stage.fade(fuzzy, 3, 3.8, 1, 0);
      stage.fade(clean, 3, 3.8);
      const charger = stage.group(stage.shape(pen("glimpse-charger", 0.4).rect(0, 0, 40, 22, 5)), stage.line("M6 16L14 6M14 16L22 6M22 16L30 6", "faint"));
      stage.move(charger, "translate(98px, 14px)", "translate(214px, 0px)", 2, 3.6);
      stage.fade(charger, 3.2, 3.8, 1, 0);
    },
    (stage) => { // A, B, the beats between, and the sum
      const [n, x, w] = [6, 16, 208];
      face(stage);
      const line = stage.line(trace(n, x, 116, w, 62), "trace");
      stage.draw(line, 0, 1.4);
      cursor(stage, 40, "A", 1.4);
      cursor(stage, 212, "B", 1.9);
      peaks(n, x, w).slice(1).forEach((at, k) => stage.fade(stage.text(String(k + 1), at, 46, "amber middle"), 2.3 + 0.4 * k));
      stage.fade(stage.text(`60 × 5 / ${fixed(4.9, 1)} = 61`, 126, 148, "middle large"), 4.5);
    },
  ],
  check: [
    (stage) => { // a trace that is not as it should be
      face(stage);
      const line = stage.line(trace(5, 16, 116, 208, 58, 26), "trace fine");
      stage.draw(line, 0, 2);
      stage.fade(stage.text("?", 120, 46, "amber middle huge"), 2.4);
    },
    (stage) => { // a tap on the pad is a test: the spike says that the chain is whole
      const line = stage.line(`${trace(2, 16, 112, 74, 40)}L96 112L102 20L108 126L114 110${trace(3, 116, 112, 108, 40).replace("M", "L")}`, "trace");
      face(stage);
      stage.draw(line, 0.4, 3.6);
      const ring = stage.line(pen("glimpse-tap", 0.4).circle(105, 30, 18), "amber");
      stage.draw(ring, 2.2, 3);
    },
    (stage) => { // recorded, and a window marked
      const line = stage.line(trace(6, 16, 116, 208, 62), "trace");
      face(stage);
      stage.draw(line, 0.2, 3);
      stage.fade(stage.dot(222, 20, 7, "amber"), 0.2);
      cursor(stage, 42, "A", 3.2);
      cursor(stage, 212, "B", 4);
    },
    (stage) => { // the worksheet is filled in
      card(stage, 44, 8, 152, 132, "glimpse-sheet");
      /** @type {[string, string][]} */ ([["N =", "14"], ["T =", `${fixed(12.4, 1)} s`], ["×", fixed(4.84, 2)], ["=", "68"]]).forEach(([name, value], k) => {
        const y = 38 + 28 * k;
        stage.text(name, 62, y, "quiet");
        stage.line(`M92 ${y + 5}H178`, "faint");
        stage.fade(stage.text(value, 104, y, "large"), 0.8 + k);
      });
    },
    (stage) => { // each step is looked at; the first that slipped is marked
      card(stage, 44, 8, 152, 132, "glimpse-debrief");
      [0, 1, 2, 3].forEach((k) => {
        const y = 36 + 28 * k;
        stage.line(`M92 ${y - 4}H${150 + ((k * 13) % 28)}`, "faint");
        const sign = k === 2 ? stage.group(stage.line(pen("glimpse-mark", 0.5).circle(70, y - 5, 11), "amber"), stage.text("?", 70, y, "amber middle")) : stage.text("✓", 70, y, "middle");
        stage.fade(sign, 0.8 + 0.9 * k);
      });
    },
  ],
  assign: [
    (stage) => { // cards of faults, and how bad each may be
      /** @type {[string, number][]} */ ([["glimpse-card-a", 14], ["glimpse-card-b", 78]]).forEach(([name, y], k) => {
        card(stage, 30, y, 180, 54, name);
        stage.line(`M44 ${y + 16}H${128 - 26 * k}`);
        stage.line(`M44 ${y + 38}H196`, "faint");
        const thumb = stage.dot(0, 0, 6.5, "amber");
        stage.move(thumb, `translate(46px, ${y + 38}px)`, `translate(${k ? 96 : 164}px, ${y + 38}px)`, 1 + k, 2.6 + k);
      });
    },
    (stage) => { // what one student will meet
      card(stage, 34, 8, 172, 64, "glimpse-bench");
      stage.line(pen("glimpse-mini", 0.35).rect(50, 24, 44, 24, 4) + pen("glimpse-mini2", 0.35).rect(142, 20, 46, 34, 4));
      const lead = stage.line("M72 48C80 66 120 66 142 40", "amber");
      stage.draw(lead, 0.6, 2);
      stage.line("M34 84H206M34 140H206", "faint");
      const line = stage.line(trace(5, 36, 132, 168, 40, 9), "trace fine");
      stage.draw(line, 2, 4.6);
    },
    (stage) => { // what share of right answers each tolerance would fail
      [6, 22, 52, 112].forEach((w, k) => {
        const y = 20 + 30 * k;
        stage.line(`M56 ${y + 14}H214`, "faint");
        const bar = stage.shape(`M56 ${y}h${w}v14h-${w}Z`, k ? "warm" : "glow");
        stage.grow(bar, `56px ${y}px`, 0, 1, 0.6 + 0.7 * k, 1.8 + 0.7 * k, "X");
        stage.text(`±${[6, 4, 3, 2][k]}`, 46, y + 12, "quiet end");
      });
    },
    (stage) => { // one link for everyone
      card(stage, 20, 46, 78, 56, "glimpse-link");
      const p = pen("glimpse-dots", 0);
      let dots = "";
      for (let k = 0; k < 60; k += 1) if (p.next() > 0.45) dots += `M${36 + (k % 10) * 4.6} ${60 + Math.floor(k / 10) * 4.6}h3.6v3.6h-3.6Z`;
      stage.shape(dots, "ink");
      [[150, 22], [158, 74], [150, 126]].forEach(([x, y], k) => {
        const way = stage.line(`M100 74C118 ${74} 122 ${y} ${x - 16} ${y}`, "amber");
        stage.draw(way, 0.8 + 0.8 * k, 2 + 0.8 * k);
        const screen = stage.group(stage.shape(pen(`glimpse-screen-${k}`, 0.35).rect(x, y - 17, 60, 34, 4)), stage.line(trace(3, x + 6, y + 9, 48, 18), "trace fine"));
        stage.fade(screen, 1.6 + 0.8 * k);
      });
    },
    (stage) => { // who is ready, those who are not first
      card(stage, 30, 8, 180, 134, "glimpse-class");
      [0, 1, 2, 3, 4].forEach((k) => {
        const y = 32 + 24 * k;
        const row = stage.group(stage.line(`M66 ${y - 4}H${124 + ((k * 17) % 34)}`, k < 2 ? "" : "faint", null), k < 2 ? stage.line(pen(`glimpse-open-${k}`, 0.4).circle(48, y - 4, 6), "amber", null) : stage.text("✓", 48, y + 1, "middle", null));
        stage.fade(row, 0.5 + 0.7 * k);
      });
    },
  ],
};
