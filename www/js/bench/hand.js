// The subject's forearm, hand, finger and the strapped pad. Drawn in a frame of its own and then turned and scaled so
// that the index fingertip lies where the core says.

import { attr, flag, s } from "../dom.js";
import { t } from "../text.js";
import { inked, stroke } from "./marks.js";
import { pen } from "./pen.js";

const TIP = [-4.6, -13.6]; // index fingertip in the hand's own frame
const KNUCKLE = [-3, -3.2];
const FINGERS = [
  [KNUCKLE, TIP, 2.5], [[-0.5, -3.8], [-0.7, -15], 2.55], [[2, -3.2], [3.1, -13.6], 2.4], [[4.2, -1.6], [6.9, -9.6], 2.05],
];
const THUMB = "M-2.500 5.500C-5.500 3.500 -7.200 .8 -8.900 -3.200";
const ARM = "M-3.300 8C-3.500 13 -3.300 19 -4.800 30C-5.600 37 -6.200 45 -6.400 60H13C12 45 9.500 36 7.400 29C5.200 21 4.400 14 4.300 8Z";
const PALM = "M-4.300 -3.600C-5 0 -4.800 4.500 -3.500 9H4.400C5.600 5 5.900 1.500 5.300 -2C3 -4.800 -1.500 -5.400 -4.300 -3.600Z";

const bone = ([a, b, width], kind, extra = 0) =>
  s("path", { class: kind, d: `M${a}L${b}`, "stroke-width": width + extra, "stroke-linecap": "round", fill: "none" });

/** Where along the index finger the pad sits: share of the way from tip to knuckle. */
const PLACE = { pulp: 0.1, middle: 0.38, joint: 0.25 };

