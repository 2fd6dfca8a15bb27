// What can harm in a room exists on the bench in simulation only, and says so before it is asked for.
import { test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

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
