// What the build writes before sw.js: the page's version, and its files with a hash of each.

declare const BUILD: { version: string; files: Record<string, string> };
