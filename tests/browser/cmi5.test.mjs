// A packed assignment in a course site of cmi5: cmi5_site.mjs is the site, which refuses whatever breaks a rule.
import { test } from "node:test";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, withContexts } from "./lib.mjs";
import { Cmi5Host, isDefined, ORIGIN, verbOf } from "./cmi5_site.mjs";
import { packFile, serveSite, unpack, viewport, work } from "./site.mjs";
import * as student from "./student.mjs";

const shots = path.join(root, "tests/browser/shots");
mkdirSync(shots, { recursive: true });
const OPENING = "Read page 12 before you begin.", CLOSING = "Bring your lab book on Tuesday.";
const plain = readFileSync(path.join(root, "scenarios/04-rest-pulse.toml"), "utf8");
const assigned = `${plain}\n[assignment]\nkey = "bio-101"\nseeds = "each"\nattempts = 2\nopening = "${OPENING}"\nclosing = "${CLOSING}"\n`;

async function packed(name, text) {
  const toml = path.join(work, `${name}.toml`);
  writeFileSync(toml, text);
  return unpack(await packFile(toml, `${name}.zip`, "--standard", "cmi5"));
}

/** The site, the package at its own address, and devices that reach both. launch(): opens the unit in a new tab. */
async function withHost(body, { text = plain, ...how } = {}) {
  const files = await packed(text === plain ? "cmi5-plain" : "cmi5-assigned", text);
  const publisher = files.get("cmi5.xml").toString().match(/<au id="([^"]+)"/)[1];
  const host = new Cmi5Host({ publisher, ...how });
  const site = await serveSite("scorm12", files);
  const place = site.url.replace("/site", "/package/index.html");
  try {
    await withContexts(async (newContext) => {
      const device = async (more = {}) => {
        const context = await newContext({ viewport, acceptDownloads: true, ...more });
        // The same heart each time: of some, the ruler of these tests cannot make out every beat.
        await context.addInitScript(() => (crypto.getRandomValues = (words) => words.fill(0)));
        await host.serve(context);
        return context;
      };
      const launch = async (context, registration) => {
        const page = await context.newPage();
        page.troubles = [];
        page.on("pageerror", (error) => page.troubles.push(error.message));
        await page.goto(place + host.launch(registration));
        return page;
      };
      await body({ host, device, launch, files, place, blank: site.url.replace("/site", "/blank") });
    });
  } finally {
    await site.stop();
  }
}

/** The words before the first try, which say what leaves the device. */
async function begin(page, label = "Start attempt 1") {
  await page.locator("#ask").getByText(`Your work goes to ${new URL(ORIGIN).host}.`).waitFor();
  await student.pressButton(page, label);
  await ready(page);
}
const ready = (page) => page.locator(".plug").first().waitFor({ state: "attached" });
const seedOf = (page) => page.locator(".where .seed").innerText();
const rangeOf = (page) => page.getByLabel("Full-scale range", { exact: true }).evaluate((el) => el.selectedOptions[0].textContent);
const setRange = (page, label) => student.choose(page, "Full-scale range", label);
const siteHasAll = (page) => page.getByText("The course site has everything up to now").waitFor();
const finish = (page) => student.pressButton(page, "Finish and submit");
const ended = (page) => page.locator("#calm").filter({ hasText: "You can close this browser tab" }).waitFor();
const verbs = (host, session) => host.defined(session).map(verbOf);
const steps = (host, session) => session.own.filter((one) => !isDefined(one) && /\/step-/.test(one.object.id));

/** Records, counts right, and checks. */
async function pass(page) {
  await setRange(page, "±50 mV");
  await student.record(page, 18);
  await student.fillSheet(page, (await student.readWindow(page)).right);
  await student.check(page);
  await student.kept(page);
}

