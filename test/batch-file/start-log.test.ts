import { expect, test } from "vitest";
import { planBatch } from "../../src/core/plan/plan.js";
import { readFile, readText } from "./read.js";

const spec = (start = "start: log", log = "log: logs/baths.csv", date = "date: 2026-10-08") => `
batch: logged
${log}
${date}
include: [workshop.yaml, dyes.yaml]
baths:
  - { tank: six, dye: brick, ${start} }
orders:
  - { part: clip, shade: brick-light, base: white, quantity: 40 }
`;
const header =
  "time,bath,event,dye,part,shade,parts,seconds,celsius,volumeL,concentrateMl,concentrateG,waterMl\n";
const madeUp = "2026-10-05T08:00,six,made-up,brick,,,,,,,,,\n";
const load = "2026-10-05T10:00,six,load,,clip,brick-light,42,30,79.5,,,,\n";

const reading = (log: string | undefined, text = spec()) =>
  readText(text, {
    readFile: (name) => {
      if (name !== "logs/baths.csv") return readFile(`examples/${name}`);
      if (log === undefined) throw Object.assign(new Error(), { code: "ENOENT" });
      return log;
    },
  });

const faultOf = async (log: string | undefined, text?: string) => {
  const { batch, diagnostics } = await reading(log, text);
  expect(batch).toBeUndefined();
  expect(diagnostics).toHaveLength(1);
  const { code, message, help, spans } = diagnostics[0]!;
  return { code, message, help, at: spans.map(({ file, line }) => `${file}:${line}`).join() };
};

test("start: log finds volume, strength, age and area of a bath in the log, and from which row", async () => {
  const { batch, diagnostics } = await reading(header + madeUp + load);
  expect(diagnostics).toEqual([]);
  const { start } = batch!.baths[0]!;
  expect(start).toMatchObject({
    kind: "kept",
    log: { file: "logs/baths.csv", row: 3, time: "2026-10-05T10:00:00" },
  });
  if (start.kind !== "kept") throw new Error("not kept");
  const clip = batch!.parts.find(({ name }) => name === "clip")!;
  expect(start.areaDm2).toBeCloseTo(42 * clip.areaDm2, 12);
  // By the date of the batch: from eight in the morning of the fifth to the eighth.
  expect(start.ageDays).toBeCloseTo(3 - 8 / 24, 12);
  expect(start.volumeL).toBeLessThan(6);
  expect(start.volumeL).toBeGreaterThan(5.5);
  const plan = planBatch(batch!);
  if (!plan.ok) throw new Error("no plan");
  expect(plan.value.baths[0]!.start).toEqual(start);
});

test("without a date the age is that of the last row", async () => {
  const { batch } = await reading(header + madeUp + load, spec("start: log", undefined, ""));
  expect(batch!.baths[0]!.start).toMatchObject({ ageDays: 2 / 24 });
});

test("a bath that was made up as the batch file says, and nothing more, is a fresh one", async () => {
  const { batch } = await reading(header + madeUp);
  expect(batch!.baths[0]!.start).toMatchObject({ volumeL: 6, strength: 1, areaDm2: 0 });
});

test("a top-up without a level fills to the mark, a measured level counts, and its dye stays", async () => {
  const strengthOf = async (rows: string) => {
    const { start } = (await reading(header + madeUp + rows)).batch!.baths[0]!;
    return start.kind === "kept" ? start : undefined;
  };
  const measured = await strengthOf("2026-10-05T08:30,six,measured,,,,,,20,5,,,\n");
  expect(measured).toMatchObject({ volumeL: 5 });
  expect(measured!.strength).toBeCloseTo(6 / 5, 12);
  const filled = await strengthOf(
    "2026-10-05T08:30,six,measured,,,,,,20,5,,,\n2026-10-05T08:31,six,top-up,,,,,,20,,0,,972\n",
  );
  expect(filled).toMatchObject({ volumeL: 6 });
  expect(filled!.strength).toBeCloseTo(1, 12);
});

test("a new filling forgets the old one", async () => {
  const again = "2026-10-06T08:00,six,made-up,brick,,,,,,,,,\n";
  const { batch } = await reading(header + madeUp + load + again);
  expect(batch!.baths[0]!.start).toMatchObject({ strength: 1, areaDm2: 0, log: { row: 4 } });
});

test("what keeps a bath from starting from its log is said with its place", async () => {
  expect(await faultOf(header + madeUp, spec("start: log", ""))).toEqual({
    code: "log-missing",
    message: "a bath starts from the log, but no log is given",
    help: "add log: baths.csv at the top of the batch file, or --log baths.csv",
    at: "batch.yaml:7",
  });
  expect(await faultOf(undefined)).toMatchObject({ code: "log-unreadable", at: "batch.yaml:3" });
  const other = "2026-10-05T08:00,fourteen,made-up,teal,,,,,,,,,\n";
  expect(await faultOf(header + other)).toMatchObject({
    code: "log-no-bath",
    message: 'the log has no bath in tank "six"',
    at: "batch.yaml:7",
  });
  expect(await faultOf(header + load)).toMatchObject({
    code: "log-no-bath",
    message: 'the log does not say when the bath in tank "six" was made up',
  });
  expect(await faultOf(`${header + madeUp}2026-10-05T12:00,six,dump,,,,,,,,,,\n`)).toMatchObject({
    code: "log-dumped",
    message: expect.stringContaining("was dumped on 2026-10-05T12:00:00"),
    at: "logs/baths.csv:3",
  });
  expect(await faultOf(header + madeUp.replace("brick", "teal"))).toMatchObject({
    code: "log-other-dye",
    message: expect.stringContaining('holds dye "teal", not "brick"'),
    at: "logs/baths.csv:2",
  });
  expect(await faultOf(header + madeUp + load.replace("clip", "clop"))).toMatchObject({
    code: "log-unknown-part",
    message: 'row 3, column part: the part "clop" is not in the batch file',
    at: "logs/baths.csv:3",
  });
  expect(
    await faultOf(header + madeUp + load.replace(",30,", ",,").replace("brick-light", "rose")),
  ).toMatchObject({ code: "log-unknown-shade", at: "logs/baths.csv:3" });
  expect(await faultOf(`${header + madeUp}2026-10-05T12:00,six,top-up,,,,,,,,,5,\n`)).toMatchObject({
    code: "log-dye-kind",
    at: "logs/baths.csv:3",
  });
  expect(await faultOf(header + madeUp + load.replace("79.5", "hot"))).toMatchObject({
    at: "logs/baths.csv:3",
  });
});
