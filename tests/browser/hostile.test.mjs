// What comes from others stays text: no HTML, no script, no dialog, nothing asked of another origin; and the page stays usable.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { deflateRawSync } from "node:zlib";
import { host, root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };

/** A thousand hostile strings: markup, handlers, addresses, quotes and control characters, wrapped in each other. */
function hostile() {
  const calls = ["hit()", "globalThis.hit()", "document.title='hit'", "alert(1)", "fetch('https://example.invalid/')"];
  const tags = calls.flatMap((call) => [
    `<script>${call}</script>`, `<img src=x onerror="${call}">`, `<svg onload="${call}"><circle r=9></svg>`, `<iframe srcdoc="<script>${call}</script>"></iframe>`,
    `<a href="javascript:${call}">go</a>`, `<style>@import 'javascript:${call}';</style>`, `<details open ontoggle="${call}"><b>x</b></details>`, `<math><mtext><img src=x onerror=${call}></mtext></math>`,
    `javascript:${call}`, `data:text/html,<script>${call}</script>`, `<template><script>${call}</script></template>`, `<form action="javascript:${call}"><button>x</button></form>`, `<link rel=stylesheet href="javascript:${call}">`,
  ]);
  const wraps = [(s) => s, (s) => `"${s}`, (s) => `'>${s}`, (s) => `</title>${s}`, (s) => `-->${s}<!--`, (s) => `]]>${s}`, (s) => `</textarea></select>${s}`, (s) => `{${s}}`, (s) => `\${${s}}`, (s) => `&lt;${s}&gt;`,
    (s) => `\u202e${s}`, (s) => `${s}\u0000`, (s) => `%3C${encodeURIComponent(s)}`, (s) => s.toUpperCase(), (s) => `../../${s}`, (s) => `=HYPERLINK("${s}")`];
  return wraps.flatMap((wrap) => tags.map(wrap));
}
const all = hostile();

/** Watches a page: scripts that ran, dialogs, requests elsewhere, elements that only such a string could have made. */
async function guard(page, url) {
  const found = [];
  const origin = new URL(url).origin;
  await page.exposeFunction("hit", () => found.push("a script ran"));
  page.on("dialog", (dialog) => {
    found.push(`dialog: ${dialog.message()}`);
    dialog.dismiss().catch(() => {});
  });
  page.on("request", (request) => {
    const asked = request.url();
    if (!asked.startsWith(origin) && !/^(data|blob|about):/.test(asked)) found.push(`asked for ${asked}`);
  });
  return {
    found,
    async clean(what) {
      const made = await page.evaluate(() => {
        // In HTML only: an SVG that is drawn by the page has titles of its own.
        const bad = [...document.querySelectorAll("iframe, object, embed, form[action], img[onerror], [onload], [onerror], [ontoggle], a[href^='javascript:'], math, body style, body script, body link, body template, base")];
        return bad.map((el) => el.outerHTML.slice(0, 120));
      });
      assert.deepEqual(made, [], what);
      assert.notEqual(await page.title(), "hit", what);
      assert.deepEqual(found, [], what);
    },
  };
}

const scenario = readFileSync(path.join(root, "scenarios/02-hum-on-the-trace.toml"), "utf8");
const quoted = (text) => JSON.stringify(text).replace(/[\u007f-\u009f]/g, "");

/** A link with hostile texts in the scenario. */
function linkWith(url, { title, aim, brief, opening }) {
  const own = scenario.replace(/^title = .*$/m, `title = ${quoted(title)}`).replace(/^aim = .*$/m, `aim = ${quoted(aim)}`).replace(/^brief = ("""[\s\S]*?"""|.*)$/m, `brief = ${quoted(brief)}`);
  const handed = opening === undefined ? own : `${own}\n[assignment]\nkey = ${quoted("k" + opening.slice(0, 20).replace(/[^\w]/g, ""))}\nseeds = "each"\nopening = ${quoted(opening)}\nclosing = ${quoted(opening)}\n`;
  return `${url}#a=${deflateRawSync(Buffer.from(handed)).toString("base64url")}`;
}
/** What a scenario takes: no control characters in the line, and not too long. */
const fit = (text, most) => [...text.replace(/\u0000/g, "\ufffd")].slice(0, most).join("");

