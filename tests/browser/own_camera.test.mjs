// One's own pulse by the camera: films of a known pulse are read, films of anything else are refused with words, and each way in which a
// camera can fail has its own. Nothing is asked of a server, nothing is stored, and the camera is off when it is not needed.
import { after, before, describe, test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { countPictures, counterShape, faceLike, fingertip, longestGap, movingFinger, shownRate, tableTop, withCamera } from "./fake_camera.mjs";
import { startServer, words } from "./lib.mjs";
import * as student from "./student.mjs";

let server, said;
before(async () => {
  server = await startServer();
  said = await words("own");
});
after(() => server.stop());

/** Notes what the page asks of its camera: each stream that it got, each constraint that it set. */
const noteCamera = () => {
  const get = navigator.mediaDevices?.getUserMedia.bind(navigator.mediaDevices);
  window.streams = [];
  window.constraints = [];
  if (!get) return;
  navigator.mediaDevices.getUserMedia = async (wanted) => {
    window.constraints.push(wanted);
    const stream = await get(wanted);
    window.streams.push(stream);
    return stream;
  };
};

/** A page of its own with a camera that plays a film, at the camera's way; `film` null: a device without a camera. */
async function atCamera(film, { flags = [], viewport = { width: 1280, height: 900 }, scripts = [], permissions, bare = false }, body) {
  const browser = await withCamera(film, flags);
  try {
    const context = await browser.newContext({ viewport, serviceWorkers: "block", ...(permissions ? { permissions } : {}) });
    context.setDefaultTimeout(90_000);
    await context.addInitScript(noteCamera);
    await context.addInitScript(countPictures, counterShape);
    for (const script of scripts) await context.addInitScript(script);
    const page = await context.newPage();
    const complaints = [];
    page.on("pageerror", (error) => complaints.push(error.message));
    page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
    if (!bare) {
      await page.goto(`${server.url}#own`);
      await page.locator('.own-chosen .seg[data-key="camera"]').click();
    }
    await body(page, context);
    assert.deepEqual(complaints, []);
  } finally {
    await browser.close();
  }
}

const panel = (page) => page.locator(".own-two").filter({ has: page.locator(".own-lens") });
const start = (page) => page.getByRole("button", { name: said["own-camera_start"], exact: true }).click();
const stop = (page) => panel(page).getByRole("button", { name: said["own-stop"], exact: true }).click();
const state = (page, name) => panel(page).and(page.locator(`[data-state="${name}"]`)).waitFor();
const tracksLive = (page) => page.evaluate(() => window.streams.flatMap((stream) => stream.getTracks()).filter((track) => track.readyState === "live").length);
const failsWith = async (page, why) => {
  await state(page, "failed");
  assert.equal(await panel(page).getAttribute("data-why"), why);
  assert.ok((await panel(page).locator(".own-ended").innerText()).includes(said[`own-fail-${why}`]), why);
  assert.equal(await tracksLive(page), 0);
};
/** Everything in which a page could keep something. */
const stored = (page) => page.evaluate(async () => JSON.stringify([{ ...localStorage }, { ...sessionStorage }, await caches.keys(), (await indexedDB.databases()).map(({ name }) => name), document.cookie]));

describe("a pulse on the camera", { concurrency: 1 }, () => {
  for (const [bpm, width, height] of [[54, 390, 844], [72, 1280, 900], [108, 1024, 768]]) {
    test(`${bpm} beats/min are read within 1 %, by the pictures' own numbers; no request, nothing stored, nothing moves, camera off`, { timeout: 300_000 }, async () => {
      const film = fingertip({ bpm });
      await atCamera(film.file, { viewport: { width, height } }, async (page) => {
        await page.waitForLoadState("networkidle");
        await page.evaluate(() => {
          window.shifts = [];
          new PerformanceObserver((list) => window.shifts.push(...list.getEntries().filter((one) => !one.hadRecentInput).map((one) => `${one.value}: ${one.sources.map(({ node }) => node?.className || node?.nodeName).join()}`))).observe({ type: "layout-shift" });
        });
        const kept = await stored(page);
        const requests = [];
        page.on("request", (request) => requests.push(request.url()));
        await start(page);
        await state(page, "recording");
        await state(page, "done");
        assert.equal(await tracksLive(page), 0, "the camera is still on");
        const truth = shownRate(await page.evaluate(() => window.pictures), film, 30);
        const told = await panel(page).getAttribute("data-rate");
        // On a machine with much other work the fake camera stops for a while: then the page rightly tells no heart rate, and this test nothing.
        assert.ok(told !== null, `no heart rate, with a gap of ${longestGap(await page.evaluate(() => window.pictures), 30)} s between pictures: ${await panel(page).locator(".own-figures").innerText()}`);
        const read = Number(told);
        assert.ok(Math.abs(read / truth - 1) < 0.01, `read ${read}, shown ${truth}`);
        assert.ok((await panel(page).locator(".own-figures dd").first().innerText()).includes(String(Math.round(read))));
        await student.frames(page, 3);
        assert.deepEqual(await page.evaluate(() => window.shifts), []);
        assert.deepEqual(requests, []);
        assert.equal(await stored(page), kept);
        assert.deepEqual(await page.evaluate(() => window.constraints.map(({ audio }) => audio)), [false], "it asked for more than pictures");
      });
    });
  }

  test("the recording opens like any other, goes out as CSV and EDF+, and its raw colors as CSV", { timeout: 300_000 }, async () => {
    const film = fingertip({ bpm: 66 });
    await atCamera(film.file, {}, async (page) => {
      await panel(page).getByRole("button", { name: "15 s", exact: true }).click();
      await start(page);
      await state(page, "done");
      const [colors] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: said["own-colors"], exact: true }).click()]);
      const lines = readFileSync(await colors.path(), "utf8").trim().split("\n");
      assert.equal(lines[0], "t_s,red,green,blue");
      assert.ok(lines.length > 100, `${lines.length} lines`);
      await page.getByRole("button", { name: said["own-open"], exact: true }).click();
      await page.locator(".strip.is-measuring").waitFor();
      assert.equal(await page.evaluate(() => document.body.dataset.kind), "recording");
      for (const kind of ["CSV", "EDF+"]) {
        await page.locator(".measure-more > summary").click();
        const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: `Save recording as ${kind}`, exact: true }).click()]);
        assert.ok(readFileSync(await file.path()).length > 1000, kind);
        await page.locator(".measure-more > summary").click();
      }
    });
  });

  for (const [name, make] of [["a table top", tableTop], ["a finger that moves", movingFinger], ["a face-like picture", faceLike]]) {
    test(`${name} is refused: no heart rate, no recording, and words that say what is wrong`, { timeout: 300_000 }, async () => {
      await atCamera(make(), {}, async (page) => {
        await page.evaluate((name) => {
          window.told = [];
          const el = document.querySelector(".own-lens").closest(".own-two");
          new MutationObserver(() => window.told.push([el.dataset.bpm ?? null, el.dataset.state, el.querySelector(".own-quality").dataset.code ?? null])).observe(el, { subtree: true, attributes: true, childList: true, characterData: true });
          return name;
        }, name);
        await start(page);
        await page.waitForFunction(() => Number(document.querySelector(".own-lens").closest(".own-two").dataset.frames) > 450, null, { timeout: 120_000 });
        const told = await page.evaluate(() => window.told);
        assert.ok(told.length > 10);
        assert.deepEqual(told.filter(([bpm, at]) => bpm !== null || at === "recording"), [], "a heart rate was shown");
        const quality = await panel(page).locator(".own-quality").innerText();
        const code = await panel(page).locator(".own-quality").getAttribute("data-code");
        assert.equal(quality, said[`own-quality-${code}`]);
        assert.ok(["no_finger", "hold_still", "too_dark", "too_bright", "press_less"].includes(code), code);
        await stop(page);
        await state(page, "done");
        assert.ok((await panel(page).locator(".own-ended").innerText()).includes(said["own-ended_nothing"]));
        assert.equal(await tracksLive(page), 0);
      });
    });
  }
});

