// Three ways to have a page in one's hands, by mouse, by touch and by keys alone, and a count of what each costs. What is out of sight is
// brought there first as a person does it: by the wheel, by a finger that pans the page, or by the focus.
import assert from "node:assert/strict";
import { frames } from "./student.mjs";

/** How high a line of an opened list is taken to be, px: the list is the browser's own, and no page sees a pointer travel in it. */
const LIST_LINE = 20;
/** How near the window's edge something may lie and still be pressed, px. */
const RIM = 6;
/** As near to a time a cursor is walked by keys, s: a mark there is the beat's. */
const NEAR_S = 0.04;

/** What was done so far. Lengths are px of the window. */
export const nothingYet = () => ({ deeds: 0, presses: 0, drags: 0, keys: 0, fields: 0, scrolls: 0, scrolled: 0, travel: 0 });

/** Where an element can be taken hold of, whether that place is in the window with nothing over it, and what scrolls it. */
const stateOf = (el) => {
  const grip = el.querySelector?.(".hit") ?? el;
  const box = grip.getBoundingClientRect();
  const at = [box.x + box.width / 2, box.y + box.height / 2];
  const over = document.elementFromPoint(...at);
  const free = over !== null && (el.contains(over) || over.contains(el) && over.matches("label, summary") || over.closest("label")?.control === el);
  let scroller = null;
  for (let one = el.parentElement; one; one = one.parentElement) {
    const style = getComputedStyle(one);
    const rolls = /auto|scroll/.test(style.overflowY) && one.scrollHeight > one.clientHeight + 1 && one !== document.documentElement && one !== document.body;
    if (!rolls) continue;
    const edge = one.getBoundingClientRect();
    if (at[1] < edge.top || at[1] > edge.bottom) {
      scroller = [edge.left, Math.max(0, edge.top), edge.right, Math.min(innerHeight, edge.bottom)];
      break;
    }
  }
  return { at, size: [box.width, box.height], free, scroller };
};

/** How far everything that holds the element is scrolled in all, px. */
const scrolledOf = (el) => {
  let sum = scrollY;
  for (let one = el.parentElement; one && one !== document.documentElement && one !== document.body; one = one.parentElement) sum += one.scrollTop;
  return sum;
};

const far = ([x, y], [u, v]) => Math.hypot(u - x, v - y);

/** What all three have in common. A target is a locator of something that is seen. */
class Hand {
  constructor(page, means) {
    this.page = page;
    this.means = means;
    this.count = nothingYet();
    this.last = null;
    this.told = []; // every deed of the hand, for whoever asks why something costs what it costs
  }

  /** Keeps what is done to what, and how much of it. */
  tell(what, target, much = "") {
    this.told.push(`${what} ${String(target).replace(/^Locator@|^locator\(|\)$/g, "")} ${much}`.trimEnd());
  }

  async state(target) {
    return target.first().evaluate(stateOf);
  }

  /** Opens what is folded up. */
  async open(details) {
    if (!(await details.first().evaluate((el) => el.open))) await this.press(details.locator("summary").first());
  }

  /** Turns a switch where it stands otherwise. */
  async turn(box, on) {
    if ((await box.isChecked()) !== on) await this.press(box);
  }
}

/** Mouse and finger: something is pressed where it lies. */
class Pointer extends Hand {
  goTo(point) {
    const way = this.last ? far(this.last, point) : 0;
    this.count.travel += way;
    this.told.push(`${this.told.pop()}, ${Math.round(way)} px away`);
    this.last = point;
  }

  /** Waits until nothing scrolls any more. */
  async calm() {
    const at = () => this.page.evaluate(() => [scrollX, scrollY, ...[...document.querySelectorAll("main *")].filter((el) => el.scrollTop).map((el) => el.scrollTop)].join());
    for (let before = "", now = await at(); before !== now; now = await at()) {
      before = now;
      await frames(this.page, 2);
    }
  }

