import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { readLog } from "../../src/log/read/read-log.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const record = (before: string | undefined, ...args: readonly string[]) =>
  runFake(["record", "baths.csv", ...args], {
    ...folderIo(examples, new Map(before === undefined ? [] : [["baths.csv", before]])),
    now: () => new Date(2026, 9, 5, 9, 30, 5),
  });
const from = ["--from", "restock.yaml"];
const rowsOf = (text: string): Record<string, string>[] =>
  parse(text, { columns: true, delimiter: [",", ";"] });
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((m) => m[1]!);

test("record --from writes the rows of the plan in the order of the day, to be confirmed", async () => {
  const { status, out, err, files } = await record(undefined, ...from);
  expect([status, err]).toEqual([0, ""]);
  const text = files.get("baths.csv")!;
  const { loads } = JSON.parse(
    (await runFake(["plan", "restock.yaml", "--format", "json", "--quiet"], folderIo(examples))).out,
  ).baths[0];
  const rows = rowsOf(text);
  expect(rows.filter(({ bath }) => bath === "six").map(({ event }) => event)).toEqual([
    "made-up",
    ...loads.flatMap(({ topUp }: { topUp: unknown }) => (topUp === null ? ["load"] : ["load", "top-up"])),
  ]);
  // The other bath is a kept one, filled up before it is heated.
  const kept = rows.filter(({ bath }) => bath === "fourteen");
  expect(kept.slice(0, 2)).toMatchObject([
    { event: "top-up", concentrateMl: "24", waterMl: "170", note: "autumn-restock" },
    { event: "load" },
  ]);
  const dips = rows.filter(({ event, bath }) => event === "load" && bath === "six");
  expect(dips.map(({ parts }) => Number(parts))).toEqual(loads.map((load: { parts: number }) => load.parts));
  expect(dips.map(({ seconds }) => Number(seconds))).toEqual(
    loads.map((load: { dipSeconds: number }) => Math.round(load.dipSeconds)),
  );
  for (const { time, celsius, volumeL, L, good, note } of rows) {
    expect([time, celsius, volumeL, L, good]).toEqual(["", "", "", "", ""]);
    expect(note).toContain("autumn-restock");
  }
  expect(out).toMatch(/^six +load +hook +brick-deep +21 +116$/m);
  expect(out.replace(/\s+/g, " ")).toContain("planned rows written to baths.csv: fill in the time of each");
});

test("planned rows do not count until their times are filled in, and then they do", async () => {
  const text = (await record(undefined, ...from)).files.get("baths.csv")!;
  const before = readLog("baths.csv", text);
  expect(before.log!.rows).toEqual([]);
  expect(before.log!.unconfirmed).toHaveLength(rowsOf(text).length);
  let minute = 0;
  const done = text.replace(/^,/gm, () => `2026-10-05T10:${String(minute++).padStart(2, "0")},`);
  const after = readLog("baths.csv", done);
  expect(after.diagnostics).toEqual([]);
  expect(after.log!.rows).toHaveLength(minute);
});

test("record --from --load records one load of the plan as done now, with what was different", async () => {
  const { status, out, err, files } = await record(
    undefined,
    ...from,
    "--bath",
    "six",
    ...["--load", "2", "--seconds", "33", "--celsius", "79.5", "--note", "slow"],
  );
  expect([status, err]).toEqual([0, ""]);
  expect(rowsOf(files.get("baths.csv")!)).toMatchObject([
    {
      time: "2026-10-05T09:30:05",
      bath: "six",
      event: "load",
      dye: "brick",
      part: "clip",
      shade: "brick-light",
      base: "white",
      parts: "41",
      seconds: "33",
      celsius: "79.5",
      note: "slow",
    },
  ]);
  expect(out).toContain("1 row recorded");
});

test("record --from --event records the make-up, or the top-up after a load", async () => {
  const row = async (...args: string[]) =>
    rowsOf((await record(undefined, ...from, ...args)).files.get("baths.csv")!)[0]!;
  expect(await row("--event", "made-up")).toMatchObject({
    event: "made-up",
    bath: "six",
    concentrateMl: "584",
  });
  expect(await row("--event", "top-up", "--bath", "six")).toMatchObject({
    event: "top-up",
    concentrateMl: "5.1",
    waterMl: "121",
    note: "autumn-restock after load 4",
  });
  // Before the first load.
  expect(await row("--event", "top-up", "--bath", "fourteen", "--load", "0")).toMatchObject({
    event: "top-up",
    concentrateMl: "24",
    waterMl: "170",
    note: "autumn-restock",
  });
});

