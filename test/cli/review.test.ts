import { expect, test } from "vitest";
import { ciede2000 } from "../../src/core/colour/difference/ciede2000.js";
import { columnNames } from "../../src/log/row/columns.js";
import { asCsv } from "../log/review/as-csv.js";
import { drawnTruth, seeded, work, workshopBatch } from "../log/review/workshop.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;

async function logOf(): Promise<string> {
  const batch = await workshopBatch();
  const random = seeded(4);
  const truth = { ...drawnTruth(random, batch), uptakePerDm2: 0.3 };
  const lots = [
    { from: 0, name: "P-16", shift: [0, 0, 0] as const },
    { from: 22, name: "P-17", shift: [0, 0, 2.2] as const },
  ];
  return asCsv(work(batch, truth, random, { loads: 40, lots }).rows);
}
const log = await logOf();
const files = new Map([["baths.csv", log]]);
const review = (...args: readonly string[]) =>
  runFake(["review", "restock.yaml", "--log", "baths.csv", ...args], folderIo(examples, files));

test("review has the keys that scripts rely on", async () => {
  const { status, out, err } = await review("--format", "json");
  expect([status, err]).toEqual([0, ""]);
  const { schema, baths, estimates, lots, paste } = JSON.parse(out);
  expect(schema).toBe("dipwright/review@1");
  expect(baths[0]).toMatchObject({ bath: "six", loads: 40, goodShare: null });
  expect(baths[0].points).toHaveLength(40);
  expect(Object.keys(baths[0].points[0])).toEqual(
    expect.arrayContaining([
      "time",
      "shade",
      "deltaE00",
      "deltaL",
      "individualsLimits",
      "ewma",
      "ewmaLimits",
      "out",
    ]),
  );
  for (const figure of [
    "timeFactor",
    "uptakeMlPerDm2",
    "dragOutMlPerDm2",
    "strengthExponent",
    "activationEnergyKJPerMol",
  ])
    expect(estimates.brick[figure]).toEqual({
      value: expect.any(Number),
      standardError: expect.any(Number),
      told: expect.any(Boolean),
      loadsToHalve: expect.any(Number),
      ...(figure === "strengthExponent" ? { withUptake: expect.any(Number) } : {}),
    });
  expect(paste).toContain(
    `strengthExponent: ${Number(estimates.brick.strengthExponent.withUptake.toPrecision(3))} # goes with this uptake`,
  );
  expect(lots).toEqual([
    expect.objectContaining({ lot: "P-17", kind: "powder", dye: "brick", loads: 18, named: true }),
  ]);
  expect(paste).toMatch(/^dyes:\n {2}brick:\n {4}timeFactor: 0\.8/);
});

test("review says what to do, what to paste, and draws", async () => {
  const { out } = await review();
  expect(out).toMatch(/powder lot P-17 is \d\.\d yellower in brick/);
  expect(out).toContain("timeFactor: 0.8");
  expect(out).toContain("six: lightness against the shade, load by load");
  expect(out.replace(/\s+/g, " ")).toContain("the log does not show it well enough yet");
  expect((await review("--format", "svg")).out).toContain("<svg");
  const csv = (await review("--format", "csv")).out.trim().split(/\r?\n/);
  expect(csv).toHaveLength(41);
  expect(csv[0]).toBe("bath,time,shade,delta_E00,delta_L,delta_C,delta_H,ewma,out");
});