export class Hand {
  constructor() {
    const p = pen("hand", 0.06);
    const line = 0.62;
    this.skin = s("g", { class: "hand-skin" },
      s("path", { class: "bone-line", d: ARM, "stroke-width": line }), s("path", { class: "bone-line", d: PALM, "stroke-width": line }),
      s("path", { class: "bone-line", d: THUMB, "stroke-width": 3 + line, "stroke-linecap": "round", fill: "none" }), FINGERS.map((f) => bone(f, "bone-line", line)),
      s("path", { class: "bone", d: ARM }), s("path", { class: "bone", d: PALM }),
      s("path", { class: "bone-s", d: THUMB, "stroke-width": 3, "stroke-linecap": "round", fill: "none" }), FINGERS.map((f) => bone(f, "bone-s")));
    // knuckles, nails, the shade of the far side
    const creases = "M-1.600 -9.600q.8 .35 1.700 0M1.700 -8.800q.8 .35 1.600 0M4.800 -6q.7 .2 1.300 -.2M-4.700 -8.700q.8 .3 1.500 0M-3.900 -3.900q.8 -.7 1.700 -.4M-1.300 -4.600q.8 -.6 1.600 -.2M1.300 -4q.8 -.5 1.500 0M-2.600 8.300q3 1 6.200 .2";
    const nails = "M-1.400 -15.300q.1 -.9 .75 -.9t.75 .9M2.500 -14q.2 -.8 .75 -.8t.7 .8M6.500 -10q.35 -.7 .8 -.55t.5 .7M-9.300 -3.500q-.2 -.8 .4 -1t.9 .5";
    this.detail = s("g", {}, stroke(creases, "thin"), stroke(nails, "thin"), stroke(p.hatch(0.6, 14, 3.6, 7, 0.8, 0.35) + p.hatch(1.6, 24, 4.6, 8, 0.9, 0.35), "thin faint"));
    this.dusk = s("g", { class: "dusk" }, s("path", { class: "dusk-fill", d: `M${TIP}L${[TIP[0] + 0.5, TIP[1] + 3.4]}`, "stroke-width": 2.4, "stroke-linecap": "round" }),
      stroke("M-5.500 -14l1 -.8M-5.500 -13l1.900 -1.400M-5.300 -12l1.900 -1.400M-5 -11l1.700 -1.300", "thin"));
    this.motion = s("g", { class: "motion" }, stroke("M-7 -15.500q-1.300 1.700 -.9 3.800M-8.300 -16.200q-1.800 2.500 -1.200 5.400M-2.700 -17q-.9 -1.200 -2.600 -1.300M-2 -18.300q-1.700 -1.700 -4.100 -1.500", "thin"));

    // the pad and its strap: in the finger's frame, the finger running down the page from its tip at 0,0
    this.padDisc = s("g", { class: "pad-disc" }, inked(() => p.rect(-1.9, -1, 3.8, 2.6, 0.9), "plug"));
    this.padFace = s("g", { class: "pad-face" }, stroke("M-1.400 -.4h2.800M-1.400 .3h2.800M-1.400 1h2.800", "thin amber"));
    this.band = s("g", { class: "band" });
    this.pinch = s("g", { class: "pinch" }, stroke("M-1.900 -1.500l.7 .6M1.900 -1.500l-.7 .6M-1.900 2l.7 -.6M1.900 2l-.7 -.6", "thin"));
    this.strapOff = s("g", { class: "strap-off" }, stroke("M-1.900 .3c-2 -.5 -3 1.400 -5 .8M1.900 .3c2 .6 2.600 -1.200 4.800 -.4", "strap-tail"));
    this.strapped = s("g", { class: "press pad", data: { press: "tap:" } }, s("circle", { class: "hit", r: 3.6 }), this.strapOff, this.padDisc, this.band, this.padFace, this.pinch,
      s("circle", { class: "tap-ring", r: 2.6 }), s("title", {}, t("list.tap_pad")));

    this.shadow = s("g", { class: "hand-shadow" }, s("path", { d: ARM }), s("path", { d: PALM }), FINGERS.map((f) => bone(f, "hand-shadow-s")));
    this.frame = s("g", {}, this.shadow, this.skin, this.detail, this.dusk, this.motion);
    this.hit = s("path", { class: "hit", d: "M-9 -17H8V30H-9Z" });
    this.turned = s("g", {}, this.frame, this.hit);
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
    attr(this.shadow, "transform", `translate(${(0.5 + lift * 0.06).toFixed(2)} ${(0.8 + lift * 0.09).toFixed(2)})`);
    flag(this.el, "is-moving", hand.looks === "moving");
    flag(this.el, "is-dusky", hand.looks === "dusky");

    // the index finger's own direction on the table, from the tip to the knuckle
    const rad = (turn * Math.PI) / 180;
    const map = ([x, y]) => [hand.x + scale * (x * Math.cos(rad) - y * Math.sin(rad)), hand.y + scale * (x * Math.sin(rad) + y * Math.cos(rad))];
    const tip = map(TIP), root = map(KNUCKLE);
    const along = strap.on ? (PLACE[strap.place] ?? PLACE.pulp) : 0;
    const spot = strap.on ? [tip[0] + (root[0] - tip[0]) * along, tip[1] + (root[1] - tip[1]) * along] : [tip[0] - 8, tip[1] - 1];
    const finger = strap.on ? (Math.atan2(root[1] - tip[1], root[0] - tip[0]) * 180) / Math.PI - 90 : -24;
    attr(this.strapped, "transform", `translate(${spot.map((v) => v.toFixed(2))}) rotate(${finger.toFixed(1)}) scale(${scale.toFixed(3)})`);
    for (const [name, on] of [["is-on", strap.on], ["is-away", strap.face === "away"], ["is-tight", strap.on && strap.feel === "tight"]]) flag(this.strapped, name, on);
    this.drawBand(strap);
    return spot;
  }

  drawBand(strap) {
    const half = 2.15 - 0.85 * strap.tightness; // a loose strap stands off the finger
    const key = half.toFixed(2);
    if (this.bandKey === key) return;
    this.bandKey = key;
    const p = pen("band", 0.04);
    this.band.replaceChildren(...inked(() => p.rect(-half, -0.7, 2 * half, 1.9, 0.5), "plug").flat(), stroke(`M${-half + 0.4} -.2H${half - 0.4}M${-half + 0.4} .7H${half - 0.4}`, "thin faint"));
  }
}