test("launched, worked, loaded anew, finished; the next registration begins anew", { timeout: 300_000 }, async () => {
  await withHost(async ({ host, device, launch, blank }) => {
    const context = await device(), first = host.register();
    host.returnURL = `${blank}?back`;
    let page = await launch(context, first);
    await begin(page);
    const [session] = host.sessions;
    assert.deepEqual(host.asked.filter((one) => !one.startsWith("OPTIONS")).slice(0, 5), ["POST /token", "GET /xapi/activities/state", "GET /xapi/agents/profile", "GET /xapi/activities/state", "POST /xapi/statements"]);
    assert.deepEqual(verbs(host), ["initialized"]);
    await setRange(page, "±100 mV");
    await siteHasAll(page);
    await student.kept(page);
    const seed = await seedOf(page);
    assert.match(host.document(first).attempt, /^S2\.\d+\.1\.1\.[a-z0-9]+\.D3\./);
    await page.screenshot({ path: path.join(shots, "course-cmi5.png") });

    // Loaded anew within the visit: the token is good for one asking, and Initialized is told once.
    await page.reload();
    await ready(page);
    assert.deepEqual([await seedOf(page), await rangeOf(page)], [seed, "±100 mV"]);
    assert.deepEqual(verbs(host), ["initialized"]);
    assert.equal(host.asked.filter((one) => one === "POST /token").length, 1);

    await pass(page);
    await siteHasAll(page);
    assert.deepEqual(verbs(host), ["initialized", "completed", "passed"]);
    const [, , passed] = host.defined(session);
    assert.ok(passed.result.score.scaled >= 0.8 && passed.result.score.scaled <= 1, JSON.stringify(passed.result));
    assert.equal(steps(host, session).length, await page.locator(".debrief .step").count());
    assert.ok(steps(host, session).every(({ object, result }) => object.definition.interactionType === "other" && result.response));
    await finish(page);
    await page.waitForURL(`${blank}?back`);
    assert.deepEqual(verbs(host), ["initialized", "completed", "passed", "terminated"]);
    assert.equal(session.ended, "terminated");
    assert.match(host.defined().at(-1).result.duration, /^PT\d+H\d+M[\d.]+S$/);
    assert.deepEqual(page.troubles, []);
    // Nothing stays on a machine that others use.
    await page.goBack();
    await page.locator("#calm").filter({ hasText: "This visit is over" }).waitFor();
    assert.deepEqual(await page.evaluate(() => Object.keys(localStorage).filter((key) => /:course(-out)?:/.test(key))), []);
    await page.close();

    // The same registration, opened again on another device: the attempt as it was closed, and nothing is told twice.
    host.returnURL = undefined;
    page = await launch(await device(), first);
    await ready(page);
    await page.locator(".debrief .step").first().waitFor();
    assert.equal(await seedOf(page), seed);
    await finish(page);
    await ended(page);
    assert.deepEqual(verbs(host, host.sessions[1]), ["initialized", "terminated"]);
    await page.close();

    // Another registration of the same student on the first device: nothing of before is in it.
    const second = host.register();
    page = await launch(context, second);
    await begin(page);
    assert.equal(await page.locator(".debrief .step").count(), 0);
    assert.equal(await rangeOf(page), "±200 mV");
    await student.frames(page, 5);
    assert.deepEqual(host.refused, []);
  });
});

test("a network that fails in the middle loses nothing: what was done meanwhile goes over afterwards, in its order and with its times", { timeout: 300_000 }, async () => {
  await withHost(async ({ host, device, launch }) => {
    const context = await device(), registration = host.register();
    let page = await launch(context, registration);
    await begin(page, "Start attempt 1 of 2");
    await siteHasAll(page);
    host.down = true;
    await student.record(page, 4);
    await student.fillSheet(page, { count: 5, seconds: 4, multiplier: 15, rate: 300 });
    await student.check(page);
    await page.getByText("The course site did not accept the last step. This device keeps it.").waitFor();
    const [session] = host.sessions, before = new Date().toISOString();
    assert.deepEqual(verbs(host), ["initialized"]);
    // The end cannot be told; the visit has not ended, and the page says so.
    await finish(page);
    await page.getByText("The course site does not know yet that you are finished").waitFor();
    // It comes back, and the browser tells of it.
    host.down = false;
    await page.evaluate(() => dispatchEvent(new Event("online")));
    await siteHasAll(page);
    // What the page said at the end of the visit is said, and the visit goes on.
    assert.deepEqual(verbs(host), ["initialized", "completed", "failed"]);
    const there = steps(host, session).length;
    assert.ok(there > 0 && steps(host, session).every(({ timestamp }) => timestamp < before), "a step has the time of its sending");
    assert.deepEqual(host.statements.map(({ timestamp }) => timestamp), host.statements.map(({ timestamp }) => timestamp).toSorted());

    // It fails again, and the tab is closed over it. The next visit tells what this one could not.
    host.down = true;
    await student.fillSheet(page, { count: 5, seconds: 4, multiplier: 15, rate: 301 });
    await student.check(page);
    await page.locator(".handin").getByText(CLOSING).waitFor();
    await student.kept(page);
    const seed = await seedOf(page);
    await page.close();
    host.down = false;
    page = await launch(context, registration);
    await ready(page);
    await siteHasAll(page);
    assert.equal(await seedOf(page), seed);
    const later = host.sessions[1];
    assert.equal(session.ended, "abandoned");
    await finish(page);
    await ended(page);
    // A statement that was on its way when the tab was closed may have come with the visit before.
    assert.equal(steps(host, session).length + steps(host, later).length, 2 * there, `the steps of the second check: ${JSON.stringify({ before: steps(host, session).length, there, later: steps(host, later).length, refused: host.refused, verbs: verbs(host, later), asked: host.asked.slice(-12) })}`);
    assert.deepEqual(verbs(host, later), ["initialized", "failed", "terminated"]);
    assert.deepEqual(host.refused, []);
    assert.deepEqual(await page.evaluate(() => Object.keys(localStorage).filter((key) => /:course(-out)?:/.test(key))), []);
  }, { text: assigned });
});