/** Presses Tab until the element has the focus; fails if it cannot be reached. */
async function tabTo(page, locator) {
  const what = await locator.elementHandle();
  for (let k = 0; k < 200; k += 1) {
    if (await page.evaluate((el) => document.activeElement === el, what)) return;
    await page.keyboard.press("Tab");
  }
  assert.fail(`the Tab key does not reach ${locator}`);
}

describe("by keys alone", { concurrency: 1 }, () => {
  test("the camera is started, the pulse recorded, opened, measured and checked", { timeout: 300_000 }, async () => {
    const film = fingertip({ bpm: 70 });
    await atCamera(film.file, { bare: true }, async (page) => {
      const act = async (name) => {
        await tabTo(page, page.getByRole("button", { name, exact: typeof name === "string" }).and(page.locator(":visible")).first());
        await page.keyboard.press("Enter");
      };
      const type = async (label, text) => {
        await tabTo(page, page.getByLabel(label, { exact: true }));
        await page.keyboard.press("Control+A");
        await page.keyboard.type(String(text));
      };
      await page.goto(server.url);
      await page.locator("#start .card").first().waitFor();
      await tabTo(page, page.locator(".start-pulse a"));
      await page.keyboard.press("Enter");
      await page.locator(".own-chosen").waitFor();
      await act(said["own-way_camera"]);
      await act(said["own-camera_start"]);
      await state(page, "recording");
      assert.ok(await page.evaluate(() => document.activeElement.closest(".own-two") !== null), "the focus is lost while it records");
      await state(page, "done");
      await act(said["own-open"]);
      await page.locator(".strip.is-measuring").waitFor();
      await tabTo(page, page.locator(".measure-more > summary"));
      await page.keyboard.press("Enter");
      const [download] = await Promise.all([page.waitForEvent("download"), act("Save recording as CSV")]);
      const [a, b, count] = student.windowBetween(student.peaksOf(await student.readRecording(download)), 15);
      await type("A (s)", a.toFixed(2));
      await page.keyboard.press("Enter");
      await type("B (s)", b.toFixed(2));
      await page.keyboard.press("Enter");
      const seconds = Number((await student.reading(page, "A to B")).replace(/ s$/, ""));
      const multiplier = (60 / seconds).toFixed(3);
      await type("Between A and B I count N =", count);
      await type("time T =", seconds);
      await type("60/T =", multiplier);
      await type("heart rate =", (count * multiplier).toFixed(1));
      await act(/^Check my reading/);
      const debrief = await student.readDebrief(page);
      assert.equal(debrief.firstOpen, null, debrief.text);
    });
  });
});

