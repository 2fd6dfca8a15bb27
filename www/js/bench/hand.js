// The subject's right hand, palm down, with sleeve, finger pad and strap. Drawn in a frame of its own (cm) and then
// turned and scaled so that the index fingertip lies where the core says.

import { attr, flag, s } from "../dom.js";
import { t } from "../text.js";
import { inked, stroke } from "./marks.js";
import { pen, smooth } from "./pen.js";

const TIP = [-3.1, -13.1]; // index fingertip in the hand's own frame
const LARGER = 1.22; // drawn larger than life from the fingertip on, as a hand that one draws is
const KNUCKLE = [-2.6, -4.2].map((v, i) => TIP[i] + LARGER * (v - TIP[i]));

/** Each finger: where it leaves the palm, its tip, and its breadth at the web, both joints and behind the nail. */
const FINGERS = {
  index: { from: [-2.85, -6.6], tip: TIP, breadth: [2, 2.05, 1.85, 1.55] },
  middle: { from: [-0.42, -6.9], tip: [-0.6, -14.5], breadth: [2, 2.08, 1.9, 1.6] },
  ring: { from: [1.95, -6.6], tip: [2.55, -13.3], breadth: [1.95, 2, 1.8, 1.5] },
  little: { from: [4.05, -5.3], tip: [5.5, -10.3], breadth: [1.75, 1.7, 1.54, 1.3] },
};
const JOINTS = [0, 0.42, 0.74, 0.92];

/** A point of a finger: `along` from its web to its tip, `aside` breadths to its right. */
function onFinger({ from, tip, breadth }, along, aside) {
  const [dx, dy] = [tip[0] - from[0], tip[1] - from[1]];
  const len = Math.hypot(dx, dy);
  const k = JOINTS.findLastIndex((joint) => joint <= along);
  const next = Math.min(k + 1, JOINTS.length - 1);
  const u = next === k ? 0 : (along - JOINTS[k]) / (JOINTS[next] - JOINTS[k]);
  const wide = breadth[k] + u * (breadth[next] - breadth[k]);
  return [from[0] + along * dx - (dy / len) * aside * wide, from[1] + along * dy + (dx / len) * aside * wide];
}

/** Up the left side of a finger, round its tip, and down the right side. */
const around = (finger) => [...[0.03, ...JOINTS.slice(1)].map((u) => onFinger(finger, u, -0.5)), onFinger(finger, 0.985, -0.27), finger.tip, onFinger(finger, 0.985, 0.27), ...[...JOINTS.slice(1).reverse(), 0.03].map((u) => onFinger(finger, u, 0.5))];

const THUMB = [[-3.7, 3], [-5.1, 1.3], [-6.5, -0.9], [-7.7, -3.1], [-8.35, -4.6], [-8.3, -5.6], [-7.75, -5.95], [-7.1, -5.55], [-6.45, -4.1], [-5.75, -2.75], [-4.85, -2]];
const OUTLINE = [
  [-2.9, 14], [-2.85, 9], [-2.95, 5.2], ...THUMB, [-4.1, -3.2], ...around(FINGERS.index), [-1.63, -6.5],
  ...around(FINGERS.middle), [0.78, -6.7], ...around(FINGERS.ring), [3, -5.7], ...around(FINGERS.little), [4.75, -3.2], [4.85, -0.6], [4.25, 2.4], [3.2, 4.9], [3.2, 8], [3.9, 14],
];
const SLEEVE = "M-4.200 6.900C-1.500 6 2.300 6 4.700 7C6.200 13 9.500 26 13 56H-7.500C-5.500 36 -4.100 16 -4.200 6.900Z";

/** A short arc across a finger, bowed towards the palm. */
function crease(finger, along, half = 0.34) {
  const [a, b, dip] = [onFinger(finger, along, -half), onFinger(finger, along, half), onFinger(finger, along - 0.05, 0)];
  return `M${a}Q${dip} ${b}`;
}

/** The nail: a rounded plate behind the tip. */
function nail(finger) {
  const p = (along, aside) => onFinger(finger, along, aside);
  return `M${p(0.85, -0.27)}C${p(0.83, -0.1)} ${p(0.83, 0.1)} ${p(0.85, 0.27)}L${p(0.955, 0.3)}C${p(0.985, 0.12)} ${p(0.985, -0.12)} ${p(0.955, -0.3)}Z`;
}