test("a passing reading after a failed one is told once the rules allow it", { timeout: 300_000 }, async () => {
  await withHost(async ({ host, device, launch }) => {
    const context = await device(), registration = host.register();
    let page = await launch(context, registration);
    await begin(page);
    await student.record(page, 4);
    await student.fillSheet(page, { count: 5, seconds: 4, multiplier: 15, rate: 300 });
    await student.check(page);
    await siteHasAll(page);
    assert.deepEqual(verbs(host), ["initialized", "completed"], "a visit may say one thing, and it may still be passed");
    const failed = host.statements.find((one) => verbOf(one) === "scored").result.score;
    assert.ok(failed.scaled < 0.8 && failed.raw === Math.round(failed.scaled * 100), JSON.stringify(failed));
    await student.pressButton(page, "Try again with a new seed");
    await student.pressButton(page, "Start attempt 2");
    await page.locator("#lab").waitFor();
    await pass(page);
    await siteHasAll(page);
    assert.deepEqual(verbs(host), ["initialized", "completed", "passed"]);
    await finish(page);
    await ended(page);
    assert.deepEqual(verbs(host), ["initialized", "completed", "passed", "terminated"]);
    assert.deepEqual(host.refused, []);
  });
});

test("the site's records show the misreading, and that it is gone later", { timeout: 300_000 }, async () => {
  await withHost(async ({ host, device, launch }) => {
    const page = await launch(await device(), host.register());
    await begin(page);
    await setRange(page, "±50 mV");
    await student.record(page, 18);
    const { right, turned } = await student.readWindow(page);
    const about = () => host.statements.filter(({ object }) => object.id.endsWith("/misreading-turned_over")).map((one) => [verbOf(one), one.result.success, one.object.definition.type]);
    const objective = "http://adlnet.gov/expapi/activities/objective";
    for (const [blanks, told] of [[turned, [["experienced", false, objective]]], [right, [["experienced", false, objective], ["mastered", true, objective]]]]) {
      await student.fillSheet(page, blanks);
      await student.check(page);
      await student.kept(page);
      await siteHasAll(page);
      assert.deepEqual(about(), told);
    }
    const answer = host.statements.find(({ object }) => object.id.endsWith("/step-multiplier"));
    assert.deepEqual([answer.result.success, answer.result.response.includes(turned.multiplier)], [false, true]);
    assert.deepEqual(host.refused, []);
  });
});

test("a launch that cannot begin is told, and no work is begun that the site would never see", async () => {
  await withHost(async ({ host, device, launch, place }) => {
    const context = await device(), registration = host.register();
    const page = await launch(context, registration);
    await begin(page);
    const address = page.url();
    const told = async (url, words, before = () => {}) => {
      const other = await (await device()).newPage();
      before();
      await other.goto(url);
      await other.locator("#calm").filter({ hasText: words }).waitFor();
      assert.equal(await other.locator(".plug").count(), 0);
      await other.close();
    };
    await told(address, "The link that opened this page works only once");
    await told(address.replace(/&actor=[^&]*/, ""), "but something is missing");
    await told(address.replace(/endpoint=[^&]*/, "endpoint=javascript%3A1"), "but something is missing");
    await told(place + host.launch(registration), "cannot reach the course site now", () => (host.down = true));
    host.down = false;
    host.documents.clear();
    await told(place + host.launch(registration), "but something is missing", () => host.documents.clear());
    const alone = await (await device()).newPage();
    await alone.goto(place);
    await alone.getByText("This page found no course site").waitFor();
  });
});

