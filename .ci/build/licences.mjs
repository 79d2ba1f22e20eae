import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dist } from "./places.mjs";

/** The folder of the package that a module belongs to; undefined for our own and the bundler's. */
const folderOf = (id) => /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+/.exec(id)?.[0];

/** The standard words of a licence, for a package that names it and ships no text. */
const standard = {
  ISC: (author) => `ISC License

Copyright (c) ${author}

Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby granted,
provided that the above copyright notice and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH REGARD TO THIS SOFTWARE INCLUDING ALL
IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS OF USE, DATA OR PROFITS, WHETHER IN AN
ACTION OF CONTRACT, NEGLIGENCE OR OTHER TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
THIS SOFTWARE.`,
};

function entryOf(folder) {
  const { name, version, license, author } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  const file = readdirSync(folder).find((file) => /^licen[cs]e(\.|$)/i.test(file));
  const text =
    file === undefined ? standard[license]?.(author) : readFileSync(`${folder}/${file}`, "utf8").trim();
  if (text === undefined) throw new Error(`${name} ${version} ships no licence text`);
  return `${name} ${version} (${license})\n\n${text}\n`;
}

/** Writes dist/LICENSES.txt: name, version and licence of every package that one of these modules is from. */
export function writeLicences(modules) {
  const folders = [...new Set(modules.map(folderOf))].filter((folder) => folder !== undefined).sort();
  writeFileSync(
    `${dist}LICENSES.txt`,
    `dipwright contains code of these packages.\n\n${folders.map(entryOf).join(`\n${"-".repeat(80)}\n\n`)}`,
  );
}