/** Where along the index finger the pad sits: share of the way from tip to knuckle. */
const PLACE = { pulp: 0.12, middle: 0.42, joint: 0.27 };

export class Hand {
  constructor() {
    const p = pen("hand", 0.05);
    const shape = smooth(OUTLINE);
    const again = smooth(OUTLINE.map(([x, y]) => [x + p.off(), y + p.off()]));
    const all = Object.values(FINGERS);
    const creases = all.map((finger) => crease(finger, 0.42, 0.3) + crease(finger, 0.74, 0.26)).join("");
    const knuckles = "M-3.400 -4.100Q-2.700 -4.700 -1.900 -4.200M-1.100 -4.800Q-.3 -5.400 .5 -4.800M1.200 -4.500Q1.900 -5 2.600 -4.300M3.300 -3.100Q3.900 -3.500 4.400 -2.800M-6.900 -2.900Q-6.300 -3.100 -6 -3.500";
    const sinews = "M-2.500 -3.200C-2.200 -1.800 -1.800 -.6 -1.400 .4M-.3 -3.900C-.1 -2.400 0 -1.200 0 0M1.700 -3.500C1.500 -2.200 1.300 -1 1.100 .1";
    const thumbNail = "M-8.200 -4.900C-8 -5.300 -7.500 -5.500 -7.200 -5.300L-7.600 -5.800C-7.900 -5.900 -8.200 -5.700 -8.250 -5.400Z";
    this.skin = s("g", {}, s("path", { class: "skin", d: shape }), s("path", { class: "ln", d: shape }), s("path", { class: "ln ln-2", d: again }));
    this.detail = s("g", {}, stroke(creases + knuckles, "thin"), stroke(all.map(nail).join("") + thumbNail, "nail"), stroke(sinews, "thin faint"),
      stroke("M4.100 -1.900l-.9 1.500M4.300 -.7l-1.200 2M4.100 .9l-1.100 1.800M3.700 2.300l-.8 1.300", "thin faint"), stroke("M-2.400 5.600Q.2 6.400 2.700 5.500", "thin faint"));
    this.sleeve = s("g", {}, s("path", { class: "fill-body-2", d: SLEEVE }), stroke(SLEEVE), stroke("M-4.200 8.700C-1.500 7.800 2.500 7.800 5.200 8.800", "thin"), stroke("M-2.600 9.600l-.3 4M.6 9.200l.2 5M3.600 9.600l.8 4", "thin faint"));
    const [tipX, tipY] = TIP;
    this.dusk = s("g", { class: "dusk" }, s("path", { class: "dusk-fill", d: `M${tipX} ${tipY + 0.75}L${tipX + 0.07} ${tipY + 3}`, "stroke-width": 1.35, "stroke-linecap": "round" }),
      stroke(`M${tipX - 0.6} ${tipY + 1.1}l.9 -.8M${tipX - 0.6} ${tipY + 2}l1.200 -1M${tipX - 0.6} ${tipY + 2.9}l1.300 -1.100`, "thin"));
    this.motion = s("g", { class: "motion" }, stroke("M-5 -14.200q-1 1.600 -.6 3.600M-6.200 -14.800q-1.600 2.400 -1 5.200M-1.500 -15.700q-.9 -1 -2.300 -1M-.9 -17q-1.600 -1.500 -3.800 -1.400", "thin"));

    // the pad and its strap: in the finger's frame, the finger running down the page from its tip at 0,0
    this.padDisc = s("g", { class: "pad-disc" }, inked(() => p.circle(0, -0.1, 1.55), "plug"), stroke(p.circle(0, -0.1, 1.1), "thin"));
    this.padFace = s("g", { class: "pad-face" }, stroke("M-.8 -.4h1.600M-.9 .1h1.800M-.8 .6h1.600", "thin amber"));
    this.strapOff = s("g", { class: "strap-off" }, stroke("M-1.500 .3c-2 -.5 -2.700 1.400 -4.600 .8M1.500 .3c1.800 .6 2.400 -1.200 4.400 -.4", "strap-tail"));
    this.below = s("g", { class: "pad" }, this.strapOff, this.padDisc);
    this.band = s("g", { class: "band" });
    this.pinch = s("g", { class: "pinch" }, stroke("M-1.700 -1.500l.7 .6M1.700 -1.500l-.7 .6M-1.700 1.900l.7 -.6M1.700 1.900l-.7 -.6", "thin"));
    this.strapped = s("g", { class: "press pad", data: { press: "tap:" } }, s("circle", { class: "hit", r: 3.2 }), this.band, this.padFace, this.pinch,
      s("circle", { class: "tap-ring", r: 2.6 }), s("title", {}, t("list.tap_pad")));

    this.shadow = s("path", { class: "hand-shadow", d: `${shape}Z${SLEEVE}` });
    this.hit = s("path", { class: "hit", d: "M-9 -15.500H7V30H-9Z" });
    const larger = s("g", { transform: `translate(${TIP}) scale(${LARGER}) translate(${TIP.map((v) => -v)})` }, this.skin, this.detail, this.dusk, this.motion, this.sleeve);
    const shade = s("g", { transform: larger.getAttribute("transform") }, this.shadow);
    this.turned = s("g", {}, shade, larger, this.hit);
    this.el = s("g", { class: "part part-hand movable", data: { drag: "part:hand" } }, this.turned);
  }

