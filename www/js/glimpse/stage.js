// The stage that a picture is drawn on: lines, shapes and words on a field of 240 x 150, and what they do while the picture is on. Times
// are seconds from the beginning of the picture. What is told to happen is kept as animations of the browser, paused until played.

import { s } from "../dom.js";

/** Classes of this page alone: "amber" is something else on the bench. */
const kinds = (kind) => kind.split(" ").filter(Boolean).map((one) => ` g-${one}`).join("");

export class Stage {
  /** begin: when the picture comes on, s from the beginning of all. */
  constructor(begin) {
    this.begin = begin;
    this.animations = [];
    this.el = s("svg", { class: "glimpse-field", viewBox: "0 0 240 154", "aria-hidden": "true", focusable: "false" });
  }

  add(el) {
    this.el.append(el);
    return el;
  }

  line(d, kind = "", into = this.el) {
    return this.#put(s("path", { class: `glimpse-line${kinds(kind)}`, d }), into);
  }

  /** A closed shape with its outline. */
  shape(d, kind = "") {
    return this.add(s("path", { class: `glimpse-shape${kinds(kind)}`, d }));
  }

  dot(cx, cy, r, kind = "") {
    return this.add(s("circle", { class: `glimpse-dot${kinds(kind)}`, cx, cy, r }));
  }

  text(words, x, y, kind = "", into = this.el) {
    return this.#put(s("text", { class: `glimpse-text${kinds(kind)}`, x, y }, words), into);
  }

  group(...kids) {
    return this.add(s("g", {}, kids));
  }

  #put(el, into) {
    into?.append(el);
    return el;
  }

  #animate(el, frames, from, to, easing = "ease-in-out") {
    const animation = el.animate(frames, { delay: 1000 * (this.begin + from), duration: Math.max(1, 1000 * (to - from)), fill: "both", easing });
    animation.pause();
    this.animations.push(animation);
  }

  /** A line is scratched from its beginning to its end. */
  draw(el, from, to) {
    el.setAttribute("pathLength", "1");
    // A little longer than the line, so that no dot of it stands before it is begun.
    this.#animate(el, [{ strokeDasharray: "1.02 1.04", strokeDashoffset: 1.03 }, { strokeDasharray: "1.02 1.04", strokeDashoffset: 0 }], from, to, "linear");
  }

  fade(el, from, to = from + 0.4, first = 0, last = 1) {
    this.#animate(el, [{ opacity: first }, { opacity: last }], from, to);
  }

  move(el, first, last, from, to) {
    this.#animate(el, [{ transform: first }, { transform: last }], from, to);
  }

  /** Grows from a point in height, or with "X" in breadth. */
  grow(el, point, first, last, from, to, way = "Y") {
    el.style.transformOrigin = point;
    this.#animate(el, [{ transform: `scale${way}(${first})` }, { transform: `scale${way}(${last})` }], from, to);
  }
}
