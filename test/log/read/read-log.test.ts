import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { renderText } from "../../../src/diagnostics/render-text.js";
import { headerText, rowText } from "../../../src/log/append/write-row.js";
import { newStyle } from "../../../src/log/read/log-style.js";
import { readLog } from "../../../src/log/read/read-log.js";
import { columnNames, columnOf } from "../../../src/log/row/columns.js";
import type { LogValues } from "../../../src/log/row/log-values.js";

const root = new URL("../../../", import.meta.url).pathname;
const fixture = (name: string): string => readFileSync(`${root}fixtures/${name}`, "utf8");

const read = (text: string) => {
  const { log, diagnostics } = readLog("baths.csv", text);
  if (log === undefined) expect.fail(diagnostics[0]!.message);
  return { ...log, said: diagnostics.map(({ message }) => message) };
};
const head = "time,bath,event,part,shade,parts,seconds,celsius,volumeL,L,a,b,good,rejected";
const rows = (...lines: readonly string[]) => read(`${[head, ...lines].join("\n")}\n`);

test("readLog gives each event its cells", () => {
  const { rows, unconfirmed, style, said } = read(fixture("good/baths.csv"));
  expect(said).toEqual([]);
  expect(unconfirmed).toEqual([]);
  expect(style).toEqual({ delimiter: ",", decimal: "point", lineEnd: "\n", columns: columnNames });
  const brief = rows.map(({ time, ...row }) => ({ ...row, time: time.text.slice(11) }));
  expect(brief).toEqual([
    {
      row: 2,
      time: "08:40:00",
      bath: "six",
      event: "made-up",
      dye: "coral",
      celsius: 20,
      volumeL: 6,
      concentrateMl: 584,
      waterMl: 5260,
      dyeLot: "D7",
      note: "first filling",
    },
    {
      row: 3,
      time: "09:31:05",
      bath: "six",
      event: "load",
      part: "hook",
      shade: "coral-light",
      base: "white",
      parts: 24,
      seconds: 31,
      celsius: 79.5,
      lab: [73.1, 33.4, 16.05],
      good: 23,
      rejected: 1,
      powderLot: "P12",
    },
    expect.objectContaining({ row: 4, seconds: 32, volumeL: 5.8, note: "lid off, 2 min" }),
    { row: 5, time: "09:46:30", bath: "six", event: "top-up", concentrateMl: 12.5, waterMl: 190 },
    expect.objectContaining({ row: 6, part: "tag", parts: 10, seconds: 45.5 }),
    { row: 7, time: "10:50:00", bath: "fourteen", event: "measured", dye: "teal", volumeL: 13.55 },
    { row: 8, time: "11:05:00", bath: "six", event: "bare", lab: [92.1, -0.6, -2.3], powderLot: "P12" },
    { row: 9, time: "16:00:00", bath: "six", event: "dump" },
  ]);
});

test("a log with semicolons, decimal commas, a byte order mark, dates with dots and other columns reads the same", () => {
  const plain = read(fixture("good/baths.csv"));
  const comma = read(fixture("good/baths-decimal-comma.csv"));
  expect(comma.rows).toEqual(plain.rows);
  expect(comma.said).toEqual([]);
  expect(comma.style).toMatchObject({ delimiter: ";", decimal: "comma" });
  expect(comma.style.columns).toContain("Wetter");
});

const bad = readdirSync(`${root}fixtures/bad/logs`).filter((name) => name.endsWith(".csv"));
test.each(bad)("%s gives its recorded diagnostics", async (name) => {
  const { diagnostics } = readLog(name, fixture(`bad/logs/${name}`));
  expect(diagnostics.length).toBeGreaterThan(0);
  await expect(renderText(diagnostics, { columns: 100 })).toMatchFileSnapshot(
    `${root}fixtures/bad/logs/${name}.expected.txt`,
  );
});