test("the page reaches the launch's own place alone, speaks the student's language, and only looks when it is told to", async () => {
  await withHost(async ({ host, device, launch }) => {
    const page = await launch(await device(), host.register());
    await page.locator("#ask").getByText("Tu trabajo va a records.example").waitFor();
    await page.keyboard.press("Escape");
    await ready(page);
    const reaches = (url) => page.evaluate((to) => fetch(to, { mode: "no-cors" }).then(() => true, () => false), url);
    const refused = page.evaluate(() => new Promise((done) => document.addEventListener("securitypolicyviolation", (event) => done([event.effectiveDirective, event.blockedURI]), { once: true })));
    await page.context().route("https://elsewhere.example/**", (route) => route.fulfill({ body: "here" }));
    assert.equal(await reaches("https://elsewhere.example/x"), false);
    assert.deepEqual(await refused, ["connect-src", "https://elsewhere.example/x"]);
    assert.equal(await reaches(`${ORIGIN}/token?of=0`), true);
    assert.equal(await page.locator(".course [role=status]").innerText(), "El aula virtual abrió esto solo para mirar. Nada cuenta y nada se guarda.");
    await page.locator(".strip select").first().selectOption({ index: 0 });
    await student.notKept(page, "off");
    await student.pressButton(page, "Terminar y entregar");
    await page.locator("#calm").filter({ hasText: "Puedes cerrar esta pestaña." }).waitFor();
    assert.deepEqual(verbs(host), ["initialized", "terminated"]);
    assert.equal(host.statements.length, 2);
    assert.deepEqual([...host.documents.keys()].filter((key) => !key.includes("LMS.LaunchData")), []);
    assert.deepEqual(host.refused.filter(({ why }) => !/by POST/.test(why)), []);
  }, { mode: "Browse", preferences: { languagePreference: "fr-FR,es-MX", audioPreference: "off" } });
});

test("another's client says the same to the same site, and the site does refuse what a rule forbids", async () => {
  const script = readFileSync(path.join(root, "tests/browser/node_modules/@xapi/cmi5/dist/Cmi5.umd.js"), "utf8");
  await withHost(async ({ host, device, launch, blank }) => {
    const context = await device(), registration = host.register();
    const page = await launch(context, registration);
    await begin(page);
    await pass(page);
    await finish(page);
    await ended(page);
    const ours = host.defined();
    const other = await context.newPage();
    await other.goto(blank + host.launch(host.register()));
    await other.addScriptTag({ content: script });
    const score = ours.find((one) => verbOf(one) === "passed").result.score;
    const again = await other.evaluate(async (points) => {
      const client = new globalThis.Cmi5();
      await client.initialize();
      await client.complete();
      await client.pass(points);
      const told = await client.pass(points).then(() => "taken", (error) => error.response?.status);
      const early = await client.fail(0.1).then(() => "taken", (error) => error.response?.status);
      await client.terminate();
      return [told, early, await client.complete().then(() => "taken", (error) => error.response?.status)];
    }, score);
    assert.deepEqual(again, [403, 403, 403], "the site takes anything");
    assert.deepEqual(host.refused.map(({ why }) => why), ["9.3: passed twice in a visit", "9.3: passed and failed in a visit", "9.3: the visit is terminated"]);
    const theirs = host.defined().slice(ours.length);
    /** What must be alike: all but times, names of this statement, of the visit and of the words for people. */
    const plainly = ({ actor, verb, object, result = {}, context: { contextActivities, extensions } }) => ({
      actor, verb: verb.id, object: object.id, result: { ...result, duration: "duration" in result }, categories: contextActivities.category.map(({ id }) => id).toSorted(),
      grouping: contextActivities.grouping.map(({ id }) => id), extensions: Object.fromEntries(Object.entries(extensions).map(([key, value]) => [key, key.endsWith("sessionid") ? "" : value])),
    });
    assert.deepEqual(ours.map(plainly), theirs.map(plainly));
  });
});
