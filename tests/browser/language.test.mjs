// The page in other languages: Spanish as it is, and pretend ones that show what a translator may do to the page: words
// twice as long, words from right to left, and letters twice as large.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import path from "node:path";
import { root, strings, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const phone = (width) => ({ viewport: { width, height: 780 }, hasTouch: true, isMobile: true });
const wide = { viewport: { width: 1280, height: 900 } };
const json = async (address) => (await fetch(address)).json();

/** The page's words of a language: w(key) is a plain message, as a control shows it. */
async function wordsOf(url, language, change = (text) => text) {
  const all = await json(`${url}texts/${language}.json`);
  return (key) => {
    assert.equal(typeof all[key], "string", `${key} is no plain message`);
    return change(all[key]).replace(/\s+/g, " ").trim();
  };
}

/** A message with each of its texts changed; places stay. */
const changed = (message, change) => {
  if (typeof message === "string") return change(message);
  return message.map((part) => (typeof part === "string" ? change(part) : part.k ? { ...part, k: Object.fromEntries(Object.entries(part.k).map(([form, told]) => [form, changed(told, change)])) } : part));
};

/** Gives the page changed words of English under a language's name. */
async function pretend(page, url, language, change) {
  const known = /texts\/[a-z]+((?:\.\w+)?\.json)$/;
  await page.route((address) => address.pathname.includes(`/texts/${language}.`), async (route) => {
    const rest = route.request().url().match(known)[1];
    const original = rest === ".scenarios.json" ? {} : await json(`${url}texts/en${rest}`);
    await route.fulfill({ json: Object.fromEntries(Object.entries(original).map(([key, message]) => [key, changed(message, change)])) });
  });
}

const button = (page, name) => page.getByRole("button", { name, exact: true });
const field = (page, name) => page.getByLabel(name, { exact: true });

/** Records for some seconds on the bench that is open; the recording lies open then. */
const shortRecording = (page, w, seconds = 4) => student.take(page, seconds, { record: w("strip-record"), stop: w("strip-stop") });

async function fillSheet(page, w, { count, seconds, multiplier, rate }) {
  for (const [name, value] of Object.entries({ count, seconds, multiplier, rate })) await field(page, w(`sheet-line-${name}`)).fill(value);
  await field(page, w("sheet-line-rate")).press("Tab");
}

/** Takes a page through start, card index, the instructors' pages, bench, trace, take, sheet and debrief; calls see(name) on each. */
async function screens(page, url, w, see) {
  await page.goto(url);
  await page.locator("#start .card").first().waitFor();
  await see("start");
  await page.goto(`${url}#faults`);
  await page.locator("#faults h1, #faults h2").first().waitFor();
  await see("card index");
  for (const name of ["assign", "class", "skills", "notebook", "words", "teach"]) {
    await page.goto(`${url}#${name}`);
    const title = ["words", "teach"].includes(name) ? page.locator("#read-h", { hasText: w(`side-${name}`) }) : page.locator(`#${name}-h`);
    await title.waitFor();
    await see(name);
  }
  await student.openScenario(page, url, "hum-on-the-trace", 7);
  await see("what is asked");
  await student.pressButton(page, w("look-sensor"));
  await see("list of parts");
  await student.side(page, "bench");
  await page.locator(".seen li").first().waitFor();
  await see("bench");
  await page.locator(".part-hand .hit").click();
  await page.locator(".touch-card").waitFor();
  await see("card of the hand");
  for (const stage of await page.locator(".stage").all()) {
    await stage.click();
    await see(await stage.innerText());
  }
  await button(page, w("summary-ask")).click();
  await see("strip");
  await shortRecording(page, w, 3);
  await field(page, w("measure-a")).fill("0.5");
  await field(page, w("measure-b")).fill("2.5");
  await see("take");
  await student.pressButton(page, w("marks-at_a"));
  await page.locator("details.marks summary").first().click();
  await see("more of measuring");
  await page.keyboard.press("Escape");
  await fillSheet(page, w, { count: "3", seconds: "2", multiplier: "x", rate: "1.2.3" });
  for (const name of ["debrief", "debrief with the truth"]) {
    await page.locator("#worksheet .page-do .btn").first().click();
    await student.sayYes(page);
    await page.locator(".debrief .step").first().waitFor();
    await see(name);
  }
  await page.locator(".debrief .truth").waitFor();
  await student.openScenario(page, url, "thick-trace-a", 7);
  await student.side(page, "name");
  for (const more of await page.locator(".naming details").all()) await more.evaluate((el) => (el.open = true));
  await page.locator(".naming .fault-name:visible").first().waitFor();
  await see("naming");
}

const noSidewaysScroll = (page) => async (screen) => {
  const [inner, client] = await page.evaluate(() => [Math.max(document.documentElement.scrollWidth, document.body.scrollWidth), document.documentElement.clientWidth]);
  if (inner <= client) return;
  const out = await page.evaluate(() => [...document.querySelectorAll("body *")].filter((el) => el.checkVisibility() && el.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
    .slice(0, 5).map((el) => `${el.parentElement.className} > ${el.tagName}.${el.className} "${el.textContent.trim().slice(0, 30)}" to ${Math.round(el.getBoundingClientRect().right)}`));
  assert.fail(`${screen}: ${inner} px of content on ${client} px: ${out.join("; ")}`);
};

/** Words that nobody can read: beyond the window's edge, or cut by their own box. What ends in dots on purpose is left out. */
const nothingCut = (page) => async (screen) => {
  const cut = await page.evaluate(() => {
    const shown = (el) => el.checkVisibility({ visibilityProperty: true }) && el.clientWidth > 2 && !el.closest(".vh, .where, .margin, [aria-hidden=true], svg");
    const all = [...document.querySelectorAll("button, .btn, a, label, .lbl, legend, summary, h1, h2, h3, h4, p, li, dt, dd, th, td, output, .where ~ *")].filter((el) => shown(el) && el.textContent.trim() !== "");
    const clipped = (el) => ["hidden", "clip"].includes(getComputedStyle(el).overflowX) && (el.scrollWidth > el.clientWidth + 1 || el.scrollHeight > el.clientHeight + 1);
    const outside = (el) => el.getBoundingClientRect().right > document.documentElement.clientWidth + 1 || el.getBoundingClientRect().left < -1;
    const squeezed = [...document.querySelectorAll("select, input.txt")].filter((el) => shown(el) && el.clientWidth < 2.5 * parseFloat(getComputedStyle(el).fontSize));
    if (squeezed.length > 0) return { looked: all.length, cut: squeezed.map((el) => `no room in ${el.tagName}.${el.className} ${el.id}`) };
    return { looked: all.length, cut: all.filter((el) => clipped(el) || outside(el)).map((el) => `${el.tagName}.${el.className} "${el.textContent.trim().slice(0, 50)}"`) };
  });
  assert.ok(cut.looked > 10, `looked at ${cut.looked} elements of "${screen}"`);
  assert.deepEqual(cut.cut, [], screen);
};

describe("languages", { concurrency: 2 }, () => {
  test("a browser that asks for Spanish gets the page, its scenarios and its card index in Spanish; one that asks for neither gets English", async () => {
    await withPage({ ...wide, locale: "es-MX" }, async ({ page, url }) => {
      const [es, told, faults] = await Promise.all(["es", "es.scenarios", "es.faults"].map((name) => json(`${url}texts/${name}.json`)));
      const fetched = [];
      page.on("request", (request) => request.url().includes("/texts/") && fetched.push(request.url().split("/texts/")[1]));
      await page.goto(url);
      await page.getByRole("heading", { name: es["start-title"], exact: true }).waitFor();
      assert.equal(await page.locator("html").getAttribute("lang"), "es");
      await page.getByRole("link", { name: told["scenario-first-wiring.title"], exact: true }).waitFor();
      assert.equal(await page.locator("#start .card-series h4", { hasText: told["scenario-no-recorder-a.title"].replace(/ \d+$/, "") }).first().textContent(), "Sin registrador");
      assert.deepEqual(fetched.sort(), ["es.json", "es.scenarios.json"], "words of another language were fetched");
      await page.goto(`${url}#faults`);
      await page.getByRole("heading", { name: faults["entry-strap_loose"], exact: true }).waitFor();
      await page.goto(`${url}?again#s=rest-pulse&seed=4`);
      await page.getByText(told["scenario-rest-pulse.aim"], { exact: true }).waitFor();
      assert.match(await page.title(), new RegExp(told["scenario-rest-pulse.title"]));
    });
    await withPage({ ...wide, locale: "fr-FR" }, async ({ page, url }) => {
      const en = await json(`${url}texts/en.json`);
      await page.goto(url);
      await page.getByRole("heading", { name: en["start-title"], exact: true }).waitFor();
      assert.equal(await page.locator("html").getAttribute("lang"), "en");
    });
  });

  test("the choice in the head goes before the browser's language, stays, and costs no attempt", async () => {
    await withPage({ ...wide, locale: "en-GB" }, async ({ page, url }) => {
      const [en, es] = [await wordsOf(url, "en"), await wordsOf(url, "es")];
      const range = (w) => field(page, w("set-range")).evaluate((el) => el.value ?? el.textContent);
      await student.openScenario(page, url, "hum-on-the-trace", 7);
      const before = await range(en);
      await button(page, en("set-range_less")).click();
      const set = await range(en);
      assert.notEqual(set, before);
      await field(page, en("sheet-line-count")).fill("17");
      await field(page, en("sheet-line-count")).press("Tab");
      await field(page, en("tools-language")).selectOption("es");
      await page.locator("#ask").getByRole("button", { name: es("resume-yes"), exact: true }).click();
      await field(page, es("sheet-line-count")).waitFor();
      assert.equal(await page.locator("html").getAttribute("lang"), "es");
      assert.equal(await range(es), set);
      assert.equal(await field(page, es("sheet-line-count")).inputValue(), "17");
      await page.goto(url);
      await page.getByRole("heading", { name: es("start-title"), exact: true }).waitFor();
      await field(page, es("tools-language")).selectOption("en");
      await page.getByRole("heading", { name: en("start-title"), exact: true }).waitFor();
    });
  });

  test("numbers are read and written with a comma, on the page and by the student; saved files keep the point", async () => {
    await withPage({ ...wide, locale: "es-ES" }, async ({ page, url }) => {
      await page.addInitScript(() => {
        window.drawn = [];
        const write = CanvasRenderingContext2D.prototype.fillText;
        CanvasRenderingContext2D.prototype.fillText = function (text, ...rest) {
          window.drawn.push(text);
          return write.call(this, text, ...rest);
        };
      });
      const w = await wordsOf(url, "es");
      await student.openScenario(page, url, "hum-on-the-trace", 7);
      await shortRecording(page, w);
      await page.evaluate(() => (window.drawn = []));
      await student.choose(page, w("set-time_base"), "1 s");
      await page.waitForFunction(() => window.drawn.some((text) => /\d,\d/.test(text)));
      const drawn = await page.evaluate(() => window.drawn);
      assert.deepEqual(drawn.filter((text) => /\d\.\d/.test(text)), [], "a label with a point");

      await student.choose(page, w("set-time_base"), "10 s");
      await field(page, w("measure-a")).fill("0,5");
      await field(page, w("measure-b")).fill("3,25");
      await field(page, w("measure-b")).press("Tab");
      assert.deepEqual(await Promise.all(["a", "b"].map((one) => field(page, w(`measure-${one}`)).inputValue())), ["0,50", "3,25"]);
      assert.equal(await student.reading(page, w("measure-between")), "2,75 s");
      assert.equal(await page.locator(".cursor-a").getAttribute("aria-valuetext"), "0,50 s");

      const verdictOf = (debrief, step) => debrief.verdictOf(w(`debrief-step-${step}`));
      await fillSheet(page, w, { count: "3", seconds: "2,75", multiplier: "21,82", rate: "72,5" });
      assert.deepEqual((await page.locator(".blanks .problem").allInnerTexts()).filter(Boolean), []);
      await page.locator("#worksheet .page-do .btn").first().click();
    await student.sayYes(page);
      const first = await student.readDebrief(page);
      assert.equal(verdictOf(first, "seconds"), w("verdict-right"), first.text);
      assert.equal(verdictOf(first, "multiplier"), w("verdict-right"), first.text);
      assert.equal(verdictOf(first, "rate"), w("verdict-wrong"), first.text); // a number, if not the right one: 3 x 21.82 is 65.46
      await field(page, w("sheet-line-rate")).fill("65,46");
      await field(page, w("sheet-line-rate")).press("Tab");
      await page.locator("#worksheet .page-do .btn").first().click();
    await student.sayYes(page);
      await page.locator(".debrief .truth").waitFor();
      const second = await student.readDebrief(page);
      assert.equal(verdictOf(second, "rate"), w("verdict-right"), second.text);
      for (const rate of second.truth.slice(1)) assert.match(rate, /^\d+,\d$/);
      assert.doesNotMatch(second.text, /\d\.\d/);

      const [download] = await Promise.all([page.waitForEvent("download"), student.pressButton(page, w("save-csv.long"))]);
      assert.match(download.suggestedFilename(), /^dicrotic-grabacion-\d+\.csv$/);
      const head = (await student.bytesOf(download)).toString("utf8").split("\n").slice(0, 3);
      assert.equal(head[0], "t_s,value");
      assert.match(head[2], /^\d+\.\d+,-?\d+(\.\d+)?(e-?\d+)?\r?$/);
    });
  });

  test("the brief of a scenario in Spanish does not name the fault that the student is to name", async () => {
    await withPage({}, async ({ url }) => {
      const [faults, told, index] = await Promise.all(["texts/es.faults.json", "texts/es.scenarios.json", "scenarios/index.json"].map((name) => json(url + name)));
      let looked = 0;
      for (const { id, file } of index) {
        const toml = await (await fetch(`${url}scenarios/${file}`)).text();
        if (!/^name_faults = true/m.test(toml)) continue;
        const words = ["title", "aim", "brief"].map((part) => told[`scenario-${id}.${part}`]).join(" ").toLowerCase();
        const fixed = [...toml.matchAll(/^\[\[fault\]\]\s+name = "(\w+)"/gm)].map(([, fault]) => fault);
        const drawn = (toml.match(/^(?:one_of|faults) = \[([^\]]*)\]/m)?.[1] ?? "").match(/\w+/g) ?? [];
        for (const fault of [...fixed, ...drawn]) {
          looked += 1;
          assert.ok(!words.includes(faults[`entry-${fault}`].toLowerCase()), `${id}: ${faults[`entry-${fault}`]}`);
        }
      }
      assert.ok(looked >= 25, `${looked}`);
    });
  });

  test("Spanish has as many parts as English where the page splits a message, and one form for every number", async () => {
    await withPage({}, async ({ url }) => {
      let split = 0;
      for (const bundle of ["", ".faults", ".hints", ".after", ".class"]) {
        const [en, es] = await Promise.all(["en", "es"].map((language) => json(`${url}texts/${language}${bundle}.json`)));
        for (const [key, message] of Object.entries(en)) {
          const parts = (one) => strings(one).join("").split("|").length;
          assert.equal(parts(es[key]), parts(message), key);
          if (parts(message) > 1) split += 1;
          assert.ok(strings(es[key]).every((text) => !/[!¡]/.test(text)), key);
        }
      }
      assert.ok(split >= 2, `${split}`);
    });
  });

  test("no two bundles of a language share a key: the page keeps the words of all that it has brought in one place", async () => {
    await withPage({}, async ({ url }) => {
      const bundles = readdirSync(path.join(root, "www/texts/en/later")).map((name) => path.basename(name, ".ftl"));
      assert.ok(bundles.length > 8, `${bundles}`);
      const seen = new Map();
      for (const bundle of ["", ...bundles]) {
        for (const key of Object.keys(await json(`${url}texts/en${bundle && `.${bundle}`}.json`))) {
          assert.ok(!seen.has(key), `${key} stands in "${seen.get(key)}" and in "${bundle}"`);
          seen.set(key, bundle);
        }
      }
    });
  });

  for (const width of [320, 390]) {
    test(`Spanish on ${width} px: nothing scrolls sideways, nothing is cut`, async () => {
      await withPage({ ...phone(width), locale: "es-ES" }, async ({ page, url }) => {
        const w = await wordsOf(url, "es");
        await screens(page, url, w, async (screen) => {
          await noSidewaysScroll(page)(screen);
          await nothingCut(page)(screen);
        });
      });
    });

    test(`words twice as long on ${width} px: nothing scrolls sideways, nothing breaks`, async () => {
      await withPage({ ...phone(width), locale: "en-GB" }, async ({ page, url }) => {
        const twice = (text) => text.split("|").map((part) => (part.trim() === "" ? part : `${part} ${part}`)).join("|");
        const w = await wordsOf(url, "en", twice);
        await pretend(page, url, "en", twice);
        await screens(page, url, w, noSidewaysScroll(page));
      });
    });
  }

  test("letters twice as large on 1280 px: nothing scrolls sideways, nothing is cut", async () => {
    await withPage({ ...wide, locale: "es-ES" }, async ({ page, url }) => {
      // As in the settings of the browser: what depends on the window's width in letters goes by them too.
      await (await page.context().newCDPSession(page)).send("Page.setFontSizes", { fontSizes: { standard: 32, fixed: 26 } });
      const w = await wordsOf(url, "es");
      await screens(page, url, w, async (screen) => {
        await noSidewaysScroll(page)(screen);
        await nothingCut(page)(screen);
      });
      assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize), "32px");
    });
  });

  test("a language from right to left: the page turns round, and time still runs from left to right", async () => {
    const marked = (text) => text.split("|").map((part) => `\u200f${part}`).join("|");
    for (const size of [wide, phone(390)]) {
      await withPage({ ...size, locale: "ar" }, async ({ page, url }) => {
        await page.route((address) => address.pathname === "/", async (route) => {
          const answer = await route.fetch();
          const body = (await answer.text()).replace(/data-languages="([^"]*)"/, 'data-languages="$1 ar"');
          await route.fulfill({ response: answer, body });
        });
        await pretend(page, url, "ar", marked);
        const w = await wordsOf(url, "en", marked);
        await screens(page, url, w, noSidewaysScroll(page));
        assert.deepEqual(await page.evaluate(() => [document.documentElement.lang, document.documentElement.dir, getComputedStyle(document.body).direction]), ["ar", "rtl", "rtl"]);

        await student.openScenario(page, url, "hum-on-the-trace", 8);
        await shortRecording(page, w);
        await field(page, w("measure-a")).fill("1");
        await field(page, w("measure-b")).fill("3");
        await field(page, w("measure-b")).press("Tab");
        const stands = async (one) => [Number(await page.locator(`.cursor-${one}`).getAttribute("aria-valuenow")), (await page.locator(`.cursor-${one}`).boundingBox()).x];
        const [[ta, xa], [tb, xb]] = await Promise.all(["a", "b"].map(stands));
        assert.deepEqual([ta, tb], [1, 3]);
        assert.ok(xb > xa + 20, `A stands at ${xa} px, B at ${xb} px`);
        const perSecond = (xb - xa) / (tb - ta);
        await page.locator(".field").scrollIntoViewIfNeeded();
        const flag = await page.locator(".cursor-b .cursor-flag").boundingBox();
        const [x, y] = [flag.x + flag.width / 2, flag.y + flag.height / 2];
        await page.mouse.move(x, y);
        await page.mouse.down();
        await page.mouse.move(x + 15, y, { steps: 4 });
        await page.mouse.move(x + perSecond, y, { steps: 6 });
        await page.mouse.up();
        const [dragged] = await stands("b");
        assert.ok(Math.abs(dragged - 4) < 0.1, `B was dragged a second to the right and stands at ${dragged} s`);
        await page.locator(".cursor-a").focus();
        await page.keyboard.press("ArrowRight");
        const [moved] = await stands("a");
        assert.ok(moved > 1, `ArrowRight moved A to ${moved} s`);
      });
    }
  });
});
