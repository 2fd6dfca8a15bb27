// What can harm in a room exists on the bench in simulation only, and says so before it is asked for.
import { test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

test("effort has its caution; a hand on the case says why a grounded person is in danger; before the sensor and for instructors the rest is said", async () => {
  await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
    await student.openScenario(page, url, "rest-pulse", 3);
    // Before the sensor goes on, the same to whoever puts it on; and until when agreeing counts.
    await page.locator(".offer-ways button").last().click(); // how the bench is taken is asked first
    await page.locator(".agree-open").click();
    const agree = await page.locator("dialog[open]").innerText();
    for (const said of [/or record them, ask them/, /Never bypass the ground contact of a plug/, /feels faint, stop\. Let them sit or lie down, and get help by your institution/, /strap without latex/, /local safety rules/, /Agree before you put the sensor on\. After that, it gives no point\./]) assert.match(agree, said);
    await page.getByRole("button", { name: "Later", exact: true }).click();
    const what = await student.control(page, "Ask the subject to");
    const caution = page.locator(".ask-caution");
    for (const effort of ["exercise", "breath_hold", "grip", "cold_other_hand"]) {
      await what.selectOption(effort);
      assert.match(await caution.innerText(), /heart.*may say no.*institution.*licensed clinicians/s, effort);
    }
    await what.selectOption("deep_breath");
    assert.equal(await caution.isVisible(), false);
    // The way of a fault's current, and who does such a test.
    await student.side(page, "list");
    assert.match(await page.locator("#list .other-way").innerText(), /fault current.*through the body.*made for use on people.*Local rules.*institution/s);
    await page.goto(`${url}#teach`);
    const safety = page.locator(".teach-part", { hasText: "Safety in the room" });
    await safety.waitFor();
    for (const said of [/IEC 60601-1/, /[Nn]ever bypass or defeat the ground contact of a plug/, /ground pin/, /consent before you record a person.*institution/, /feels faint, stop.*sit or lie down.*Get help as your institution/, /straps without latex/, /out of service/, /wet hands/, /[Ww]ipe/, /keep their breath in/, /licensed clinicians/, /local safety rules/i]) assert.match(await safety.innerText(), said);
  });
});

test("a risky request shows its caution as soon as it is chosen, and a harmless one takes it away", async () => {
  await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
    await student.openScenario(page, url, "rest-pulse", 3);
    const what = await student.control(page, "Ask the subject to");
    const caution = page.locator(".ask-caution");
    for (const [risky, name] of [
      ["ice_water", "ice water"],
      ["valsalva", "strain"],
      ["face_immersion", "face"],
    ]) {
      await what.selectOption(risky);
      assert.match(await what.evaluate((el) => el.selectedOptions[0].textContent), new RegExp(`${name}.*simulated only`));
      assert.match(await caution.innerText(), /never do this with a person in class.*licensed clinicians/s);
      await page.getByRole("button", { name: "Ask", exact: true }).click();
      await page.getByText("You ask, and the subject nods.").first().waitFor();
      await what.selectOption("rest");
      assert.equal(await caution.isVisible(), false);
      await page.getByRole("button", { name: "Ask", exact: true }).click();
    }
  });
});
