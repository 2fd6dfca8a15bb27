// Pictures of every screen and state, in both themes and four widths, to be looked at: node tests/browser/pictures.mjs FOLDER [PART...]
import { mkdirSync } from "node:fs";
import path from "node:path";
import { startServer, withPage } from "./lib.mjs";
import { parts } from "./screens.mjs";
import { settled } from "./student.mjs";

const [folder, ...asked] = process.argv.slice(2);
if (!folder) throw new Error("name a folder for the pictures");
mkdirSync(folder, { recursive: true });
const server = await startServer({ own: true });
process.env.DICROTIC_URL = server.url;
const kinds = [
  { name: "wide", widths: [[1280, 800], [1920, 1080]], options: {} },
  { name: "small", widths: [[390, 780], [320, 640]], options: { hasTouch: true, isMobile: true } },
];
const failed = [];
for (const { widths, options } of kinds) {
  for (const part of asked.length > 0 ? asked : Object.keys(parts)) {
    let number = 0;
    const [width, height] = widths[0];
    try {
      await withPage({ ...options, viewport: { width, height }, expected: parts[part].expected ?? [] }, async (given) => {
        const { page } = given;
        await parts[part](given, async (name) => {
          number += 1;
          for (const [w, h] of widths) {
            await page.setViewportSize({ width: w, height: h });
            for (const colorScheme of ["dark", "light"]) {
              await page.emulateMedia({ colorScheme });
              await settled(page);
              const file = `${part}-${String(number).padStart(2, "0")}-${name.replaceAll(/[^a-z]+/g, "-")}-${w}-${colorScheme}.png`;
              // What a window shows, and the whole of it: in a window that is tall enough the trace need not dock at the foot.
              await page.screenshot({ path: path.join(folder, file) });
              const whole = await page.evaluate(() => document.documentElement.scrollHeight);
              if (whole <= h) continue;
              await page.setViewportSize({ width: w, height: whole });
              await settled(page);
              await page.screenshot({ path: path.join(folder, file.replace(/.png$/, "-whole.png")), fullPage: true });
              await page.setViewportSize({ width: w, height: h });
            }
          }
          await page.setViewportSize({ width, height });
          await settled(page);
        });
      });
    } catch (error) {
      failed.push(`${part} on ${width} px: ${error.message}`);
    }
  }
}
await server.stop();
for (const text of failed) console.log(text);
process.exitCode = failed.length > 0 ? 1 : 0;