test("rows count by their times, those of one time in the order of the file", () => {
  const { rows: found, said } = rows(
    "2027-04-16T09:30,six,load,hook,,1,30,,,,,,,",
    "2027-04-16T09:30,six,load,hook,,2,30,,,,,,,",
    "2027-04-16T09:20,six,load,hook,,3,30,,,,,,,",
    "2027-04-16T09:40,six,load,hook,,4,30,,,,,,,",
  );
  expect(found.map((row) => row.event === "load" && row.parts)).toEqual([3, 1, 2, 4]);
  expect(said).toEqual(["row 4, column time: 2027-04-16T09:20:00 is before 2027-04-16T09:30:00 in row 3"]);
});

test("what a measured row read or inspected belongs to the last load of its bath up to its time", () => {
  const { rows: found, said } = rows(
    "2027-04-16T09:30,six,load,hook,,10,30,,,,,,,",
    "2027-04-16T09:31,ten,load,hook,,20,30,,,,,,,",
    "2027-04-16T09:40,six,load,hook,,30,30,,,,,,,",
    "2027-04-16T11:00,ten,measured,,,,,,9.5,70,30,15,18,",
    "2027-04-16T09:30,six,measured,,,,,,,71,30,15,,",
    "2027-04-16T11:00,six,measured,,,,,60,,,,,,3",
  );
  expect(said).toEqual([]);
  const loads = found.flatMap((row) => (row.event === "load" ? [row] : []));
  expect(loads.map(({ parts, lab, good, rejected }) => [parts, lab?.[0], good, rejected])).toEqual([
    [10, 71, undefined, undefined],
    [20, 70, 18, 2],
    [30, undefined, 27, 3],
  ]);
  const measured = found.filter(({ event }) => event === "measured");
  expect(measured.map(({ bath, time: _time, ...row }) => [bath, row])).toEqual([
    ["ten", { row: 5, event: "measured", volumeL: 9.5 }],
    ["six", { row: 7, event: "measured", celsius: 60 }],
  ]);
});

test("an event may be written in capitals or with a blank, a header may come twice, a blank line is passed over", () => {
  const { rows: found, said } = read(
    [
      "time,bath,event,dye",
      "2027-04-16 09:00,six,Made Up,coral",
      "",
      "time,bath,event,dye",
      "   ",
      "2027-04-16T10:00:30,six,DUMP,",
    ].join("\r\n"),
  );
  expect(said).toEqual([]);
  expect(found.map(({ event, row, time }) => [event, row, time.text])).toEqual([
    ["made-up", 2, "2027-04-16T09:00:00"],
    ["dump", 6, "2027-04-16T10:00:30"],
  ]);
});

test("every number is read by its own decimal mark, as Calc leaves those of a log that somebody else wrote", () => {
  const {
    rows: found,
    style,
    said,
  } = read(
    "time;bath;event;celsius;L;a;b\n2027-04-16T09:00;six;measured;79.5;;;\n2027-04-16T09:10;six;measured;80,25;;;\n",
  );
  expect(said).toEqual([]);
  expect(found).toMatchObject([{ celsius: 79.5 }, { celsius: 80.25 }]);
  expect(style.decimal).toBe("point");
});

