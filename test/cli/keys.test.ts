import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { keyTable } from "../../src/batch-file/json-schema/key-table.js";
import { runFake } from "./fake-io.js";

const pathsOf = async (...args: readonly string[]): Promise<string[]> => {
  const { status, out, err } = await runFake(["keys", ...args, "--format", "json"]);
  expect([status, err]).toEqual([0, ""]);
  return JSON.parse(out).keys.map(({ path }: { path: string }) => path);
};

test("keys lists every key of the batch file, in every format", async () => {
  const all = keyTable().map(({ path }) => path);
  expect(await pathsOf()).toEqual(all);
  const csv = parse((await runFake(["keys", "--format", "csv"])).out, { columns: true }) as Record<
    string,
    string
  >[];
  expect(csv.map(({ key }) => key)).toEqual(all);
  expect(csv.find(({ key }) => key === "tanks.NAME.heaterEfficiency")).toEqual({
    key: "tanks.NAME.heaterEfficiency",
    meaning: "share of the heater's power that reaches the liquor",
    default: "90 %",
    example: "90 %",
    required: "no",
  });
  const { out } = await runFake(["keys"], { columns: 80 });
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  for (const path of all) expect(out).toContain(path.split(".").at(-1));
});

test("keys WORD lists the keys that have the word, in capitals or not", async () => {
  expect(await pathsOf("humidity")).toEqual(["room.humidity"]);
  expect(await pathsOf("HUMID")).toEqual(["room.humidity"]);
  expect(await pathsOf("ultrasound")).toEqual(["tanks.NAME.agitation", "tanks.NAME.least"]);
});

test("keys finds what a path of a batch leads to, and what is below it", async () => {
  expect(await pathsOf("tanks.six.cover")).toEqual(["tanks.NAME.cover"]);
  expect(await pathsOf("dyes.moss.mix")).toEqual(["dyes.MIX.mix", "dyes.MIX.mix.NAME"]);
  expect(await pathsOf("baths.0.start")).toEqual([
    "baths.ITEM.start",
    "baths.ITEM.start.volume",
    "baths.ITEM.start.coldVolume",
    "baths.ITEM.start.strength",
    "baths.ITEM.start.strength.NAME",
    "baths.ITEM.start.age",
    "baths.ITEM.start.area",
  ]);
});

test("keys refuses a word that no key has, with the nearest key", async () => {
  const near = await runFake(["keys", "dilutoin"]);
  expect([near.status, near.out]).toEqual([2, ""]);
  expect(near.err).toContain("did you mean dilution?");
  const far = await runFake(["keys", "xylophone"]);
  expect([far.status, far.err]).toEqual([2, expect.stringContaining("dipwright keys lists all of them")]);
  expect((await runFake(["keys", "--set", "batch=x"])).status).toBe(2);
});

test("examples/KEYS.md is the table of now; else: npm run keys", async () => {
  const kept = readFileSync(new URL("../../examples/KEYS.md", import.meta.url), "utf8");
  expect(kept).toBe((await runFake(["keys", "--format", "markdown"])).out);
});
