import { existsSync, readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { expect, test } from "vitest";
import { commands } from "../src/cli/commands.js";
import { runFake } from "./cli/fake-io.js";
import { folderIo } from "./tools/folder-io.js";

const root = new URL("../", import.meta.url).pathname;
const readme = readFileSync(`${root}README.md`, "utf8");
const documents = {
  "README.md": readme,
  "examples/README.md": readFileSync(`${root}examples/README.md`, "utf8"),
};

/** Words of a shell line; single quotes hold spaces. */
const words = (line: string): string[] =>
  (line.match(/(?:[^\s']|'[^']*')+/g) ?? []).map((word) => word.replace(/'/g, ""));

const linesOf = (text: string): string[] =>
  [...text.matchAll(/```sh\n([\s\S]*?)```/g)]
    .flatMap((block) => block[1]!.trim().split("\n"))
    .filter((line) => line.startsWith("dipwright "));

for (const [name, text] of Object.entries(documents))
  test(`every command line of ${name} runs as written, beside the examples`, async () => {
    const lines = linesOf(text);
    expect(lines.length).toBeGreaterThan(10);
    const files = new Map<string, string>();
    for (const line of lines) {
      const result = await runFake(words(line).slice(1), folderIo(`${root}examples`, files));
      expect([line, result.status, result.err.match(/error.*/)?.[0]]).toEqual([line, 0, undefined]);
      for (const [path, written] of result.files) files.set(path, written);
    }
  });

test("the README has at most 200 lines, and its run sheet is the one that plan prints", async () => {
  expect(readme.trimEnd().split("\n").length).toBeLessThanOrEqual(200);
  const [, sheet] = /```text\n([\s\S]*?)```/.exec(readme)!;
  const { out } = await runFake(["plan", "restock.yaml"], { ...folderIo(`${root}examples`), columns: 80 });
  expect(out).toContain(sheet!.trimEnd());
});

test("every file that a document names is there", () => {
  for (const [name, text] of Object.entries({
    ...documents,
    "src/core/README.md": readFileSync(`${root}src/core/README.md`, "utf8"),
    "DEVELOPERS.md": readFileSync(`${root}DEVELOPERS.md`, "utf8"),
  }))
    for (const [, path] of text.matchAll(/\]\(([^)#:]+)\)/g))
      expect([name, path, existsSync(resolve(root, dirname(name), path!))]).toEqual([name, path, true]);
});

test("the README's table of commands names every command there is", () => {
  for (const { name } of commands) expect(readme).toContain(`\`${name}`);
});

test("the three lines of a part in the README are all that a part needs", async () => {
  const [lines, ...others] = [...readme.matchAll(/```yaml\n(parts:\n[\s\S]*?)```/g)].map(
    (block) => block[1]!,
  );
  expect([lines!.trim().split("\n").length, others]).toEqual([3, []]);
  const minimal = readFileSync(`${root}examples/minimal.yaml`, "utf8");
  const batch = minimal.replace(/parts:\n.*\n/, lines!).replace("part: clip", "part: tray");
  expect(batch).not.toContain("clip");
  const files = new Map([["batch.yaml", batch]]);
  const { status, out, err } = await runFake(["plan", "batch.yaml"], folderIo(`${root}examples`, files));
  expect([status, err]).toEqual([0, ""]);
  expect(out).toContain("tray brick-light");
});