test.each([
  // Delimiter, a number that shows the decimal mark of others, the number, what it is.
  [",", "", "5.125", 5.125],
  [",", "5.1", "5.125", 5.125],
  [";", "", "5,125", 5.125],
  [";", "5,1", "5,125", 5.125],
  ["\t", "5,1", "5,125", 5.125],
  ["\t", "5.1", "5.125", 5.125],
  [";", "", "0.125", 0.125],
  [";", "", "5.1250", 5.125],
  [";", "", "5125", 5125],
  [",", "", '"5,125"', "may be 5.125 or 5125 | write 5125, or 5.1250 with a fourth decimal"],
  [",", '"5,1"', "5.125", "may be 5.125 or 5125 | write 5125, or 5,1250 with a fourth decimal"],
  [",", '"5,1"', '"5,125"', "may be 5.125 or 5125 | write 5125, or 5,1250 with a fourth decimal"],
  [";", "", "5.125", "may be 5.125 or 5125 | write 5125, or 5,1250 with a fourth decimal"],
  [";", "5.1", "5.125", "may be 5.125 or 5125 | write 5125, or 5.1250 with a fourth decimal"],
  [";", "5.1", "5,125", "may be 5.125 or 5125 | write 5125, or 5.1250 with a fourth decimal"],
  ["\t", "", "5,125", "may be 5.125 or 5125 | write 5125, or 5.1250 with a fourth decimal"],
  ["\t", "5.1", "5,125", "may be 5.125 or 5125 | write 5125, or 5.1250 with a fourth decimal"],
  [";", "", "1.234,5", "has marks between its thousands | write 1234,5"],
  [";", "", "1,234.5", "has marks between its thousands | write 1234.5"],
  [";", "", "1.234.567", "has marks between its thousands | write 1234567"],
  [
    ";",
    "",
    "1 234,5",
    "is not a number | write the number alone, without a unit and without marks between thousands",
  ],
])(
  "after %j and %j the number %s is read as it is, or said to be unclear",
  (delimiter, other, cell, expected) => {
    const line = (...cells: readonly string[]) => `${cells.join(delimiter)}\n`;
    const { log, diagnostics } = readLog(
      "baths.csv",
      line("time", "bath", "event", "waterMl") +
        (other === "" ? "" : line("2027-04-16T09:00", "six", "top-up", other)) +
        line("2027-04-16T09:10", "six", "top-up", cell),
    );
    if (typeof expected === "number") {
      expect(diagnostics).toEqual([]);
      expect(log?.rows.at(-1)).toMatchObject({ waterMl: expected });
    } else {
      const row = other === "" ? 2 : 3;
      const said = `row ${row}, column waterMl: "${cell.replaceAll('"', "")}"`;
      expect(diagnostics.map(({ message, help }) => `${message} | ${help}`)).toEqual([`${said} ${expected}`]);
      expect(log?.rows).toHaveLength(row - 2);
    }
  },
);

test("a time on the full minute is that of the row before it, or of the load that a reading names, in its minute", () => {
  const { rows: found, said } = rows(
    "2027-04-16T09:20:10,six,load,hook,,10,30,,,,,,,",
    "2027-04-16T09:30:27,six,load,hook,,20,30,,,,,,,",
    "16.04.27 09:30,six,measured,,,,,79,5.8,,,,,",
    "2027-04-16T09:30:40,ten,load,hook,,20,30,,,,,,,",
    "2027-04-16T09:31,six,load,hook,,30,30,,,,,,,",
    "2027-04-16T09:31:05,six,measured,,,,,79,,,,,,",
    "2027-04-16T09:30:00,six,measured,,,,,,,71,30,15,,",
    "2027-04-16T09:29,six,measured,,,,,,,72,30,15,,",
  );
  expect(said).toEqual([]);
  expect(found.map(({ time, row }) => [row, time.text.slice(11)])).toEqual([
    [2, "09:20:10"],
    [3, "09:30:27"],
    [4, "09:30:27"],
    [5, "09:30:40"],
    [6, "09:31:00"],
    [7, "09:31:05"],
  ]);
  expect(found.flatMap((row) => (row.event === "load" ? [row.lab?.[0]] : []))).toEqual([
    72,
    71,
    undefined,
    undefined,
  ]);
});

test("a time before the minute of the row above it goes back", () => {
  const { said } = rows(
    "2027-04-16T09:30:00,six,load,hook,,20,30,,,,,,,",
    "2027-04-16T09:29,six,load,hook,,20,30,,,,,,,",
  );
  expect(said).toHaveLength(1);
});

