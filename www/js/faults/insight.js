// @ts-check
// Pictures that are made when they come into sight, one after the other, and made anew when theme or size have changed since.

import { offTheme, onTheme } from "../theme.js";

const AHEAD = "300px 0px"; // so far before it is seen it is begun

export class InSight {
  /** @param {(el: Element) => unknown} make makes the picture in an element */
  constructor(make) {
    this.make = make;
    /** @type {Set<Element>} */
    this.seen = new Set();
    /** @type {Map<Element, string>} */
    this.made = new Map(); // and for which theme and size
    this.due = 0;
    this.watch = new IntersectionObserver((entries) => {
      for (const { target, isIntersecting } of entries) this.seen[isIntersecting ? "add" : "delete"](target);
      this.plan();
    }, { rootMargin: AHEAD });
    this.again = () => {
      this.made.clear();
      this.plan();
    };
    this.sizes = new ResizeObserver(() => this.plan());
    onTheme(this.again);
  }

  /** @param {Element} el */
  add(el) {
    this.watch.observe(el);
    this.sizes.observe(el);
  }

  /** It is not what it was: to be made anew. @param {Element} el */
  alter(el) {
    this.made.delete(el);
    el.removeAttribute("data-made");
    this.plan();
  }

  plan() {
    this.due ||= requestAnimationFrame(() => this.next());
  }

  /** Makes one; the page can answer between two. */
  next() {
    this.due = 0;
    const stale = [...this.seen].filter((el) => el.isConnected && this.made.get(el) !== size(el));
    const el = stale.sort((a, b) => a.getBoundingClientRect().top - b.getBoundingClientRect().top)[0];
    if (!el) return;
    this.made.set(el, size(el));
    this.make(el);
    el.setAttribute("data-made", "");
    this.plan();
  }

  end() {
    this.watch.disconnect();
    this.sizes.disconnect();
    offTheme(this.again);
    cancelAnimationFrame(this.due);
  }
}

/** @param {Element} el */
const size = (el) => `${el.clientWidth}`;
