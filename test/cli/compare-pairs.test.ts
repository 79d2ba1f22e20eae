import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Io } from "../../src/cli/io.js";
import { compareLab } from "../../src/core/colour/difference/compare-colours.js";
import { widthOf } from "../../src/report/format/wrap.js";
import { decimals } from "../../src/report/words/digits.js";
import { runFake } from "./fake-io.js";

const good = `id,L1,a1,b1,L2,a2,b2,note
hook,50,-3,2,50.4,-2.8,2.5,first
clip,65.9,44.6,23,65.1,44.9,24.2,"a, b"
ring,20,0,0,24,1,-1,=1+1
`;
const bad = `L1;a1;b1;L2;a2;b2
50,5;-3;2;50,4;-2,8;2,5
50,5;x;2;50,4;-2,8
150;0;0;50;0;0

50.5;0;0;50;0;0
60;0;0;60;0;0;1
60;0;0;60;0,5;0;
`;

const pairs = (text: string, ...args: readonly string[]) =>
  runFake(["compare", "--pairs", "pairs.csv", ...args], { readFile: async () => Buffer.from(text) });

/** The file in pieces cut anywhere. */
const cutAt = (text: string, cuts: readonly number[]): Partial<Io> => ({
  read: async function* () {
    const bytes = Buffer.from(text);
    const ends = [...cuts].sort((a, b) => a - b).filter((cut) => cut < bytes.length);
    let from = 0;
    for (const end of [...ends, bytes.length]) {
      yield bytes.subarray(from, end);
      from = end;
    }
  },
});

for (const [format, ending] of [
  ["text", "txt"],
  ["json", "json"],
  ["csv", "csv"],
  ["tsv", "tsv"],
  ["ndjson", "ndjson"],
  ["markdown", "md"],
] as const)
  test(`compare --pairs gives the recorded ${format} of a file`, async () => {
    const { status, out, err } = await pairs(good, "--format", format);
    expect([status, err]).toEqual([0, ""]);
    await expect(out).toMatchFileSnapshot(`golden/compare/pairs.${ending}`);
    const judged = await pairs(good, "--format", format, "--tolerance", "1", "--formula", "cmc21");
    expect(judged.status).toBe(1);
    await expect(judged.out).toMatchFileSnapshot(`golden/compare/pairs-judged.${ending}`);
  });

test("compare --pairs keeps the columns of the file and adds those of the differences", async () => {
  const rows = parse((await pairs(good, "--format", "csv")).out, { columns: true }) as Record<
    string,
    string
  >[];
  expect(rows.map(({ id, note }) => [id, note])).toEqual([
    ["hook", "first"],
    ["clip", "a, b"],
    ["ring", "'=1+1"],
  ]);
  const { deltaE, deltaL, deltaC, deltaH } = compareLab([65.9, 44.6, 23], [65.1, 44.9, 24.2]);
  for (const [key, value] of Object.entries({ ...deltaE, deltaL, deltaC, deltaH }))
    expect(rows[1]![key]).toBe(decimals(value, 4));
});

test("compare --pairs says each bad row with its row and column, writes the others, and returns 2", async () => {
  const { status, out, err } = await pairs(bad, "--format", "csv");
  expect(err.split("\n")).toEqual([
    'error[csv-number]: pairs.csv: row 3, column a1: "x" is not a number (and 1 more in this row)',
    "error[pairs-range]: pairs.csv: row 4, column L1: L must lie in 0 to 100, not 150",
    'error[csv-number]: pairs.csv: row 6, column L1: "50.5" is not a number; write a decimal point in every number of the file, or a decimal comma in every one',
    "error[csv-row-long]: pairs.csv: row 7: the row has more cells than the header; numbers with a decimal comma need ; between the cells, or quotes",
    "",
  ]);
  expect([status, out.split("\r\n").length]).toEqual([2, 4]);
  for (const format of ["json", "ndjson", "tsv", "text", "markdown"]) {
    const other = await pairs(bad, "--format", format);
    expect([format, other.status, other.err]).toEqual([format, 2, err]);
    expect(other.out.length).toBeGreaterThan(100);
  }
});

test("compare --pairs shows 100 bad rows, a line each, and counts the rest", async () => {
  const rows = (bad: number) => `L1,a1,b1,L2,a2,b2\n${"x,y,0,51,0,0\n50,0,0,51,0,0\n".repeat(bad)}`;
  for (const format of ["csv", "text"]) {
    const all = await pairs(rows(100), "--format", format);
    expect([all.status, all.err.trimEnd().split("\n").length]).toEqual([2, 100]);
    const one = await pairs(rows(101), "--format", format);
    expect(one.err).toMatch(/\nerror\[pairs-more\]: pairs.csv: 1 more row is not shown\n$/);
    const many = await pairs(rows(180), "--format", format, "--tolerance", "9");
    const lines = many.err.split("\n");
    expect(lines[99]).toMatch(/^error\[csv-number\]: pairs.csv: row 200, column L1: "x" is not a number/);
    expect(lines[100]).toBe("error[pairs-more]: pairs.csv: 80 more rows are not shown");
    expect(many.out + many.err).toContain("180 rows could not be read");
  }
});