describe("a camera that fails", { concurrency: 1 }, () => {
  test("is denied: says so, and what else can be done", async () => {
    await atCamera("", { flags: ["--deny-permission-prompts"], scripts: [() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException("Permission denied", "NotAllowedError");
      };
    }] }, async (page) => {
      await start(page);
      await failsWith(page, "denied");
      assert.equal(await page.getByRole("link", { name: said["own-fail_tab"], exact: true }).count(), 0, "it is in its own tab already");
      assert.ok(await page.getByRole("button", { name: said["own-camera_start"], exact: true }).isVisible(), "there is no way to ask again");
    });
  });

  test("is missing", async () => {
    await atCamera(null, {}, async (page) => {
      await start(page);
      await failsWith(page, "missing");
    });
  });

  test("belongs to another program, or to a page that is not safe", async () => {
    await atCamera("", { scripts: [() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException("Could not start video source", "NotReadableError");
      };
    }] }, async (page) => {
      await start(page);
      await failsWith(page, "busy");
    });
    await atCamera("", { scripts: [() => Object.defineProperty(navigator, "mediaDevices", { value: undefined })] }, async (page) => {
      await start(page);
      await failsWith(page, "insecure");
    });
  });

  test("is taken away in the middle of a recording: what came before is kept and told", { timeout: 300_000 }, async () => {
    const film = fingertip({ bpm: 80 });
    await atCamera(film.file, {}, async (page) => {
      await start(page);
      await state(page, "recording");
      await panel(page).locator(".own-told").filter({ hasText: / (?:[89]|1\d) s of 30 s/ }).waitFor();
      await page.evaluate(() => {
        const [track] = window.streams.at(-1).getVideoTracks();
        track.stop();
        track.dispatchEvent(new Event("ended")); // what a browser sends when a camera is unplugged
      });
      await state(page, "done");
      assert.ok((await panel(page).locator(".own-ended").innerText()).includes(said["own-ended-taken"]));
      assert.ok(await page.getByRole("button", { name: said["own-open"], exact: true }).isVisible(), "what was recorded is lost");
      assert.equal(await tracksLive(page), 0);
    });
  });

  test("has a light that does not turn on: it is told, and the pulse is read without", { timeout: 300_000 }, async () => {
    const film = fingertip({ bpm: 72 });
    await atCamera(film.file, { scripts: [() => {
      MediaStreamTrack.prototype.getCapabilities = () => ({ torch: true });
      MediaStreamTrack.prototype.applyConstraints = async () => {
        throw new DOMException("setPhotoOptions failed", "UnknownError");
      };
    }] }, async (page) => {
      await start(page);
      await panel(page).getByText(said["own-light-failed"], { exact: true }).waitFor();
      await page.waitForFunction(() => document.querySelector(".own-two[data-bpm]"));
      await stop(page);
    });
  });

  test("has no light: the others are opened in turn, the first with one is used and lit, and each other one is let go", async () => {
    await atCamera("", { flags: ["--use-fake-device-for-media-stream=device-count=3"], scripts: [() => {
      window.set = [];
      MediaStreamTrack.prototype.getCapabilities = function () {
        return this.label.includes("2") ? { torch: true, exposureMode: ["manual", "continuous"] } : {};
      };
      MediaStreamTrack.prototype.applyConstraints = async function (constraints) {
        window.set.push([this.label, constraints.advanced]);
      };
    }] }, async (page) => {
      await start(page);
      await panel(page).getByText(said["own-light-on"], { exact: true }).waitFor();
      const seen = await page.evaluate(() => ({ labels: window.streams.map((stream) => stream.getVideoTracks()[0].label), live: window.streams.map((stream) => stream.getVideoTracks()[0].readyState), set: window.set }));
      assert.ok(seen.labels.length >= 2 && seen.labels.at(-1).includes("2"), JSON.stringify(seen));
      assert.deepEqual(seen.live.filter((one) => one === "live").length, 1, "two cameras are on");
      assert.equal(seen.live.at(-1), "live");
      assert.deepEqual(seen.set[0], [seen.labels.at(-1), [{ torch: true }]]);
      await stop(page);
      assert.equal(await tracksLive(page), 0);
    });
  });

  test("goes off when the screen is left, the page is out of sight, or another way is turned to", async () => {
    await atCamera("", {}, async (page) => {
      const on = async () => {
        await start(page);
        await state(page, "waiting");
        assert.equal(await tracksLive(page), 1);
      };
      await on();
      await page.evaluate(() => {
        Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
        document.dispatchEvent(new Event("visibilitychange"));
        delete document.visibilityState;
      });
      await state(page, "done");
      assert.ok((await panel(page).locator(".own-ended").innerText()).includes(said["own-ended-hidden"]));
      assert.equal(await tracksLive(page), 0);
      await on();
      await page.locator('.own-chosen .seg[data-key="touch"]').click();
      assert.equal(await tracksLive(page), 0);
      await page.locator('.own-chosen .seg[data-key="camera"]').click();
      await on();
      await page.getByRole("button", { name: "Back to the scenarios", exact: true }).click();
      await page.locator("#start .card").first().waitFor();
      assert.equal(await tracksLive(page), 0);
    });
  });

  test("is forbidden by the page around: it says so, and opens in its own tab", async () => {
    await atCamera("", { bare: true }, async (page, context) => {
      await page.route("**/course-site.html", (route) => route.fulfill({ contentType: "text/html", body: `<!doctype html><title>Course</title><iframe src="${server.url}#own" allow="camera 'none'" width="1000" height="800"></iframe>` }));
      await page.goto(`${server.url}course-site.html`);
      const frame = page.frameLocator("iframe");
      await frame.locator('.own-chosen .seg[data-key="camera"]').click();
      await frame.getByRole("button", { name: said["own-camera_start"], exact: true }).click();
      await frame.getByText(said["own-fail-policy"], { exact: true }).waitFor();
      const [tab] = await Promise.all([context.waitForEvent("page"), frame.getByRole("link", { name: said["own-fail_tab"], exact: true }).click()]);
      await tab.locator(".own-chosen").waitFor();
      assert.match(tab.url(), /#own$/);
      assert.equal(await tab.evaluate(() => window.top === window), true);
    });
  });
});
