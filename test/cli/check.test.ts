import { expect, test } from "vitest";
import { starter } from "../../src/cli/new/starter.js";
import { runFake } from "./fake-io.js";

const files = (contents: Readonly<Record<string, string>>) => ({
  readFile: async (path: string) => {
    const text = contents[path];
    if (text === undefined) throw Object.assign(new Error(path), { code: "ENOENT" });
    return new TextEncoder().encode(text);
  },
});
const bad = starter.replace("heater: 500 W", "heatr: 500 W").replace("volume: 6 L", "volume: 6");

test("check returns 0 and counts what a sound file holds", async () => {
  const { status, out, err } = await runFake(["check", "a.yaml"], files({ "a.yaml": starter }));
  expect([status, out, err]).toEqual([0, "- a.yaml: 1 bath, 2 orders: nothing is wrong\n", ""]);
});

test("check returns 2, names every fault with its place on stderr and writes nothing to stdout", async () => {
  const { status, out, err } = await runFake(["check", "a.yaml"], files({ "a.yaml": bad }));
  expect([status, out]).toEqual([2, ""]);
  const line = (text: string): number => bad.split("\n").findIndex((found) => found.includes(text)) + 1;
  expect(err).toContain(`a.yaml:${line("volume: 6")}:13\nerror[unit-missing]: `);
  expect(err).toContain(`a.yaml:${line("heatr")}:5\nerror[unknown-key]: `);
  expect(err).toContain("did you mean heater?");
  expect(err).toMatch(/\n\n2 errors\n$/);
});

test("check gives the faults of all files as json and csv on stdout, with status 2", async () => {
  const both = files({ "a.yaml": starter, "b.yaml": bad });
  const asJson = await runFake(["check", "a.yaml", "b.yaml", "--format", "json"], both);
  expect([asJson.status, asJson.err]).toEqual([2, ""]);
  const { schema, files: told } = JSON.parse(asJson.out);
  expect(schema).toBe("dipwright/check@1");
  expect(
    told.map((file: { name: string; good: boolean; diagnostics: unknown[] }) => [
      file.name,
      file.good,
      file.diagnostics.length,
    ]),
  ).toEqual([
    ["a.yaml", true, 0],
    ["b.yaml", false, 2],
  ]);
  const asCsv = await runFake(["check", "a.yaml", "b.yaml", "--format", "csv"], both);
  expect(asCsv.status).toBe(2);
  expect(asCsv.out.split("\r\n").map((row) => row.split(",").slice(0, 5).join(","))).toEqual([
    "file,line,column,severity,code",
    expect.stringMatching(/^b\.yaml,\d+,13,error,unit-missing$/),
    expect.stringMatching(/^b\.yaml,\d+,5,error,unknown-key$/),
    "",
  ]);
});

test("check reads stdin as -, once only", async () => {
  const stdin = { readStdin: async () => new TextEncoder().encode(starter) };
  expect((await runFake(["check", "-"], stdin)).status).toBe(0);
  const twice = await runFake(["check", "-", "-"], stdin);
  expect([twice.status, twice.err]).toEqual([2, expect.stringContaining("stdin can be read once only")]);
});

test("check follows includes and --set, and says what cannot be read", async () => {
  const [head = "", tail = ""] = starter.split("\ntanks:\n");
  const parted = files({ "w/a.yaml": `${head}\ninclude: [tanks.yaml]\n`, "w/tanks.yaml": `tanks:\n${tail}` });
  expect((await runFake(["check", "w/a.yaml"], parted)).status).toBe(0);
  const set = await runFake(["check", "w/a.yaml", "--set", "tanks.small.heater=5 L"], parted);
  expect([set.status, set.err]).toEqual([2, expect.stringContaining("--set")]);
  const none = await runFake(["check", "none.yaml"], parted);
  expect([none.status, none.err]).toEqual([
    2,
    "error[read]: none.yaml cannot be read: there is no such file\n",
  ]);
});