test("what is pasted is read by a plan", async () => {
  const { paste } = JSON.parse((await review("--format", "json")).out);
  const set = [...paste.matchAll(/^ {4}(\w+): ([^#\n]*\S)/gm)].flatMap(([, key, value]) => [
    "--set",
    `dyes.brick.${key}=${value}`,
  ]);
  expect(set.length).toBeGreaterThan(2);
  const { status, out } = await runFake(["plan", "restock.yaml", ...set], folderIo(examples));
  expect(status).toBe(0);
  expect(out).toMatch(/Times of brick x 0\.8\d*, from the log/);
});

test("--lot and --part list where parts came from", async () => {
  const { out } = await review("--lot", "P-17", "--format", "json");
  const { loads } = JSON.parse(out);
  expect(loads).toHaveLength(18);
  expect(loads[0]).toMatchObject({
    bath: "six",
    part: "clip",
    powderLot: "P-17",
    madeUp: "2026-01-01T08:00:00",
  });
  expect((await review("--part", "clip")).out).toContain("40 loads");
  expect((await review("--part", "clip", "--lot", "P-17")).out).toContain("18 loads");
});

test("a part or lot that the log does not have is refused with the names that it has", async () => {
  const slip = await review("--part", "clop");
  expect([slip.status, slip.out]).toEqual([2, ""]);
  expect(slip.err).toMatch(/the log has no part "clop"\s+help: did you mean clip\?/);
  const other = await review("--lot", "nothing-like-it");
  expect(other.status).toBe(2);
  expect(other.err).toMatch(/the log has no lot "nothing-like-it"\s+help: it has .*P-17/);
});

test("the help names at most twelve parts or lots that the log has", async () => {
  const helpOf = async (parts: number): Promise<string> => {
    const loads = Array.from(
      { length: parts },
      (_, i) => `2026-01-02T08:${10 + i},six,load,brick,part${i},brick-light,white,1,30`,
    );
    const rows = [
      "time,bath,event,dye,part,shade,base,parts,seconds",
      "2026-01-02T08:00,six,made-up,brick,,,,,",
      ...loads,
    ];
    const logs = new Map([["baths.csv", `${rows.join("\n")}\n`]]);
    const { err } = await runFake(
      ["review", "restock.yaml", "--log", "baths.csv", "--part", "nothing-like-it"],
      folderIo(examples, logs),
    );
    return err.replace(/\s+/g, " ");
  };
  expect(await helpOf(12)).toMatch(/help: it has part0, .* part10 and part11(?!,)/);
  expect(await helpOf(13)).toMatch(/help: it has part0, .* part10 and part11, among others/);
});

test("bare parts of two lots are compared where both were read", async () => {
  const bare = (lot: string, b: number) =>
    columnNames
      .map(
        (name) =>
          ({
            time: "2026-01-01T07:00",
            bath: "six",
            event: "measured",
            seconds: 0,
            L: 92,
            a: 0,
            b,
            powderLot: lot,
          })[name as "b"] ?? "",
      )
      .join(",");
  const read = new Map([["baths.csv", `${log}${bare("P-16", 1)}\r\n${bare("P-17", 3)}\r\n`]]);
  const run = (...args: readonly string[]) =>
    runFake(["review", "restock.yaml", "--log", "baths.csv", "--quiet", ...args], folderIo(examples, read));
  const [lot] = JSON.parse((await run("--format", "json")).out).lots;
  expect(lot.bareDeltaE00).toBeCloseTo(ciede2000([92, 0, 1], [92, 0, 3]), 9);
  expect((await run()).out).toMatch(/^lot +of +dye +loads +moved by +chance alone +bare part *$/m);
  expect(JSON.parse((await review("--format", "json")).out).lots[0].bareDeltaE00).toBeNull();
});

test("review without a log, or with one of other baths, says what to write", async () => {
  const none = await runFake(["review", "restock.yaml"], folderIo(examples, files));
  expect([none.status, none.err]).toEqual([
    2,
    expect.stringContaining("error[log-missing]: no log is given"),
  ]);
  const gone = await runFake(["review", "restock.yaml", "--log", "gone.csv"], folderIo(examples));
  expect([gone.status, gone.err]).toEqual([2, expect.stringContaining("there is no such file")]);
  const other = new Map([["baths.csv", "time,bath,event,dye\n2026-01-01T08:00,nine,made-up,brick\n"]]);
  const strange = await runFake(["review", "restock.yaml", "--log", "baths.csv"], folderIo(examples, other));
  expect([strange.status, strange.err]).toEqual([2, expect.stringContaining('its baths are "nine"')]);
});
