// A whole experiment at the page, from what is expected to what is said of it: on a laptop with the mouse, on a phone by touch.
// With DICROTIC_PICTURES=FOLDER each state is drawn there, in both themes, to be looked at.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const { fillBlanks, openScenario, peaksOf, putCursors, rightAnswers, saved, savedRecording, side, windowOf } = student;
const here = (page) => page.locator("#experiment");
const rows = (page) => here(page).locator("tbody tr");

/** axe's complaints, no sideways scrolling, and a picture where they are asked for. */
async function look(page, name) {
  const folder = process.env.DICROTIC_PICTURES;
  for (const scheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme: scheme });
    await student.settled(page);
    if (folder) await page.screenshot({ path: path.join(folder, `${name}-${scheme}.png`) });
    const { violations } = await new AxeBuilder({ page }).include("#experiment").analyze();
    assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), [], `${name} ${scheme}`);
  }
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  assert.ok(wider <= 0, `${name}: ${wider} px too wide`);
}

/** Records, puts the cursors around fifteen seconds, counts and adds the row. */
async function measure(page, condition) {
  await student.record(page, 28); // room for a window whose ends lie between even beats
  const peaks = peaksOf(await savedRecording(page));
  const [a, b] = windowOf(peaks, 15, 27);
  await putCursors(page, a, b);
  const answers = rightAnswers(peaks, a, b);
  await fillBlanks(page, answers);
  await side(page, "experiment");
  await here(page).getByLabel("Condition", { exact: true }).selectOption({ label: condition });
  const before = await rows(page).count();
  await here(page).getByRole("button", { name: "Add A to B to the table" }).click();
  await rows(page).nth(before).waitFor();
  return answers;
}

async function whole(page, url, name) {
  await openScenario(page, url, "standing-up", 4);
  await page.getByRole("button", { name: "Record", exact: true }).click();
  await page.getByText("First say what you expect.", { exact: false }).first().waitFor();
  await side(page, "experiment");
  await here(page).getByRole("heading", { name: "1. What do you expect?" }).waitFor();
  const write = here(page).getByRole("button", { name: "Write it down" });
  assert.ok(await write.isDisabled(), "a direction is asked for");
  await look(page, `${name}-1-expect`);
  await here(page).getByLabel("It rises").first().check();
  await here(page).getByLabel("Why?").fill("Blood sinks into the legs.");
  await write.click();
  await here(page).locator(".experiment-said").getByText("heart rate: It rises – Blood sinks into the legs.").waitFor();

  const sitting = await measure(page, "Sitting");
  assert.match(await rows(page).nth(0).innerText(), new RegExp(`Sitting\\s+–\\s+${sitting.count}\\s`));
  assert.equal(await here(page).locator(".experiment-now").innerText(), "Now: Sitting.");
  // The same window is no second row.
  await here(page).getByRole("button", { name: "Add A to B to the table" }).click();
  await here(page).getByText("Row 1 has most of this counting window already.", { exact: false }).waitFor();
  // A row that is taken out is asked about first.
  await here(page).getByRole("button", { name: "Remove row 1" }).click();
  await page.getByRole("button", { name: "Keep it" }).click();
  assert.equal(await rows(page).count(), 1);
  // The wrong condition is refused, with the reason, and nothing is written.
  await here(page).getByLabel("Condition", { exact: true }).selectOption({ label: "Standing" });
  await here(page).getByRole("button", { name: "Add A to B to the table" }).click();
  await here(page).getByText("This counting window is not in “Standing”.", { exact: false }).waitFor();
  assert.equal(await rows(page).count(), 1);
  await look(page, `${name}-2-table`);
  // What was expected stays as it was said.
  assert.ok(!(await write.isVisible()));

  await here(page).getByRole("button", { name: "Start: Standing" }).click();
  await here(page).getByText(/^Now: Standing, for \d+ s\. Count in \d+ s\.$/).waitFor();
  await page.locator(".strip").getByRole("button", { name: /live/i }).first().click();
  await student.worldRuns(page, 42);
  await measure(page, "Standing");
  await here(page).getByLabel("Note on row 2").fill('=calm, "quite"');
  // Who presses something else while a note is in work has pressed it.
  await here(page).getByRole("button", { name: "Remove row 1" }).click();
  await page.getByRole("button", { name: "Keep it" }).click();
  const csv = (await saved(page, "Save the table (CSV)")).bytes.toString("utf8").trim().split("\r\n");
  assert.equal(csv.length, 3);
  assert.match(csv[0], /^row,condition,recording,a_s,b_s,since_start_s,n,t_s,rate_per_min,rate_u,/);
  assert.match(csv[1], new RegExp(`^1,sitting,1,[\\d.]+,[\\d.]+,,${sitting.count},`));
  assert.ok(csv[2].endsWith(`,"'=calm, ""quite"""`), csv[2]);
  await look(page, `${name}-3-two`);

  await page.locator("#worksheet").getByRole("button", { name: /^Check / }).click();
  await page.getByText("First say what your table shows.", { exact: false }).first().waitFor();
  await here(page).locator("section", { hasText: "3. What does your table show?" }).getByLabel("It rises").check();
  await here(page).getByRole("button", { name: "This is what it shows" }).click();
  await here(page).getByText("Right. The table shows this difference.").waitFor();
  await here(page).getByText("This is one subject.", { exact: false }).waitFor();
  assert.equal(await here(page).getByText("In the subject itself", { exact: false }).count(), 0, "not before the attempt is over");
  await look(page, `${name}-4-said`);

  await page.locator("#worksheet").getByRole("button", { name: /^Check / }).click();
  await student.sayYes(page);
  await page.locator(".rubric").waitFor(); // the result comes by itself
  await page.getByText("Your conclusion, heart rate: “It rises”. That is right.").waitFor();
  await side(page, "experiment");
  // The world ran in real time: where the last window is one that the check does not take, the second check ends the attempt.
  const truth = here(page).getByText("In the subject itself", { exact: false });
  if ((await truth.count()) === 0) {
    await page.locator("#worksheet").getByRole("button", { name: /^Check / }).click();
    await student.sayYes(page);
    await page.locator(".rubric").waitFor();
    await side(page, "experiment");
  }
  await truth.waitFor();
  assert.equal(await here(page).getByText("count to look at again").count(), 0);
  await look(page, `${name}-5-over`);
  await side(page, "result");

  // On paper: what was asked, expected, measured and concluded, in two pages.
  await page.getByRole("button", { name: "Report for printing" }).click();
  const sheet = page.locator(".report-sheet");
  await sheet.locator(".report-experiment").waitFor();
  const told = await sheet.innerText();
  for (const part of ["Does the heart rate change from sitting to standing?", "eart rate: It rises.", "2 counting windows of", "“Sitting”: 1; “Standing”: 1", '=calm, "quite"', "The table shows this difference.", "It is one subject."]) assert.ok(told.includes(part), `${part} is not in: ${told}`);
  assert.equal(await sheet.locator(".report-experiment tbody tr").count(), 2);
  assert.equal(await sheet.locator(".pic-dot").count(), 2);
  for (const scheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme: scheme });
    if (process.env.DICROTIC_PICTURES) await page.screenshot({ path: path.join(process.env.DICROTIC_PICTURES, `${name}-6-report-${scheme}.png`), fullPage: true });
    const { violations } = await new AxeBuilder({ page }).include(".report-sheet").analyze();
    assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), [], `report ${scheme}`);
  }
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth), `${name}: the report is too wide`);
  const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
  assert.ok(Math.max(...[...pdf.matchAll(/\/Count (\d+)/g)].map((found) => Number(found[1]))) <= 2, "more than two pages");
}