  /** Draws the hand as the core says; returns the point where the lead meets the pad. */
  draw(hand, strap) {
    const dx = hand.finger_x - hand.x, dy = hand.finger_y - hand.y;
    const scale = Math.hypot(dx, dy) / Math.hypot(...TIP) || 1;
    const turn = ((Math.atan2(dy, dx) - Math.atan2(TIP[1], TIP[0])) * 180) / Math.PI;
    attr(this.el, "transform", `translate(${hand.x.toFixed(2)} ${hand.y.toFixed(2)})`);
    attr(this.turned, "transform", `rotate(${turn.toFixed(2)}) scale(${scale.toFixed(3)})`);
    const lift = Math.max(0, hand.height_cm + 2);
    attr(this.shadow, "transform", `translate(${(0.5 + lift * 0.06).toFixed(2)} ${(0.7 + lift * 0.09).toFixed(2)})`);
    flag(this.el, "is-moving", hand.looks === "moving");
    flag(this.el, "is-dusky", hand.looks === "dusky");

    // the index finger's own direction on the table, from the tip to the knuckle
    const rad = (turn * Math.PI) / 180;
    const map = ([x, y]) => [hand.x + scale * (x * Math.cos(rad) - y * Math.sin(rad)), hand.y + scale * (x * Math.sin(rad) + y * Math.cos(rad))];
    const tip = map(TIP), root = map(KNUCKLE);
    const along = strap.on ? (PLACE[strap.place] ?? PLACE.pulp) : 0;
    const spot = strap.on ? [tip[0] + (root[0] - tip[0]) * along, tip[1] + (root[1] - tip[1]) * along] : [tip[0] - 8, tip[1] - 1];
    const finger = strap.on ? (Math.atan2(root[1] - tip[1], root[0] - tip[0]) * 180) / Math.PI - 90 : -24;
    const place = `translate(${spot.map((v) => v.toFixed(2))}) rotate(${finger.toFixed(1)}) scale(${(scale * LARGER).toFixed(3)})`;
    for (const el of [this.below, this.strapped]) {
      attr(el, "transform", place);
      for (const [name, on] of [["is-on", strap.on], ["is-away", strap.face === "away"], ["is-tight", strap.on && strap.feel === "tight"]]) flag(el, name, on);
    }
    this.drawBand(strap);
    return spot;
  }

  /** The strap over the finger: a loose one stands off it, a tight one cuts in. */
  drawBand(strap) {
    const half = 1.8 - 0.85 * strap.tightness;
    const key = half.toFixed(2);
    if (this.bandKey === key) return;
    this.bandKey = key;
    const p = pen("band", 0.035);
    this.band.replaceChildren(...inked(() => p.rect(-half, -0.65, 2 * half, 1.5, 0.35), "plug").flat(), stroke(`M${-half + 0.25} -.2H${half - 0.25}M${-half + 0.25} .4H${half - 0.25}`, "thin faint"));
  }
}