  /** Brings all of the places into the window, each a function that tells where it is; the first holds the element that is scrolled. */
  async sight(target, ...others) {
    const scrolled = () => target.first().evaluate(scrolledOf);
    const start = await scrolled();
    const { height } = this.page.viewportSize();
    for (let turn = 0; ; turn += 1) {
      const { at, free, scroller } = await this.state(target);
      const rest = await Promise.all(others.map((one) => one()));
      const ys = [at, ...rest].map(([, y]) => y);
      const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
      const inside = top >= RIM && bottom <= height - RIM;
      if (inside && free) break;
      assert.ok(turn < 40, `${target} cannot be brought to sight: at ${at}, ${rest.join(" and ")}, ${free ? "free" : "under something"}`);
      // What is out of the window comes to its middle part; what lies under something fixed comes out from under it.
      const middle = (top + bottom) / 2;
      const want = inside ? (middle > height / 2 ? 120 : -120) : middle - height / 2;
      const before = await scrolled();
      await this.roll(want, scroller);
      await this.calm();
      if (Math.abs((await scrolled()) - before) < 1) {
        assert.ok(turn < 38 && inside === false, `${target} is at the page's end and not in sight: at ${at}, ${free ? "free" : "under something"}`);
      }
    }
    const way = Math.abs((await scrolled()) - start);
    if (way >= 1) {
      this.count.scrolls += 1;
      this.count.scrolled += way;
      this.tell("scroll to", target, `${Math.round(way)} px`);
    }
  }

  async press(target) {
    await this.sight(target);
    this.tell("press", target);
    const { at } = await this.state(target);
    this.goTo(at);
    this.count.presses += 1;
    await this.tap(at);
    await frames(this.page, 2);
  }

  /** Drags something to where `to` tells that its grip must go, once both are in sight. */
  async drag(target, to) {
    await this.sight(target, to);
    const [{ at }, end] = [await this.state(target), await to()];
    this.tell("drag", target, `${Math.round(far(at, end))} px`);
    this.goTo(at);
    this.goTo(end);
    this.count.drags += 1;
    await this.pull(at, end);
    await frames(this.page, 2);
  }

  /** Presses a place that `where` tells, on an element that lies there. */
  async pressAt(target, where) {
    await this.sight(target, where);
    this.tell("press at", target);
    const at = await where();
    this.goTo(at);
    this.count.presses += 1;
    await this.tap(at);
    await frames(this.page, 2);
  }

  /** A slider is pressed where its thumb shall stand. */
  async slide(target, value) {
    const [low, high] = await target.evaluate((el) => [Number(el.min), Number(el.max)]);
    const where = async () => {
      const { at, size } = await this.state(target);
      const thumb = 26;
      return [at[0] - size[0] / 2 + thumb / 2 + ((value - low) / (high - low)) * (size[0] - thumb), at[1]];
    };
    await this.pressAt(target, where);
    const stands = Number(await target.inputValue());
    assert.ok(Math.abs(stands - value) <= 0.03 * (high - low), `the slider stands at ${stands}, not ${value}`);
  }

  /** Opens a list and presses an entry: two presses. The opened list is not of the page, so the choice is made for the hand. */
  async choose(target, value) {
    const [now, from, to] = await target.evaluate((el, key) => [el.value, el.selectedIndex, [...el.options].findIndex((one) => one.value === key)], String(value));
    assert.ok(to >= 0, `${target} has no entry ${value}`);
    if (now === String(value)) return;
    await this.sight(target);
    this.tell("choose", target, value);
    const { at } = await this.state(target);
    this.goTo(at);
    this.goTo([at[0], at[1] + LIST_LINE * (to - from)]);
    this.count.presses += 2;
    await target.selectOption(String(value));
    await frames(this.page, 2);
  }

