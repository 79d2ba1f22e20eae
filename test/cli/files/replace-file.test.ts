import { spawnSync } from "node:child_process";
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { replaceFile } from "../../../src/cli/files/replace-file.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

test("replaceFile leaves the old text until the new one is whole, then puts it in place", async () => {
  writeFileSync(at("a.csv"), "old");
  chmodSync(at("a.csv"), 0o640);
  const file = await replaceFile(at("a.csv"));
  await file.write("new ");
  await file.write("text");
  expect(readFileSync(at("a.csv"), "utf8")).toBe("old");
  await file.commit();
  expect(readFileSync(at("a.csv"), "utf8")).toBe("new text");
  expect(statSync(at("a.csv")).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder)).toEqual(["a.csv"]);
});

test("replaceFile leaves no part of a text that is given up", async () => {
  writeFileSync(at("a.csv"), "old");
  for (const name of ["a.csv", "b.csv"]) {
    const file = await replaceFile(at(name));
    await file.write("half");
    await file.discard();
  }
  expect(readdirSync(folder)).toEqual(["a.csv"]);
  expect(readFileSync(at("a.csv"), "utf8")).toBe("old");
});

test("replaceFile follows a link", async () => {
  writeFileSync(at("real.csv"), "old");
  symlinkSync(at("real.csv"), at("link.csv"));
  const file = await replaceFile(at("link.csv"));
  await file.write("new");
  await file.commit();
  expect(readFileSync(at("real.csv"), "utf8")).toBe("new");
  expect(readdirSync(folder)).toEqual(["link.csv", "real.csv"]);
});

test("replaceFile makes the file that a link names and that is not there, and keeps the link", async () => {
  mkdirSync(at("real"));
  symlinkSync(join("real", "a.csv"), at("link.csv"));
  symlinkSync("link.csv", at("other.csv"));
  const file = await replaceFile(at("other.csv"));
  await file.write("new");
  await file.commit();
  expect(readFileSync(at("real/a.csv"), "utf8")).toBe("new");
  expect(readlinkSync(at("other.csv"))).toBe("link.csv");
  expect(readlinkSync(at("link.csv"))).toBe(join("real", "a.csv"));
  expect(readdirSync(at("real"))).toEqual(["a.csv"]);
});

test("replaceFile refuses links that lead in a circle", async () => {
  symlinkSync("b.csv", at("a.csv"));
  symlinkSync("a.csv", at("b.csv"));
  await expect(replaceFile(at("a.csv"))).rejects.toMatchObject({ code: "ELOOP" });
  expect(readdirSync(folder)).toEqual(["a.csv", "b.csv"]);
});

test.runIf(process.getuid?.() === 0)("replaceFile keeps the owner of the old file", async () => {
  writeFileSync(at("a.csv"), "old");
  chownSync(at("a.csv"), 1234, 4321);
  const file = await replaceFile(at("a.csv"));
  await file.write("new");
  await file.commit();
  expect(statSync(at("a.csv"))).toMatchObject({ uid: 1234, gid: 4321 });
});

test("replaceFile refuses a folder that is not there, and a folder in the file's place", async () => {
  await expect(replaceFile(join(folder, "none", "a.csv"))).rejects.toMatchObject({ code: "ENOENT" });
  await expect(replaceFile(folder)).rejects.toMatchObject({ code: "EISDIR" });
});

test.skipIf(!existsSync("/dev/null"))("replaceFile writes to a device and does not replace it", async () => {
  const file = await replaceFile("/dev/null");
  await file.write("text");
  await file.commit();
  expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
});

test("replaceFile clears what killed runs left beside the file an hour ago, and nothing else", async () => {
  const ended = spawnSync(process.execPath, ["--version"]).pid;
  const left = [`.a.csv.${ended}.part`, `.a.csv.${process.ppid}.part`, `.b.csv.${ended}.part`];
  for (const name of left) {
    writeFileSync(at(name), "torn");
    utimesSync(at(name), new Date(0), new Date(0));
  }
  const young = `.a.csv.${ended}0.part`;
  writeFileSync(at(young), "torn");
  const file = await replaceFile(at("a.csv"));
  await file.commit();
  expect(readdirSync(folder).sort()).toEqual(["a.csv", ...left.slice(1), young].sort());
});