describe("what comes from others", { concurrency: 1 }, () => {
  test("there are a thousand of them, all different", () => {
    assert.ok(new Set(all).size >= 1000, `${new Set(all).size}`);
  });

  test("the policy of the header and of the page are one, and strict; no script stands in the page", async () => {
    await withPage(wide, async ({ page, url }) => {
      const answer = await page.goto(url);
      const parts = (text) => text.split(";").map((part) => part.trim()).sort();
      const header = parts(answer.headers()["content-security-policy"]);
      const meta = parts(await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute("content"));
      // A <meta> cannot say who may frame the page: itself alone, for the preview.
      assert.deepEqual(header.filter((part) => part !== "frame-ancestors 'self'"), meta);
      assert.ok(header.includes("frame-ancestors 'self'") && meta.includes("default-src 'none'"));
      assert.ok(!/unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')|\*|https?:|data:|blob:/.test(meta.join(";")), meta.join("; "));
      const inline = await page.evaluate(() => [...document.querySelectorAll("script")].filter((el) => !el.src || el.textContent.trim()).length);
      assert.equal(inline, 0);
      const html = await (await fetch(url)).text();
      assert.ok(!/\son\w+\s*=|\sstyle\s*=|javascript:/i.test(html), "a handler or a style in the page");
    });
  });

  test("a whole rehearsal asks nothing of another origin", async () => {
    await withPage(wide, async ({ page, url }) => {
      const watched = await guard(page, url);
      const asked = [];
      page.on("request", (request) => asked.push(new URL(request.url())));
      await page.goto(url);
      await student.openScenario(page, url, "hum-on-the-trace", 3);
      await student.record(page, 6);
      await student.putCursors(page, 0.5, 5.5);
      await student.fillSheet(page, { count: 6, seconds: 5, multiplier: 12, rate: 72 });
      await student.check(page);
      for (const [side, there] of [["#faults", ".fault-card"], ["#words", "#read dt"], ["#skills", ".skill"], ["#notebook", "#notebook h1"], ["#assign", "#assign .qr svg"], ["#class", ".intake"]]) {
        await page.goto(`${url}${side}`);
        await page.locator(there).first().waitFor();
      }
      await watched.clean("a rehearsal");
      assert.ok(asked.length > 20, "hardly anything was asked for");
      assert.deepEqual([...new Set(asked.map((one) => one.origin).filter((origin) => origin !== "null"))], [new URL(url).origin]);
    });
  });

  test("as a fragment of the address", async () => {
    await withPage(wide, async ({ page, url }) => {
      const watched = await guard(page, url);
      await page.goto(url);
      await page.locator("#start .card").first().waitFor();
      // The same page follows every change of its address.
      for (const form of ["", "s=", "a=", "s=hum-on-the-trace&seed=", "watch=", "report=", "words=", "faults="]) {
        await page.evaluate(async ([list, before]) => {
          for (const text of list) {
            const followed = new Promise((done) => addEventListener("hashchange", done, { once: true }));
            location.hash = before + encodeURIComponent(text);
            await followed;
            await new Promise((done) => { // whoever follows it has had a turn
              const { port1, port2 } = new MessageChannel();
              port1.onmessage = done;
              port2.postMessage(0);
            });
            document.getElementById("ask").close?.();
          }
        }, [all.filter((_, k) => k % 8 === form.length % 8), form]);
        await page.waitForLoadState("networkidle");
        await student.frames(page, 10);
        await watched.clean(`#${form}`);
      }
      await student.openScenario(page, url, "hum-on-the-trace", 3);
    });
  });

  test("as the texts of a scenario in a link, and as a student's name", async () => {
    await withPage(wide, async ({ page, url }) => {
      const watched = await guard(page, url);
      const seen = [];
      for (let k = 0; k + 3 < all.length; k += 104) {
        const [title, aim, brief, opening] = [fit(all[k], 80), fit(all[k + 1], 400), fit(all[k + 2], 2000), fit(all[k + 3], 2000)];
        await page.goto("about:blank");
        await page.goto(linkWith(url, { title, aim, brief, opening }));
        const code = page.getByLabel(/student ID/i);
        await code.waitFor();
        const heading = await page.locator("#ask h2").innerText();
        assert.equal(heading.replace(/\s+/g, " ").trim(), title.replace(/\s+/g, " ").trim());
        await watched.clean(title);
        // All of them as names: they are kept, and stand in the field again.
        await page.evaluate(async ([list]) => {
          const field = document.querySelector("#ask input");
          for (const text of list) {
            field.value = text;
            field.dispatchEvent(new Event("input", { bubbles: true }));
          }
        }, [all]);
        await code.fill(all[k]);
        await page.locator("#ask .btn-strong, #ask .btn").first().click();
        await page.locator(".plug").first().waitFor({ state: "attached" });
        await watched.clean(aim);
        seen.push(await page.locator("#brief h2").innerText());
      }
      assert.ok(seen.length >= 10, `${seen.length} links`);
    });
  });

  test("as the name of a file, its columns and its notes", async () => {
    await withPage({ ...wide, acceptDownloads: true }, async ({ page, url }) => {
      const watched = await guard(page, url);
      await page.goto(url);
      await page.locator("#start .card").first().waitFor();
      const lines = Array.from({ length: 1200 }, (_, k) => `${(k / 100).toFixed(2)},${Math.sin(k / 12).toFixed(3)}`);
      const line = (text) => text.replace(/[\r\n\u0000]/g, " ");
      const notes = all.map((text, k) => `# note,${((k * 0.011) % 11.9).toFixed(3)},,${line(text)}`);
      for (const name of all.filter((_, k) => k % 130 === 0)) {
        const column = `"${line(name).replaceAll('"', '""')}"`;
        const text = `t_s,${column}\n${lines.join("\n")}\n${notes.join("\n")}\n`;
        await student.openFile(page, { name: `${line(name).replace(/[/\\]/g, "_").slice(0, 120)}.csv`, mimeType: "text/csv", buffer: Buffer.from(text) });
        await page.locator(".strip.is-measuring").waitFor();
        await watched.clean(name);
      }
      // A file that is refused is told by its name.
      for (const name of all.filter((_, k) => k % 130 === 1)) {
        await student.openFile(page, { name: `${line(name).replace(/[/\\]/g, "_").slice(0, 120)}.csv`, mimeType: "text/csv", buffer: Buffer.from("nothing here\n") });
        await page.locator("#calm:not([hidden])").waitFor();
        await watched.clean(name);
      }
      await page.locator(".field").waitFor();
    });
  });

  test("as the names in what a class hands in", async () => {
    await withPage(wide, async ({ page, url }) => {
      const watched = await guard(page, url);
      const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-hostile-"));
      await page.goto(`${url}#class`);
      await page.getByRole("button", { name: "Choose files" }).waitFor();
      const files = all.filter((_, k) => k % 25 === 0).map((name, k) => {
        const file = path.join(folder, `${k}.dicrotic-result.json`);
        // Not the right checksum: the name is shown with a doubt, or the file is refused; both must be text.
        writeFileSync(file, JSON.stringify({ format: k % 2 ? "dicrotic-result" : name, version: 2, program: name, about: { student: name, try: 1, begun_s: 0, ended_s: 0 }, scenario_id: name, scenario_sha256: name, scenario: scenario, seed: "1", samples: 10, log: [], answers: {}, named: [], verdict: { tries: 0, passed: false, first_wrong: name, codes: [name], misreading: name }, checksum: name }));
        return file;
      });
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), student.pressButton(page, "Choose files")]);
      await chooser.setFiles(files);
      await page.locator('.intake[data-busy=""] .quiet', { hasText: /\d/ }).waitFor();
      await watched.clean("a class");
      assert.ok((await page.locator("#class").innerText()).includes("<"), "no name is shown as it was written");
    });
  });

  test("as arguments of the command line: an error in words, nothing else", () => {
    for (const text of all.filter((_, k) => k % 200 === 3)) {
      try {
        execFileSync(host, ["check", text.replaceAll("\u0000", "")], { stdio: "pipe" });
        assert.fail("a file of that name?");
      } catch (error) {
        assert.ok(error.status > 0 && !/panicked/.test(String(error.stderr)), String(error.stderr));
      }
    }
  });
});