test("compare --pairs reads a CRLF header over LF rows", async () => {
  const text = "L1,a1,b1,L2,a2,b2\r\n50,0,0,51,0,0\n50,0,0,52,0,0\n";
  const { status, out } = await pairs(text, "--format", "csv");
  expect([status, out]).toEqual([0, (await pairs(text.replaceAll("\r", ""), "--format", "csv")).out]);
});

test("compare --pairs writes the decimal sign asked for, whatever the file has", async () => {
  const { out } = await pairs(bad, "--format", "csv", "--decimal", "comma");
  expect(out.split("\r\n")[1]).toMatch(/^50,5;-3;2;50,4;-2,8;2,5;0,5\d+;/);
  expect((await pairs(bad, "--format", "csv")).out.split("\r\n")[1]).toMatch(/^50.5,-3,2,50.4,-2.8,2.5,0.5/);
});

test("compare --pairs reads quoted decimal commas between commas, and tabs", async () => {
  const quoted = 'L1,a1,b1,L2,a2,b2\n"50,5",0,0,50,0,0\n';
  const tabs = "L1\ta1\tb1\tL2\ta2\tb2\n50,5\t0\t0\t50\t0\t0\n";
  const plain = "L1,a1,b1,L2,a2,b2\n50.5,0,0,50,0,0\n";
  const wanted = (await pairs(plain, "--format", "csv")).out;
  expect(wanted).toContain("50.5,0,0,50,0,0,0.5000,");
  expect((await pairs(quoted, "--format", "csv")).out).toBe(wanted);
  expect((await pairs(tabs, "--format", "csv")).out).toBe(wanted);
});

test("compare --pairs takes an unquoted decimal comma between commas for the fault it is", async () => {
  const { status, out, err } = await pairs("L1,a1,b1,L2,a2,b2\n50,5,0,0,50,0,0\n", "--format", "ndjson");
  expect([status, out]).toEqual([2, ""]);
  expect(err).toMatch(/^error\[csv-row-long\].*numbers with a decimal comma need ; between the cells/);
});

test("compare --pairs refuses a header that it cannot use, and writes nothing", async () => {
  for (const [header, ...said] of [
    ["id,L1,a1,b1,L2,a2", "row 1: there is no column b2"],
    ["L1,a1,b1,L2,a2,b2,L1", "row 1: there are two columns L1"],
    ["L1,a1,b1,L2,a2,b2,cie76", "row 1: column cie76 has the name of one that is added"],
    ["", "there is no header row"],
  ])
    for (const format of ["csv", "json", "text"]) {
      const { status, out, err } = await pairs(`${header}\n`, "--format", format);
      expect([header, status, out]).toEqual([header, 2, ""]);
      for (const part of said) expect(err.replace(/\n +/g, " ")).toContain(`pairs.csv: ${part}`);
    }
});

test("compare --pairs gives a header and no rows for a file without rows", async () => {
  const { status, out } = await pairs("L1,a1,b1,L2,a2,b2\n", "--format", "json", "--tolerance", "1");
  expect([status, JSON.parse(out).pairs, JSON.parse(out).summary]).toEqual([
    0,
    [],
    { pairs: 0, unread: 0, passed: 0 },
  ]);
  expect((await pairs("L1,a1,b1,L2,a2,b2\n", "--format", "csv")).out).toMatch(
    /^L1,a1.*deltaH,ciede2000Textile\r\n$/,
  );
});

test("compare --pairs says how many pass on stderr where the result is rows, and is silent under --quiet", async () => {
  const { err } = await pairs(good, "--format", "csv", "--tolerance", "1", "--formula", "cmc21");
  expect(err).toBe("2 of 3 pairs within 1 by CMC(2:1): 1 not.\n");
  expect((await pairs(good, "--format", "csv", "--tolerance", "1", "--quiet")).err).toBe("");
  expect((await pairs(good, "--format", "csv", "--tolerance", "100")).status).toBe(0);
  const text = await pairs(good, "--tolerance", "1", "--formula", "cmc21");
  expect([text.err, text.out.includes(err)]).toEqual(["", true]);
});

test("compare --pairs --fail-fast ends at the first bad row, and makes no file", async () => {
  const { status, out, err } = await pairs(bad, "--format", "ndjson", "--fail-fast");
  expect([status, out.split("\n").length, err.match(/^error/gm)?.length]).toEqual([2, 2, 1]);
  const file = await pairs(bad, "--format", "csv", "--fail-fast", "--out", "made.csv");
  expect([file.status, file.out, file.files.size]).toEqual([2, "", 0]);
  expect((await pairs(bad, "--fail-fast")).out).toBe("");
});