describe("an experiment", { concurrency: 2 }, () => {
  test("on a laptop, from what is expected to what is said of it", async () => {
    await withPage({ viewport: { width: 1280, height: 720 } }, ({ page, url }) => whole(page, url, "laptop"));
  });

  test("on a phone the same", async () => {
    await withPage({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }, ({ page, url }) => whole(page, url, "phone"));
  });

  test("in Spanish its question, conditions and reasons are Spanish too", async () => {
    await withPage({ viewport: { width: 1280, height: 720 }, locale: "es-ES" }, async ({ page, url }) => {
      await openScenario(page, url, "standing-up", 4);
      await side(page, "experiment");
      await here(page).getByText("¿Cambia la frecuencia cardíaca al pasar de sentado a de pie?").waitFor();
      await here(page).getByText("De «Sentado» a «De pie»:").first().waitFor();
      const reasons = await here(page).locator("datalist option").evaluateAll((all) => all.map((one) => one.value));
      assert.deepEqual(reasons, ["La sangre baja a las piernas, y el corazón debe compensarlo.", "Las piernas trabajan más.", "En reposo no cambia nada."]);
    });
  });

  test("the worked example of the recovery says what it does, and draws its curve", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.goto(`${url}#watch=recovery`);
      const next = page.locator("#narrator").getByRole("button", { name: "Next step" });
      await next.waitFor();
      await side(page, "experiment");
      const said = new Set();
      // Pressed until nothing is left to be shown.
      while (await next.isVisible() && (await next.isEnabled())) {
        await next.click();
        said.add(await page.locator("#narrator").innerText());
        if (await page.locator("#result .rubric").count()) break;
      }
      const told = [...said].join("\n");
      assert.ok(!told.includes("[object") && told.includes("step up and down for 2 min"), told);
      assert.ok(told.includes("First say what you expect, and why."), told);
      await side(page, "experiment");
      await here(page).getByText("One curve through your points", { exact: false }).waitFor();
      assert.equal(await rows(page).count(), 10);
      // What is drawn has more than the colors of an empty sheet.
      const colors = await here(page).locator("canvas").evaluate((canvas) => {
        const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
        return new Set(Array.from({ length: data.length / 4 }, (_, k) => data.slice(4 * k, 4 * k + 3).join(","))).size;
      });
      assert.ok(colors > 4, `${colors}`);
      await here(page).locator("canvas").scrollIntoViewIfNeeded();
      await look(page, "recovery");
    });
  });

  test("a scenario without one has no place for it", async () => {
    await withPage({ viewport: { width: 1280, height: 720 } }, async ({ page, url }) => {
      await openScenario(page, url, "rest-pulse", 4);
      assert.ok(!(await page.locator('.views .seg[data-view="experiment"]').isVisible()));
    });
  });
});
