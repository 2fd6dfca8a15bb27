// @ts-check
// The stage that a picture is drawn on: lines, shapes and words on a field of 240 x 150, and what they do while the picture is on. Times
// are seconds from the beginning of the picture. What is told to happen is kept as animations of the browser, paused until played.

import { s } from "../dom.js";
/** @import { Kid } from '../types/page' */

/**
 * Classes of this page alone: "amber" is something else on the bench.
 * @param {string} kind
 */
const kinds = (kind) => kind.split(" ").filter(Boolean).map((one) => ` g-${one}`).join("");

export class Stage {
  /**
   * begin: when the picture comes on, s from the beginning of all.
   * @param {number} begin
   */
  constructor(begin) {
    this.begin = begin;
    /** @type {Animation[]} */
    this.animations = [];
    this.el = s("svg", { class: "glimpse-field", viewBox: "0 0 240 154", "aria-hidden": "true", focusable: "false" });
  }

  /** @template {SVGElement} E @param {E} el */
  add(el) {
    this.el.append(el);
    return el;
  }

  /** @param {string} d @param {string} [kind] @param {SVGElement | null} [into] */
  line(d, kind = "", into = this.el) {
    return this.#put(s("path", { class: `glimpse-line${kinds(kind)}`, d }), into);
  }

  /**
   * A closed shape with its outline.
   * @param {string} d @param {string} [kind]
   */
  shape(d, kind = "") {
    return this.add(s("path", { class: `glimpse-shape${kinds(kind)}`, d }));
  }

  /** @param {number} cx @param {number} cy @param {number} r @param {string} [kind] */
  dot(cx, cy, r, kind = "") {
    return this.add(s("circle", { class: `glimpse-dot${kinds(kind)}`, cx, cy, r }));
  }

  /** @param {string} words @param {number} x @param {number} y @param {string} [kind] @param {SVGElement | null} [into] */
  text(words, x, y, kind = "", into = this.el) {
    return this.#put(s("text", { class: `glimpse-text${kinds(kind)}`, x, y }, words), into);
  }

  /** @param {...Kid} kids */
  group(...kids) {
    return this.add(s("g", {}, kids));
  }

  /** @template {SVGElement} E @param {E} el @param {SVGElement | null} into */
  #put(el, into) {
    into?.append(el);
    return el;
  }

  /** @param {SVGElement} el @param {Keyframe[]} frames @param {number} from @param {number} to @param {string} [easing] */
  #animate(el, frames, from, to, easing = "ease-in-out") {
    const animation = el.animate(frames, { delay: 1000 * (this.begin + from), duration: Math.max(1, 1000 * (to - from)), fill: "both", easing });
    animation.pause();
    this.animations.push(animation);
  }

  /**
   * A line is scratched from its beginning to its end.
   * @param {SVGElement} el @param {number} from @param {number} to
   */
  draw(el, from, to) {
    el.setAttribute("pathLength", "1");
    // A little longer than the line, so that no dot of it stands before it is begun.
    this.#animate(el, [{ strokeDasharray: "1.02 1.04", strokeDashoffset: 1.03 }, { strokeDasharray: "1.02 1.04", strokeDashoffset: 0 }], from, to, "linear");
  }

  /** @param {SVGElement} el @param {number} from @param {number} [to] @param {number} [first] @param {number} [last] */
  fade(el, from, to = from + 0.4, first = 0, last = 1) {
    this.#animate(el, [{ opacity: first }, { opacity: last }], from, to);
  }

  /** @param {SVGElement} el @param {string} first @param {string} last @param {number} from @param {number} to */
  move(el, first, last, from, to) {
    this.#animate(el, [{ transform: first }, { transform: last }], from, to);
  }

  /**
   * Grows from a point in height, or with "X" in breadth.
   * @param {SVGElement} el @param {string} point @param {number} first @param {number} last @param {number} from
   * @param {number} to @param {string} [way]
   */
  grow(el, point, first, last, from, to, way = "Y") {
    el.style.transformOrigin = point;
    this.#animate(el, [{ transform: `scale${way}(${first})` }, { transform: `scale${way}(${last})` }], from, to);
  }
}
