import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { createFiles } from "../../../src/cli/files/create-files.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const at = (...names: string[]): string => join(folder, ...names);
const two = new Map([
  ["a.txt", "A"],
  ["b.txt", "B"],
]);

test("createFiles makes a folder that is not there and all files in it", async () => {
  expect(await createFiles(at("x", "y"), two)).toEqual([]);
  expect(readFileSync(at("x", "y", "a.txt"), "utf8") + readFileSync(at("x", "y", "b.txt"), "utf8")).toBe(
    "AB",
  );
});

test("createFiles writes into a folder that holds other files", async () => {
  writeFileSync(at("mine.txt"), "mine");
  expect(await createFiles(folder, two)).toEqual([]);
  expect(readdirSync(folder)).toEqual(["a.txt", "b.txt", "mine.txt"]);
});

test("createFiles touches nothing where one of the files is already there", async () => {
  writeFileSync(at("b.txt"), "mine");
  const faults = await createFiles(folder, two);
  expect(faults.map(({ code, message }) => [code, message])).toEqual([
    ["exists", `${at("b.txt")} is already there and stays as it is`],
  ]);
  expect(readdirSync(folder)).toEqual(["b.txt"]);
  expect(readFileSync(at("b.txt"), "utf8")).toBe("mine");
});

test("createFiles takes back what it wrote where a later file cannot be written", async () => {
  const faults = await createFiles(
    at("new"),
    new Map([
      ["a.txt", "A"],
      [join("none", "b.txt"), "B"],
    ]),
  );
  expect(faults.map(({ code }) => code)).toEqual(["write"]);
  expect(existsSync(at("new"))).toBe(false);
});

test("createFiles says that a file has the name of the folder", async () => {
  writeFileSync(at("file"), "mine");
  const [fault] = await createFiles(at("file"), two);
  expect(fault?.message).toMatch(/was not written/);
  expect(readFileSync(at("file"), "utf8")).toBe("mine");
});

test("createFiles says so where a file has the name of a folder further up, and makes nothing", async () => {
  writeFileSync(at("file"), "mine");
  const [fault] = await createFiles(at("file", "x", "y"), two);
  expect(fault?.message).toBe(
    `${at("file", "x", "y")} was not written: a part of its path is a file, not a folder`,
  );
  expect(readdirSync(folder)).toEqual(["file"]);
});

test("createFiles refuses a name that is too long and a link that leads nowhere, and leaves no folder", async () => {
  const [long] = await createFiles(at("a", "b".repeat(300)), two);
  expect(long?.message).toMatch(/the name is too long$/);
  symlinkSync(at("nowhere"), at("link"));
  const [link] = await createFiles(at("link"), two);
  expect(link?.message).toMatch(/was not written/);
  expect(readdirSync(folder)).toEqual(["link"]);
});

test.runIf(existsSync("/proc/self"))(
  "createFiles gives up at once where the file system refuses any new folder",
  async () => {
    for (const path of ["/proc/none", "/proc/none/deeper"]) {
      const [fault] = await createFiles(path, two);
      expect(fault?.message).toMatch(`${path} was not written: `);
    }
  },
  1000,
);
