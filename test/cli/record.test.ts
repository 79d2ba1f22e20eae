import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { nodeIo } from "../../src/cli/node-io.js";
import { readLog } from "../../src/log/read/read-log.js";
import { columnNames } from "../../src/log/row/columns.js";
import { runFake } from "./fake-io.js";

let folder = "";
let log = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
  log = join(folder, "baths.csv");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Runs `record` on real files at half past nine. */
const record = (...args: readonly string[]) => {
  const { readFile, appendLines, sizeOf } = nodeIo();
  return runFake(["record", log, ...args], {
    readFile,
    appendLines,
    sizeOf: sizeOf!,
    now: () => new Date(2027, 3, 16, 9, 30, 5),
  });
};
const text = (): string => readFileSync(log, "utf8");
const lines = (): string[] => text().split(/\r?\n/).slice(1, -1);
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((m) => m[1]!);
const load = ["--bath", "six", "--event", "load", "--part", "hook", "--parts", "24", "--seconds", "31"];

test("record begins a log with every column, and appends to it", async () => {
  const made = await record("--bath", "six", "--event", "made-up", "--dye", "coral", "--volume", "5.8L");
  expect([made.status, made.err]).toEqual([0, ""]);
  const more = await record(
    ...load,
    "--shade",
    "coral-light",
    "--celsius",
    "79.5",
    "--lab",
    "73.1,33.4,16.0",
  );
  expect([more.status, more.err]).toEqual([0, ""]);
  expect(text().split("\r\n")).toEqual([
    columnNames.join(),
    "2027-04-16T09:30:05,six,made-up,coral,,,,,,,5.8,,,,,,,,,,,",
    "2027-04-16T09:30:05,six,load,,hook,coral-light,,24,31,79.5,,,,,73.1,33.4,16,,,,,",
    "",
  ]);
});

test("record gives the recorded report in every format", async () => {
  for (const [format, ending] of Object.entries({
    text: "txt",
    json: "json",
    csv: "csv",
    tsv: "tsv",
    markdown: "md",
  })) {
    const { status, out } = await runFake([
      "record",
      "baths.csv",
      ...load,
      "--time",
      "2027-04-16T09:31",
      "--format",
      format,
    ]);
    expect(status).toBe(0);
    await expect(out).toMatchFileSnapshot(`golden/record/load.${ending}`);
  }
});

test("record takes quantities with units, and bare numbers where the option names the unit", async () => {
  const cell = async (column: string, event: string, ...args: string[]) => {
    rmSync(log, { force: true });
    const { status, err } = await record("--bath", "six", "--event", event, ...args);
    expect([args, status, err]).toEqual([args, 0, ""]);
    return lines()[0]!.split(",")[columnNames.indexOf(column as (typeof columnNames)[number])];
  };
  const dip = ["--part", "hook", "--parts", "3"];
  expect(await cell("seconds", "load", ...dip, "--seconds", "1 min 5 s")).toBe("65");
  // As the run sheet prints it.
  expect(await cell("seconds", "load", ...dip, "--seconds", "2:26")).toBe("146");
  expect(await cell("celsius", "measured", "--celsius", "175 F")).toBe("79.4444");
  expect(await cell("celsius", "measured", "--celsius", "79.5C")).toBe("79.5");
  expect(await cell("volumeL", "measured", "--volume", "5600 mL")).toBe("5.6");
  expect(await cell("concentrateMl", "top-up", "--concentrate", "0.06 L")).toBe("60");
  expect(await cell("concentrateG", "top-up", "--concentrate", "12g")).toBe("12");
  expect(await cell("waterMl", "top-up", "--water", "0.14L")).toBe("140");
  expect(await cell("time", "dump", "--time", "08:05")).toBe("2027-04-16T08:05:00");
  expect(await cell("time", "dump", "--time", "2027-04-15 17:00")).toBe("2027-04-15T17:00:00");
});