  /** What has the focus already, because Enter led there, is typed into without a press. */
  async type(target, text, { enter = false } = {}) {
    if (!(await target.evaluate((el) => el === document.activeElement))) await this.press(target);
    assert.ok(await target.evaluate((el) => el === document.activeElement), `${target} has not the focus`);
    await target.evaluate((el) => el.select()); // as a second press does; what stands there is written over
    await this.page.keyboard.type(String(text));
    this.count.keys += String(text).length;
    this.count.fields += 1;
    if (enter) {
      await this.page.keyboard.press("Enter");
      this.count.keys += 1;
    }
  }
}

class Mouse extends Pointer {
  async tap(at) {
    await this.page.mouse.click(...at);
  }
  async pull(from, to) {
    await this.page.mouse.move(...from);
    await this.page.mouse.down();
    await this.page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, { steps: 5 });
    await this.page.mouse.move(...to, { steps: 5 });
    await this.page.mouse.up();
  }
  async roll(dy, scroller) {
    const { width, height } = this.page.viewportSize();
    const [left, top, right, bottom] = scroller ?? [0, 0, width, height];
    await this.page.mouse.move((left + right) / 2, (top + bottom) / 2);
    await this.page.mouse.wheel(0, dy);
  }
}

class Touch extends Pointer {
  async touch(type, at) {
    this.cdp ??= await this.page.context().newCDPSession(this.page);
    await this.cdp.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] });
  }
  async tap(at) {
    await this.touch("touchStart", at);
    await this.touch("touchEnd");
    await frames(this.page, 2);
  }
  async pull(from, to, steps = 12) {
    await this.touch("touchStart", from);
    for (let k = 1; k <= steps; k += 1) await this.touch("touchMove", [from[0] + ((to[0] - from[0]) * k) / steps, from[1] + ((to[1] - from[1]) * k) / steps]);
    await this.touch("touchEnd");
  }
  /** A finger pans from a place where nothing is taken hold of, and rests before it is lifted, so that nothing rolls on. */
  async roll(dy, scroller) {
    const { width, height } = this.page.viewportSize();
    const way = -Math.sign(dy) * Math.min(Math.abs(dy), 0.45 * height);
    const slop = 16 * Math.sign(way); // the page follows only after so much
    const [left, top, right, bottom] = scroller ?? [0, 0, width, height];
    const from = await this.page.evaluate(([x1, y1, x2, y2, by]) => {
      const held = '[data-press], [data-drag]:not([data-drag=""]), input, select, textarea, button, a, summary, .field, nav, [role="slider"]';
      for (let v = 0.5, k = 0; k < 40; k += 1, v = 0.5 + (k % 2 ? -1 : 1) * 0.0125 * k) {
        for (const u of [0.5, 0.06, 0.94, 0.3, 0.7, 0.02, 0.98]) {
          const [x, y] = [x1 + u * (x2 - x1), y1 + v * (y2 - y1)];
          if (y + by < 2 || y + by > innerHeight - 2) continue;
          const el = document.elementFromPoint(x, y);
          if (!el || el.closest(held)) continue;
          let fixed = false;
          for (let one = el; one; one = one.parentElement) if (getComputedStyle(one).position === "fixed" || getComputedStyle(one).touchAction === "none") fixed = true;
          if (!fixed) return [x, y];
        }
      }
      return null;
    }, [left, top, right, bottom, way + slop]);
    assert.ok(from, "there is no place to pan the page from");
    await this.touch("touchStart", from);
    for (let k = 1; k <= 12; k += 1) await this.touch("touchMove", [from[0], from[1] + ((way + slop) * k) / 12]);
    for (let k = 0; k < 3; k += 1) {
      await frames(this.page, 2);
      await this.touch("touchMove", [from[0], from[1] + way + slop + 0.01 * k]);
    }
    await this.touch("touchEnd");
  }
}

class Keys extends Hand {
  async key(name, times = 1) {
    for (let k = 0; k < times; k += 1) await this.page.keyboard.press(name);
    this.count.keys += times;
  }

