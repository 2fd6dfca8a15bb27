// The page's words against the page's code: none missing, none left over.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { test } from "node:test";
import { root, words } from "./lib.mjs";

const www = path.join(root, "www");
const files = readdirSync(www, { recursive: true }).filter((name) => /\.(js|html)$/.test(name)).map((name) => path.join(www, name));
const code = files.map((name) => readFileSync(name, "utf8")).join("\n");
const bundles = readdirSync(path.join(www, "texts/en/later")).map((name) => path.basename(name, ".ftl"));
const all = Object.assign({}, await words(), ...(await Promise.all(bundles.map(words))));

const escape = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

test("every word that the code names is there", () => {
  const named = [...code.matchAll(/\b(?:t|has)\("([^"]+)"/g), ...code.matchAll(/data-t(?:-label)?="([^"]+)"/g)].map((found) => found[1]);
  assert.ok(named.length > 150, `${named.length}`);
  assert.deepEqual([...new Set(named)].filter((key) => !(key in all)), []);
});

test("every word that is there is named by the code", () => {
  const literals = new Set([...code.matchAll(/["'`=]([a-z][\w-]*(?:\.\w+)?)["'`]/g)].map((found) => found[1]));
  // `socket-${id}` stands for every key of that form; a hole never spans the dot of an attribute.
  const forms = [...new Set([...code.matchAll(/`([a-z][\w-]*\$\{[^`]*)`/g)].map((found) => found[1]))]
    .map((text) => text.replace(/\$\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\}/g, "\u0000"))
    .filter((text) => /^[a-z][\w-]*[-_]\u0000[\w.\u0000-]*$/.test(text))
    .map((text) => new RegExp(`^${text.split("\u0000").map(escape).join("[\\w-]+")}$`));
  assert.ok(forms.length > 20, `${forms.length}`);
  const stem = (key) => key.split(".")[0];
  const used = (key) => literals.has(key) || forms.some((form) => form.test(key));
  const coded = [...code.matchAll(/coded\("([\w-]+)"/g)].map((found) => `${found[1]}-`);
  coded.push(...[...code.matchAll(/keysOf\("([\w-]+-)"\)/g)].map((found) => found[1])); // every key that begins so
  assert.deepEqual(Object.keys(all).filter((key) => !used(key) && !used(stem(key)) && !coded.some((prefix) => key.startsWith(prefix))), []);
});
