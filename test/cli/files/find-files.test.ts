import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { findFiles } from "../../../src/cli/files/find-files.js";

let folder = "";
const at = (...names: string[]): string => join(folder, ...names);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
  for (const name of ["day/deep", "day/.hidden", "other"]) mkdirSync(at(name), { recursive: true });
  for (const name of ["day/b.yaml", "day/LOUD.YAML", "day/deep/c.JSON", "day/.hidden/x.yaml", "day/note.txt"])
    writeFileSync(at(name), "");
  for (const name of ["other/far.yaml", "other/near.yml"]) writeFileSync(at(name), "");
  symlinkSync(at("other", "far.yaml"), at("day", "link.yaml"));
  symlinkSync(at("other"), at("day", "linked"));
  symlinkSync(at("day"), at("day", "round"));
  symlinkSync(at("nowhere"), at("day", "dead.yaml"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("findFiles finds each file of a folder once: in capitals, through links, in the order of code units", async () => {
  const found = ["LOUD.YAML", "b.yaml", "deep/c.JSON", "link.yaml", "linked/near.yml"].map((name) =>
    join("day", name),
  );
  expect(await findFiles("day", folder)).toEqual(found);
  expect(await findFiles(at("day"), "/")).toEqual(found.map((name) => at(name)));
});

test("findFiles takes of a pattern what it matches, each file once", async () => {
  expect(await findFiles("day/**/*.y*ml", folder)).toEqual([
    "day/b.yaml",
    "day/link.yaml",
    "day/linked/near.yml",
  ]);
  expect(await findFiles("day/*", folder)).toEqual([
    "day/LOUD.YAML",
    "day/b.yaml",
    "day/link.yaml",
    "day/note.txt",
  ]);
  expect(await findFiles("none/*.yaml", folder)).toEqual([]);
});

test("findFiles leaves alone what is one file, or nothing", async () => {
  expect(await findFiles("day/b.yaml", folder)).toBeUndefined();
  expect(await findFiles("day/link.yaml", folder)).toBeUndefined();
  expect(await findFiles("nothing.yaml", folder)).toBeUndefined();
});