  /** Goes to a control by Tab, or back by Shift+Tab where that is the shorter way. */
  async focus(target) {
    const el = await target.first().elementHandle();
    const before = await el.evaluate(scrolledOf);
    const { keys } = this.count;
    const there = () => this.page.evaluate((one) => document.activeElement === one, el);
    if (!(await there())) {
      const back = await this.page.evaluate((one) => {
        const all = [...(document.querySelector("dialog[open]") ?? document).querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")]
          .filter((each) => each.tabIndex >= 0 && !each.disabled && each.checkVisibility({ visibilityProperty: true }));
        const [from, to] = [all.indexOf(document.activeElement), all.indexOf(one)];
        return from > to;
      }, el);
      for (const name of back ? ["Shift+Tab", "Tab"] : ["Tab", "Shift+Tab"]) {
        for (let k = 0; k < 160 && !(await there()); k += 1) await this.key(name);
        if (await there()) break;
      }
      assert.ok(await there(), `the Tab key does not reach ${target}`);
    }
    await frames(this.page, 2);
    this.tell("go to", target, `${this.count.keys - keys} keys`);
    const way = Math.abs((await el.evaluate(scrolledOf)) - before);
    if (way >= 1) {
      this.count.scrolls += 1;
      this.count.scrolled += way;
      this.tell("scroll to", target, `${Math.round(way)} px`);
    }
  }

  async press(target) {
    await this.focus(target);
    await this.key(await target.first().evaluate((el) => (el.matches("input") ? "Space" : "Enter")));
    await frames(this.page, 2);
  }

  async slide(target, value) {
    await this.focus(target);
    const now = async () => Number(await target.inputValue());
    const page = 0.1 * Number(await target.evaluate((el) => el.max - el.min));
    for (let k = 0; k < 12 && value - (await now()) >= page; k += 1) await this.key("PageUp");
    for (let k = 0; k < 12 && (await now()) - value >= page; k += 1) await this.key("PageDown");
    for (let k = 0; k < 60 && (await now()) !== value; k += 1) await this.key((await now()) < value ? "ArrowRight" : "ArrowLeft");
    assert.equal(await now(), value);
  }

  /** Walks a slider of the trace to a value by the keys that bring it nearer, the longest step first. */
  async walk(target, value, { coarse, fine }) {
    await this.focus(target);
    const now = async () => Number(await target.getAttribute("aria-valuenow"));
    for (const [step, forth, back] of [[coarse, "PageUp", "PageDown"], [10 * fine, "Shift+ArrowRight", "Shift+ArrowLeft"], [fine, "ArrowRight", "ArrowLeft"]]) {
      for (let k = 0; k < 60; k += 1) {
        const away = value - (await now());
        if (Math.abs(away) <= 0.6 * step || Math.abs(away) < NEAR_S) break;
        await this.key(away > 0 ? forth : back);
      }
    }
    assert.ok(Math.abs((await now()) - value) < 2 * NEAR_S + fine, `${target} was not walked to ${value}`);
  }

  async choose(target, value) {
    const [now, from, to] = await target.evaluate((el, key) => [el.value, el.selectedIndex, [...el.options].findIndex((one) => one.value === key)], String(value));
    assert.ok(to >= 0, `${target} has no entry ${value}`);
    if (now === String(value)) return;
    await this.focus(target);
    await this.key("Space");
    await this.key(to > from ? "ArrowDown" : "ArrowUp", Math.abs(to - from));
    await this.key("Enter");
    assert.equal(await target.inputValue(), String(value));
  }

  async type(target, text, { enter = false } = {}) {
    await this.focus(target); // the Tab key has marked what stands there, so that it is written over
    await this.page.keyboard.type(String(text));
    this.count.keys += String(text).length;
    this.count.fields += 1;
    if (enter) await this.key("Enter");
  }
}

/** The means, and the window that each is used in. */
export const MEANS = {
  mouse: { Hand: Mouse, options: { viewport: { width: 1280, height: 720 } } },
  touch: { Hand: Touch, options: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } },
  keys: { Hand: Keys, options: { viewport: { width: 1280, height: 720 } } },
};

/** Takes a page in hand. */
export const takeInHand = (page, means) => new MEANS[means].Hand(page, means);