test("compare --pairs --out makes the file that stdout would get", async () => {
  for (const format of ["csv", "json", "text"]) {
    const direct = await pairs(bad, "--format", format);
    const file = await pairs(bad, "--format", format, "--out", "made");
    expect([file.status, file.out, [...file.files]]).toEqual([2, "", [["made", direct.out]]]);
  }
});

test("compare --pairs gives the same however the file is cut into pieces, in every format", async () => {
  for (const format of ["csv", "ndjson", "json", "text"]) {
    const whole = await pairs(bad + good.replaceAll(/^.*,/gm, ""), "--format", format);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(bad.length), { maxLength: 30 }), async (cuts) => {
        const cut = await runFake(
          ["compare", "--pairs", "pairs.csv", "--format", format],
          cutAt(bad + good.replaceAll(/^.*,/gm, ""), cuts),
        );
        expect([cut.status, cut.out, cut.err]).toEqual([whole.status, whole.out, whole.err]);
      }),
      { numRuns: 20 },
    );
  }
});

test("compare --pairs streams the rows that it gives at once as a table", async () => {
  const row = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 6, maxLength: 6 });
  await fc.assert(
    fc.asyncProperty(fc.array(row, { maxLength: 300 }), async (rows) => {
      const text = `L1,a1,b1,L2,a2,b2\n${rows.map((cells) => `${cells.join()}\n`).join("")}`;
      const { out } = await pairs(text, "--format", "ndjson");
      const lines = out.split("\n").filter(Boolean);
      expect(lines.map((line) => JSON.parse(line))).toEqual(
        rows.map(([L1, a1, b1, L2, a2, b2], i) =>
          JSON.parse(
            JSON.stringify({
              row: i + 2,
              standard: [L1, a1, b1],
              sample: [L2, a2, b2],
              ...compareLab([L1!, a1!, b1!], [L2!, a2!, b2!]),
            }),
          ),
        ),
      );
    }),
    { numRuns: 20 },
  );
});

test("compare --pairs stops reading when the reader of its result leaves", async () => {
  let taken = 0;
  let closed = false;
  const { status, err } = await runFake(["compare", "--pairs", "-", "--format", "csv"], {
    read: async function* () {
      try {
        yield Buffer.from("L1,a1,b1,L2,a2,b2\n");
        for (;;) {
          taken++;
          yield Buffer.from("50,0,0,51,0,0\n".repeat(500));
        }
      } finally {
        closed = true;
      }
    },
    write: async () => taken < 3,
  });
  expect([status, err, taken, closed]).toEqual([0, "", 3, true]);
});

test("compare --pairs waits for its output before it reads on", async () => {
  let ahead = 0;
  let most = 0;
  await runFake(["compare", "--pairs", "-", "--format", "csv"], {
    read: async function* () {
      yield Buffer.from("L1,a1,b1,L2,a2,b2\n");
      for (let i = 0; i < 50; i++) {
        most = Math.max(most, ++ahead);
        yield Buffer.from("50,0,0,51,0,0\n".repeat(100));
      }
    },
    write: async () => {
      await new Promise((settle) => setTimeout(settle, 1));
      ahead = 0;
      return true;
    },
  });
  expect(most).toBeLessThanOrEqual(2);
});

test("compare --pairs leaves no file where it cannot be written, or the input cannot be read", async () => {
  const full = Object.assign(new Error("full"), { code: "ENOSPC" });
  let discarded = 0;
  const fails = (at: "write" | "commit") => ({
    readFile: async () => Buffer.from(good),
    replaceFile: async () => ({
      write: async () => {
        if (at === "write") throw full;
      },
      commit: async () => {
        if (at === "commit") throw full;
      },
      discard: async () => {
        discarded++;
      },
    }),
  });
  const args = ["compare", "--pairs", "pairs.csv", "--format", "csv", "--out", "made.csv"];
  for (const at of ["write", "commit"] as const) {
    const { status, err } = await runFake(args, fails(at));
    expect([status, err]).toEqual([2, "error[write]: made.csv was not written: the disk is full\n"]);
  }
  expect(discarded).toBe(2);
  const missing = await runFake(args);
  expect([missing.status, missing.files.size, missing.err]).toEqual([
    2,
    0,
    "error[read]: pairs.csv cannot be read: there is no such file\n",
  ]);
});

test("compare --pairs shows the colours as blocks on a terminal with every colour, within its width", async () => {
  const { out } = await runFake(["compare", "--pairs", "pairs.csv"], {
    readFile: async () => Buffer.from(good),
    outIsTerminal: true,
    columns: 80,
    env: { COLORTERM: "24bit" },
  });
  const blocks = out.split("\u001b[48;2;").slice(1);
  expect(blocks.map((text) => text.slice(text.indexOf("m"), text.indexOf("[49m")))).toEqual(
    Array(6).fill(`m${" ".repeat(7)}\u001b`),
  );
  for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(80);
});