test("record --from says which rows there are where several or none are meant", async () => {
  const said = async (...args: string[]) => {
    const { status, err, files } = await record(undefined, ...from, ...args);
    expect([status, files.size]).toEqual([2, 0]);
    return err.replace(/\s+/g, " ").trim();
  };
  expect(await said("--load", "2")).toBe(
    "error[log-planned]: the plan has 2 load rows that this can mean help: write for example --bath six --load 2, or --bath fourteen --load 2",
  );
  expect(await said("--load", "40")).toContain("the plan has no load row of that bath and load");
  expect(await said("--event", "dump")).toContain("record it without --from");
  expect(await said("--load", "0")).toContain("the plan has no load row of that bath and load");
  expect(await said("--load", "01")).toContain('"01" is not a load');
  expect(await said("--event", "top-up")).toContain(
    "write for example --bath six --load 4, or --bath fourteen --load 0",
  );
  expect(await said("--celsius", "79")).toContain("--celsius: all rows of the plan are written");
  expect((await record(undefined, "--load", "2", "--event", "load")).err).toContain("without --from");
  expect((await record(undefined, "--from", "none.yaml")).status).toBe(2);
});

test("a row that the log has already is recorded with a warning, which names the first", async () => {
  const load2 = [...from, "--bath", "six", "--load", "2"];
  const first = (await record(undefined, ...load2, "--time", "2026-10-05T09:14")).files.get("baths.csv")!;
  const again = async (...args: string[]) => {
    const { status, err, files } = await record(first, ...args);
    expect([status, rowsOf(files.get("baths.csv")!).length]).toEqual([0, 2]);
    return err.replace(/\s+/g, " ").trim();
  };
  const said = "warning[log-again]: row 2 of the log, of 2026-10-05T09:14:00, says the same";
  // The same planned load on the same day, or any load of the bath at the same time.
  expect(await again(...load2)).toContain(said);
  const typed = ["--bath", "six", "--event", "load", "--part", "clip", "--parts", "41", "--seconds", "32"];
  expect(await again(...typed, "--time", "2026-10-05T09:14")).toContain(said);
  expect(await again(...typed, "--time", "2026-10-05T09:14:01")).toBe("");
  expect(await again(...load2, "--time", "2026-10-06T09:14")).toBe("");
  expect(await again(...from, "--bath", "fourteen", "--load", "2")).toBe("");
  expect(await again(...from, "--bath", "six", "--load", "3")).toBe("");
  // Dye and water may go in one after the other.
  const water = ["--event", "top-up", "--bath", "six", "--water", "50mL", "--time", "2026-10-05T09:20"];
  const poured = (await record(undefined, ...water)).files.get("baths.csv")!;
  expect((await record(poured, ...water)).err).toBe("");
});

test.each([
  ["made up days before", "2026-10-01T08:00"],
  ["made up in the morning", "2026-10-05T08:00"],
])("load by load, a day that starts from its log is recorded as its sheet had it: %s", async (_, madeUp) => {
  // A dye of which much is taken up, so that the bath of the evening is not that of the morning.
  const set = [
    "--set",
    "baths.0.start=log",
    "--set",
    "dyes.brick.uptake=2 mL/dm2",
    "--set",
    "baths.0.topUp=none",
  ];
  const before = `time,bath,event,dye,part,shade,base,parts,seconds,celsius,concentrateMl,waterMl,note\n${madeUp},six,made-up,brick,,,,,,,,,\n`;
  const planned = rowsOf((await record(before, ...from, ...set)).files.get("baths.csv")!).filter(
    ({ bath, note }) => bath === "six" && note !== "",
  );
  let log = before;
  for (const { event, note } of planned) {
    const load = /load (\d+)/.exec(note!)?.[1] ?? "0";
    const { status, files } = await record(
      log,
      ...from,
      ...set,
      "--event",
      event!,
      "--bath",
      "six",
      "--load",
      load,
    );
    expect(status).toBe(0);
    log = files.get("baths.csv")!;
  }
  const done = rowsOf(log).slice(1);
  expect(done.map(({ time: _at, ...row }) => row)).toEqual(planned.map(({ time: _at, ...row }) => row));
});

test("a log with fewer columns gets the planned cells that it has room for, if they are enough", async () => {
  const few = "bath;event;time;part;parts;seconds;concentrateMl;waterMl;dye\r\n";
  const { status, files } = await record(few, ...from, "--bath", "six", "--load", "2");
  expect(status).toBe(0);
  expect(files.get("baths.csv")).toBe(`${few}six;load;2026-10-05T09:30:05;clip;41;32;;;brick\r\n`);
  const noParts = await record(few.replace("parts;", ""), ...from, "--bath", "six", "--load", "2");
  expect([noParts.status, noParts.files.size]).toEqual([2, 0]);
  expect(codes(noParts.err)).toEqual(["log-column-missing"]);
  expect(noParts.err).toContain("the log has no column parts");
  const typed = await record(few, ...from, "--bath", "six", "--load", "2", "--celsius", "79");
  expect([typed.status, codes(typed.err)]).toEqual([2, ["log-column-missing"]]);
  expect(typed.err).toContain("the log has no column celsius");
});

test("rows of an earlier plan that nobody confirmed are said", async () => {
  const first = (await record(undefined, ...from)).files.get("baths.csv")!;
  const { status, err } = await record(first, ...from);
  expect([status, codes(err)]).toEqual([0, ["log-unconfirmed"]]);
});