test("record refuses what it cannot read, all of it in one run, and writes nothing", async () => {
  const bad = [
    "--parts",
    "2.5",
    "--seconds",
    "1:90",
    "--celsius",
    "79,5",
    "--lab",
    "#aabbcc",
    "--time",
    "25:00",
    "--volume",
    "6",
    "--concentrate",
    "60",
    "--note",
    "a\nb",
    "--base",
    " ",
  ];
  const { status, out, err } = await record("--bath", "six", "--event", "load", "--part", "hook", ...bad);
  expect([status, out, readdirSync(folder)]).toEqual([2, "", []]);
  for (const option of [
    "time",
    "base",
    "parts",
    "seconds",
    "celsius",
    "volume",
    "concentrate",
    "lab",
    "note",
  ])
    expect(err).toContain(`: --${option}: `);
  await expect(err).toMatchFileSnapshot("golden/record/bad.txt");
});

test("record says what an event needs, and refuses what it has no use for", async () => {
  const said = async (...args: string[]) => {
    const { status, err } = await record(...args);
    expect([status, readdirSync(folder)]).toEqual([2, []]);
    return err.replace(/\s+/g, " ").trim();
  };
  expect(await said("--event", "load")).toBe(
    "error[log-needs]: a row needs its bath help: add --bath, the tank's name error[log-needs]: a load row needs part help: add --part, part that was dipped error[log-needs]: a load row needs parts help: add --parts, parts in the load error[log-needs]: a load row needs seconds or shade help: add --seconds, the dip as timed, without draining: 31, 1:05 or '1 min 5 s'",
  );
  expect(await said("--bath", "six")).toBe(
    "error[log-needs]: a row needs its event help: add --event, one of made-up, load, top-up, dump, measured",
  );
  expect(await said("--bath", "six", "--event", "dump", "--seconds", "5")).toContain(
    "seconds is not used in a dump row",
  );
  expect(await said(...load, "--celsius", "200")).toContain("200 is out of range");
  expect(await said(...load, "--good", "20", "--rejected", "5")).toContain(
    "20 good and 5 rejected do not add up",
  );
  expect(await said("--bath", "six", "--event", "dip")).toContain("Allowed choices are made-up, load");
  expect(await said(...load, "--set", "a=1")).toContain("no batch file is read");
});

test("record keeps the order of columns, the delimiter, the decimal mark and the line end of a log", async () => {
  writeFileSync(log, "\ufeffevent;bath;weather;time;celsius;volumeL\ndump;six;rain;2027-04-15T09:00;;\n");
  expect((await record("--bath", "six", "--event", "measured", "--celsius", "79.5")).status).toBe(0);
  expect(text()).toBe(
    "\ufeffevent;bath;weather;time;celsius;volumeL\ndump;six;rain;2027-04-15T09:00;;\nmeasured;six;;2027-04-16T09:30:05;79,5;\n",
  );
  writeFileSync(log, "event;bath;time;celsius\nmeasured;six;2027-04-15T09:00;79.5\n");
  expect((await record("--bath", "six", "--event", "measured", "--celsius", "78.5")).status).toBe(0);
  expect(lines().at(-1)).toBe("measured;six;2027-04-16T09:30:05;78.5");
});

test("a new log takes the form that is asked for; one that is there keeps its own", async () => {
  const args = ["--bath", "six", "--event", "measured", "--celsius", "79.5"];
  expect((await record(...args, "--decimal", "comma", "--bom")).status).toBe(0);
  expect(text()).toMatch(/^\ufefftime;bath;event;[^\n]*\r\n2027-04-16T09:30:05;six;measured;;;;;;;79,5;/);
  const again = await record(...args, "--decimal", "comma");
  expect([again.status, again.err]).toEqual([2, expect.stringContaining("keeps the form")]);
  rmSync(log);
  expect((await record(...args, "--delimiter", "|")).err).toContain("a log has , or ; or a tab");
});

test("record refuses a value that the log has no column for, and a file that is not a log", async () => {
  writeFileSync(log, "time,bath,event,part,parts,seconds\n");
  const missing = await record(...load, "--celsius", "79");
  expect([missing.status, codes(missing.err), lines()]).toEqual([2, ["log-column-missing"], []]);
  expect(missing.err).toContain("add celsius to its first row");
  for (const other of ["buy dye", "a,b\n1,2\n"]) {
    writeFileSync(log, other);
    expect((await record(...load)).status).toBe(2);
    expect(text()).toBe(other);
  }
  expect((await runFake(["record", "-", ...load])).status).toBe(2);
});

