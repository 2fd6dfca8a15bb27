// Accessibility of every screen and state: no complaint of axe in either theme, a name for all that can be operated, no sideways
// scrolling.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import AxeBuilder from "@axe-core/playwright";
import { withPage } from "./lib.mjs";
import { parts } from "./screens.mjs";
import { settled } from "./student.mjs";

const size = (width) => ({ width, height: width < 1000 ? 780 : 900 });

/** axe's complaints about what is shown; with `rules`, of these rules alone. */
async function noComplaint(page, screen, rules = null) {
  const axe = new AxeBuilder({ page });
  const { violations, passes } = await (rules ? axe.withRules(rules) : axe).analyze();
  assert.ok(passes.length >= (rules?.length ?? 11), `axe looked at too little of "${screen}"`);
  assert.deepEqual(violations.map((one) => `${one.id}: ${one.help}: ${one.nodes.map((node) => `${node.target} (${node.failureSummary})`).join("; ")}`), [], screen);
}

const noSidewaysScroll = async (page, screen) => {
  const [inner, client] = await page.evaluate(() => [Math.max(document.documentElement.scrollWidth, document.body.scrollWidth), document.documentElement.clientWidth]);
  assert.ok(inner <= client, `${screen}: ${inner} px of content on ${client} px`);
};

const OPERATED = new Set(["button", "link", "textbox", "searchbox", "slider", "combobox", "listbox", "checkbox", "radio", "switch", "spinbutton", "tab"]);

/** Everything that can be operated has a name, as the browser tells it to a screen reader. */
async function allNamed(session, screen) {
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  const operated = nodes.filter((node) => !node.ignored && OPERATED.has(node.role?.value));
  assert.ok(operated.length > 0, `${screen}: nothing to operate`);
  const nameless = operated.filter((node) => !node.name?.value?.trim());
  assert.deepEqual(nameless.map((node) => `${node.role.value} ${node.backendDOMNodeId}`), [], screen);
}

describe("every screen", { concurrency: 2 }, () => {
  // One walk a kind of screen: both themes and both widths are looked at where the walk stands.
  for (const [kind, widths, options, themes] of [
    ["wide", [1280, 1920], {}, ["dark", "light"]],
    ["small", [390, 320], { hasTouch: true, isMobile: true }, ["light", "dark"]],
  ]) {
    for (const part of Object.keys(parts)) {
      test(`every screen and state (${part}), ${kind}: axe has no complaint in either theme, all is named, nothing scrolls sideways`, { timeout: 900_000 }, async () => {
        await withPage({ viewport: size(widths[0]), colorScheme: themes[0], expected: parts[part].expected ?? [], ...options }, async ({ page, context, url }) => {
          const session = await context.newCDPSession(page);
          let seen = 0;
          await parts[part]({ page, url }, async (screen) => {
            seen += 1;
            await settled(page);
            await noComplaint(page, `${screen}, ${themes[0]}`);
            await allNamed(session, screen);
            await page.emulateMedia({ colorScheme: themes[1] });
            await settled(page);
            await noComplaint(page, `${screen}, ${themes[1]}`, ["color-contrast"]);
            await page.emulateMedia({ colorScheme: themes[0] });
            await noSidewaysScroll(page, screen);
            await page.setViewportSize(size(widths[1]));
            await noSidewaysScroll(page, `${screen} on ${widths[1]} px`);
            await page.setViewportSize(size(widths[0]));
            await settled(page);
          });
          assert.ok(seen > 4, `${seen} screens of ${part}`);
        });
      });
    }
  }
});
