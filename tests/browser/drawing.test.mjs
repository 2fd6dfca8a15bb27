// What is written on the drawn bench can be read: no name lies over another, over a line of a part or of a socket, or beyond the table.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import { openScenario, settled, side } from "./student.mjs";

/** A bench in parts, two that are wired, and one where nothing lies in its usual place. */
const BENCHES = ["first-wiring", "thick-trace-a", "flat-line-a", "whole-bench"];
const SIZES = [
  { viewports: [{ width: 1280, height: 720 }, { width: 1024, height: 600 }, { width: 1920, height: 1080 }] },
  { viewports: [{ width: 390, height: 844 }], hasTouch: true, isMobile: true },
];
const LOCALES = ["en-US", "es-MX"];

/**
 * What lies over a name. A name's box is that of its ink, half a pixel narrower on each side; a line is a row of points along it, as wide
 * as it is drawn.
 */
const overlaps = (page) => page.evaluate(() => {
  const svg = document.querySelector("svg.table");
  const ink = document.createElement("canvas").getContext("2d");
  const seen = (el) => {
    for (let one = el; one !== svg; one = one.parentElement) if (getComputedStyle(one).display === "none") return false;
    return getComputedStyle(el).visibility === "visible";
  };
  const px = (x, y, m) => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f];

  const names = [...svg.querySelectorAll(".letter")].filter((el) => el.textContent && seen(el)).map((el) => {
    const style = getComputedStyle(el);
    const size = parseFloat(style.fontSize);
    ink.font = `${style.fontStyle} 100px ${style.fontFamily}`;
    const told = ink.measureText(el.textContent);
    const width = (told.width * size) / 100;
    const left = { start: 0, middle: -width / 2, end: -width }[style.textAnchor];
    const m = el.getScreenCTM();
    const corners = [[left, (-told.actualBoundingBoxAscent * size) / 100], [left + width, (told.actualBoundingBoxDescent * size) / 100]].map(([x, y]) => px(x, y, m));
    const [x1, x2] = corners.map(([x]) => x).sort((a, b) => a - b);
    const [y1, y2] = corners.map(([, y]) => y).sort((a, b) => a - b);
    return { el, text: el.textContent, box: [x1 + 0.5, y1 + 0.5, x2 - 0.5, y2 - 0.5] };
  });

  const lines = [...svg.querySelectorAll(".part .ln, .socket .ln")].filter((el) => seen(el) && !el.closest(".screen")).map((el) => {
    const of = el.closest("[data-socket], .part");
    const what = of.dataset.socket ?? of.getAttribute("class");
    const around = el.getBoundingClientRect();
    if (!names.some(({ box: [x1, y1, x2, y2] }) => around.left < x2 && x1 < around.right && around.top < y2 && y1 < around.bottom)) return { what, half: 0, points: [] };
    const m = el.getScreenCTM();
    const scale = Math.hypot(m.a, m.b);
    const whole = el.getTotalLength();
    const steps = Math.max(1, Math.ceil(whole * scale)); // a point a pixel
    const points = Array.from({ length: steps + 1 }, (_, k) => {
      const { x, y } = el.getPointAtLength((whole * k) / steps);
      return px(x, y, m);
    });
    return { what, half: (parseFloat(getComputedStyle(el).strokeWidth) * scale) / 2, points };
  });

  const found = [];
  const frame = svg.getBoundingClientRect();
  const table = svg.querySelector(".table-top").getBoundingClientRect();
  names.forEach(({ text, box: [x1, y1, x2, y2] }, i) => {
    const out = x2 < frame.left || x1 > frame.right || y2 < frame.top || y1 > frame.bottom; // beyond what is looked at
    if (out) return;
    if (x1 < table.left || y1 < table.top || x2 > table.right || y2 > table.bottom) found.push(`"${text}" runs beyond the table`);
    for (const other of names.slice(i + 1)) {
      const [u1, v1, u2, v2] = other.box;
      if (x1 < u2 && u1 < x2 && y1 < v2 && v1 < y2) found.push(`"${text}" and "${other.text}" lie over each other`);
    }
    for (const { what, half, points } of lines) {
      if (points.some(([x, y]) => x > x1 - half && x < x2 + half && y > y1 - half && y < y2 + half)) found.push(`"${text}" lies over a line of ${what}`);
    }
  });
  return { names: names.length, lines: lines.length, found: [...new Set(found)] };
});

describe("the drawing", { concurrency: 2 }, () => {
  for (const locale of LOCALES) {
    for (const { viewports, ...size } of SIZES) {
      test(`each name of the bench stands free, ${locale}, ${viewports.map(({ width }) => width).join(", ")} px`, { timeout: 600_000 }, async () => {
        await withPage({ ...size, viewport: viewports[0], locale }, async ({ page, url }) => {
          const wrong = [];
          for (const id of BENCHES) {
            await page.goto("about:blank");
            await openScenario(page, url, id, 5);
            await side(page, "bench");
            await settled(page);
            const small = viewports[0].width < 640;
            // On a small screen the short names are seen where one looks closer.
            for (const key of small ? ["whole", "recorder", "finger"] : ["whole", "recorder"]) {
              await page.locator(`.bench-foot .seg[data-key="${key}"]`).click();
              await settled(page);
              for (const viewport of viewports) {
                if (viewports.length > 1) await page.setViewportSize(viewport);
                await settled(page);
                const { names, lines, found } = await overlaps(page);
                assert.ok(names >= (small && key !== "recorder" ? 0 : 5) && lines > 50, `${id}, ${key}: ${names} names and ${lines} lines are seen`);
                wrong.push(...found.map((text) => `${id}, ${key}, ${viewport.width} px: ${text}`));
              }
              if (viewports.length > 1) await page.setViewportSize(viewports[0]);
            }
          }
          assert.deepEqual(wrong, []);
        });
      });
    }
  }

  test("a name that lies over a line or over another name is found", async () => {
    await withPage({ viewport: { width: 1280, height: 720 } }, async ({ page, url }) => {
      await openScenario(page, url, "first-wiring", 5);
      await side(page, "bench");
      await settled(page);
      await page.evaluate(() => {
        const move = (socket, x, y) => document.querySelector(`[data-socket="${socket}"] .letter`).setAttribute("transform", `translate(${x} ${y})`);
        move("in2", 0, 1); // onto its own socket
        move("in3", -4.3, -5); // onto the name of input 2's place, where nothing stands now
        move("in1", -4.3, 7); // and input 1's beside it
      });
      const { found } = await overlaps(page);
      assert.ok(found.includes('"2" lies over a line of in2'), found.join("; "));
      assert.ok(found.includes('"1" and "3" lie over each other'), found.join("; "));
    });
  });
});