const text = fc.stringMatching(/^[a-z][a-z ,;"'=+-]{0,10}[a-z]$/);
/** Cells of a load, which takes the most columns. */
const load = fc.record({
  seconds: fc.integer({ min: 1, max: 3000 }).map((n) => n / 10),
  celsius: fc.integer({ min: 0, max: 1000 }).map((n) => n / 10),
  parts: fc.integer({ min: 1, max: 90 }),
  part: text,
  shade: text,
  note: text,
});

test("a row that was written reads back, whatever the delimiter, the decimal mark and the order of columns", () => {
  const order = fc.shuffledSubarray([...columnNames], { minLength: columnNames.length });
  const marks = fc.constantFrom(
    [",", "point"],
    [";", "comma"],
    [",", "comma"],
    ["\t", "comma"],
  ) as fc.Arbitrary<[string, "point" | "comma"]>;
  fc.assert(
    fc.property(load, order, marks, (cells, columns, [delimiter, decimal]) => {
      const style = { ...newStyle, columns, delimiter, decimal };
      const time = { text: "2027-04-16T09:30:00", seconds: 1 };
      const values: LogValues = { time, bath: "six", event: "load", ...cells };
      const { rows: found, said } = read(`${headerText(style)}\r\n${rowText(values, style)}\r\n`);
      expect(said).toEqual([]);
      expect(found).toMatchObject([{ bath: "six", event: "load", ...cells }]);
    }),
  );
});

test("text that a spreadsheet would run is made harmless, a negative number stays one", () => {
  const line = rowText({ note: "=1+1", a: -0.6 }, newStyle);
  expect(line).toContain("'=1+1");
  expect(line).toContain(",-0.6,");
});

test("three decimals are written as four, so that a spreadsheet keeps them where the decimal mark is the other one", () => {
  const cells = { volumeL: 5.125, L: 54.25, a: -0.625, b: 1 / 3, waterMl: 1200 };
  const style = { ...newStyle, columns: ["volumeL", "L", "a", "b", "waterMl"] };
  expect(rowText(cells, style)).toBe("5.1250,54.25,-0.6250,0.3333,1200");
  expect(rowText(cells, { ...style, delimiter: ";", decimal: "comma" })).toBe(
    "5,1250;54,25;-0,6250;0,3333;1200",
  );
});

test("every column has a meaning, and numbers have a range", () => {
  for (const name of columnNames) {
    expect(columnOf(name).meaning).not.toBe("");
    expect(columnOf(name).range === undefined).toBe(columnOf(name).kind !== "number");
  }
});

test("long lots that differ in their last digit only are two lots, and zeros in front do not hide that", () => {
  const lots = (...names: readonly string[]) =>
    read(
      `time,bath,event,dye,dyeLot\n${names.map((lot) => `2027-04-16T08:40,six,made-up,coral,${lot}`).join("\n")}\n`,
    ).said.filter((one) => one.includes("counts as another"));
  expect(lots("12345678901234567891", "12345678901234567892")).toEqual([]);
  expect(lots("012345678901234567891", "12345678901234567891")).toHaveLength(1);
  expect(lots("0", "00")).toHaveLength(1);
});

test("a row that says in every cell what another one says is named, whatever its event", () => {
  const load = "2027-04-16T09:30,six,load,hook,coral-light,24,31,79.5,,,,,,";
  const topUp = "2027-04-16T09:36,six,measured,,,,,79.5,5.8,,,,,";
  const twice = rows(load, topUp, load.replace("09:30", "09:40"), topUp.replace("09:36", "09:40"), topUp);
  expect(twice.said.filter((said) => said.includes("says the same"))).toEqual([
    "row 6, column time: row 3 says the same",
  ]);
  expect(rows(load, load).said).toEqual(["row 3, column time: row 2 says the same"]);
  expect(rows(load, load.replace(",24,", ",23,")).said).toEqual([]);
  expect(rows(load, load.replace(",six,", ",ten,")).said).toEqual([]);
});

test("a row on the full minute follows the last thing done in that minute, not a reading of it", () => {
  const { rows: found } = rows(
    "2027-04-16T09:30:45,six,load,hook,,24,31,,,,,,,",
    "2027-04-16T09:30:55,six,measured,,,,,,,60,30,10,,",
    "2027-04-16T09:30,six,measured,,,,,79.5,,,,,,",
  );
  expect(found.map(({ event, time }) => `${event} ${time.text.slice(11)}`)).toEqual([
    "load 09:30:45",
    "measured 09:30:45",
  ]);
});
