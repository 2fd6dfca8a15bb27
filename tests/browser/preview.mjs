// Makes the picture at the head of the README anew: node tests/browser/preview.mjs
import path from "node:path";
import { root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

await withPage({ viewport: { width: 1280, height: 720 }, deviceScaleFactor: 1, colorScheme: "dark" }, async ({ page, url }) => {
  await student.openHalf(page, url, "rest-pulse", 8);
  await student.side(page, "bench");
  const { right } = await student.readWindow(page);
  const [from, to] = await Promise.all(["a", "b"].map(async (one) => Number(await page.locator(`.cursor-${one}`).getAttribute("aria-valuenow"))));
  const peaks = student.peaksOf(await student.savedRecording(page)).filter((time) => time > from && time < to);
  await student.clickMarks(page, peaks);
  await student.fillBlanks(page, { count: right.count, seconds: right.seconds });
  await student.settled(page);
  await page.mouse.move(640, 60);
  await page.screenshot({ path: path.join(root, ".docs/preview.png") });
});