test("record names every column that is missing once", async () => {
  writeFileSync(log, "time,bath,event,note\n");
  const { status, err } = await record(...load);
  expect([status, codes(err)]).toEqual([2, Array(3).fill("log-column-missing")]);
  expect(err).toContain("or leave out --seconds");
});

test("a torn last row is moved beside the log and said", async () => {
  await record(...load);
  const before = text();
  writeFileSync(log, `${before}2027-04-16T09:31,six,lo`);
  const { status, err } = await record(...load, "--time", "2027-04-16T09:32");
  expect([status, codes(err)]).toEqual([0, ["log-torn"]]);
  expect(readFileSync(`${log}.torn`, "utf8")).toBe("2027-04-16T09:31,six,lo\n");
  const { log: read, diagnostics } = readLog(log, text());
  expect([read?.rows.length, diagnostics]).toEqual([2, []]);
  expect((await record(...load, "--time", "2027-04-16T09:33")).err).toBe("");
});

test("a torn first line is moved beside the log too", async () => {
  writeFileSync(log, "time,bath,ev");
  expect(codes((await record(...load)).err)).toEqual(["log-torn"]);
  const { log: read, diagnostics } = readLog(log, text());
  expect([read?.rows.length, diagnostics]).toEqual([1, []]);
});

test("rows of the log that cannot be read are said, and recording goes on", async () => {
  await record(...load);
  writeFileSync(log, `${text()}yesterday,six,dump${",".repeat(columnNames.length - 3)}\r\n`);
  const { status, err } = await record(...load, "--time", "2027-04-16T09:32");
  expect([status, codes(err)]).toEqual([0, ["log-time"]]);
  expect(lines()).toHaveLength(3);
  expect((await record(...load, "--strict")).status).toBe(1);
});

test("a time before the last row is a warning, but not for what is read of an earlier load", async () => {
  await record(...load);
  expect(codes((await record(...load, "--time", "09:20")).err)).toEqual(["log-time-back"]);
  const early = [
    "--bath",
    "six",
    "--event",
    "measured",
    "--time",
    "09:25",
    "--lab",
    "73,33,16",
    "--good",
    "22",
  ];
  const read = await record(...early);
  expect([read.status, read.err]).toEqual([0, ""]);
  expect(read.out).toContain("belongs to the load of 2027-04-16T09:20:00: hook.");
  expect(codes((await record(...early.slice(0, -2))).err)).toEqual(["log-read-twice"]);
  const many = await record("--bath", "six", "--event", "measured", "--good", "25");
  expect([many.status, codes(many.err)]).toEqual([2, ["log-counts"]]);
  expect(codes((await record("--bath", "ten", "--event", "measured", "--good", "25")).err)).toEqual([
    "log-no-load",
  ]);
});

test("a reading whose time names the minute of a load belongs to that load, whatever its second", async () => {
  await record(...load, "--time", "09:12:40");
  await record(...load);
  const read = await record("--bath", "six", "--event", "measured", "--time", "09:30", "--lab", "73,33,16");
  expect([read.status, read.err]).toEqual([0, ""]);
  expect(read.out).toContain("belongs to the load of 2027-04-16T09:30:05: hook.");
  expect(lines().at(-1)).toContain("2027-04-16T09:30:05,six,measured,");
});

test("record warns while a spreadsheet has the log open", async () => {
  writeFileSync(join(folder, ".~lock.baths.csv#"), ",me");
  const { status, err } = await record(...load);
  expect([status, codes(err)]).toEqual([0, ["log-open"]]);
});

test("record says why a log cannot be written, and gives up where others never pause", async () => {
  expect((await runFake(["record", folder, ...load], { readFile: nodeIo().readFile })).err).toContain(
    "it is a folder",
  );
  const gone = join(folder, "none", "baths.csv");
  const { readFile, appendLines } = nodeIo();
  const missing = await runFake(["record", gone, ...load], { readFile, appendLines });
  expect([missing.status, missing.err.replace(/\s+/g, " ")]).toEqual([
    2,
    expect.stringContaining("there is no such folder"),
  ]);
  const busy = await runFake(["record", "baths.csv", ...load], { appendLines: async () => "changed" });
  expect([busy.status, codes(busy.err)]).toEqual([2, ["log-busy"]]);
});
