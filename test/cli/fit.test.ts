import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { runFake } from "./fake-io.js";

const file = (text: string | Uint8Array) => ({
  readFile: async () => (typeof text === "string" ? new TextEncoder().encode(text) : text),
});
const fitted = (text: string | Uint8Array, ...args: readonly string[]) =>
  runFake(["fit", "readings.csv", ...args], file(text));
const data = async (text: string, ...args: readonly string[]) =>
  JSON.parse((await fitted(text, "--format", "json", ...args)).out);

/** First order, plateau 40, half time 42 s, with made-up noise. */
const readings =
  "time_s,uptake_mg_per_g,note\n10,6.44,\n20,10.94,\n40,19.66,\n80,29.81,\n160,37.02,again\n320,39.91,\n";
// source: batesWatts1988 table A1.4
const marske = "time_d;ks\r\n1;8,3\r\n2;10,3\r\n3;19,0\r\n4;16,0\r\n5;15,6\r\n7;19,8\r\n";

for (const [name, text, args] of [
  ["first-order", readings, []],
  ["second-order-asked", readings, ["--law", "second-order"]],
  ["marske", marske, []],
] as const)
  test(`fit gives the recorded report for ${name} in every format`, async () => {
    for (const [format, ending] of [
      ["text", "txt"],
      ["json", "json"],
      ["csv", "csv"],
      ["tsv", "tsv"],
      ["markdown", "md"],
      ["html", "html"],
      ["svg", "svg"],
    ] as const) {
      const { status, out } = await fitted(text, ...args, "--format", format);
      expect(status).toBe(0);
      await expect(out).toMatchFileSnapshot(`golden/fit/${name}.${ending}`);
    }
  });

test("fit gives the published constants of the first-order law, in the unit of the time column", async () => {
  const told = await data(marske, "--law", "first-order");
  // source: batesWatts1988 table A1.4, fitted: 19.1426 (2.4959), 0.53109 (0.20308), residual sum 25.990267
  expect(told).toMatchObject({ schema: "dipwright/fit@1", law: "first-order", timeUnit: "d", points: 6 });
  expect(told.parameters.plateau).toBeCloseTo(19.1426, 3);
  expect(told.parameters.rate).toBeCloseTo(0.53109, 5);
  expect(told.standardErrors.plateau).toBeCloseTo(2.4959, 3);
  expect(told.standardErrors.rate).toBeCloseTo(0.20308, 4);
  expect(told.residualSum).toBeCloseTo(25.990267, 5);
  expect(told.parameters.ratePerSecond * 86400).toBeCloseTo(told.parameters.rate, 12);
  expect(told.halfTime).toBeCloseTo(Math.LN2 / told.parameters.rate, 12);
  expect(told.halfTimeSeconds).toBeCloseTo(told.halfTime * 86400, 6);
});

test("fit has the keys that scripts rely on, and all four laws", async () => {
  const told = await data(readings);
  expect(Object.keys(told)).toEqual(
    expect.arrayContaining([
      "law",
      "parameters",
      "standardErrors",
      "halfTime",
      "residualSum",
      "aicc",
      "perLaw",
      "warnings",
    ]),
  );
  expect(told.perLaw.map(({ law }: { law: string }) => law)).toEqual([
    "first-order",
    "second-order",
    "parabolic",
    "cegarra-puente",
  ]);
  const { halfTime, aicc } = told.perLaw[0];
  expect(told).toMatchObject({
    law: "first-order",
    halfTime,
    aicc,
    toldApart: { told: "yes", nearest: "second-order" },
  });
});

test("fit gives the same constants whatever parts the cells, ends the lines, marks the decimals", async () => {
  const { perLaw, warnings } = await data(readings);
  const quoted = readings.replace(/(\d+)\.(\d+)/g, '"$1,$2"');
  for (const other of [
    readings.replaceAll(",", "\t"),
    readings.replaceAll(",", ";").replaceAll(".", ","),
    quoted,
    `\ufeff${readings.replaceAll("\n", "\r\n")}`,
    readings.replaceAll("\n", "\r"),
    readings.replace("again", '"2"" pin, ""again"""').replace("\n40", "\n\n,,\n40"),
  ])
    expect(await data(other)).toMatchObject({ perLaw, warnings });
});

test("fit reads minutes as it reads seconds, with rate and half time per minute", async () => {
  const inMinutes = readings.replace("time_s", "time_min").replace(/^\d+/gm, (s) => String(Number(s) / 60));
  const [seconds, minutes] = [await data(readings), await data(inMinutes)];
  expect(minutes.timeUnit).toBe("min");
  expect(minutes.parameters.rate / seconds.parameters.rate).toBeCloseTo(60, 9);
  expect(minutes.halfTimeSeconds).toBeCloseTo(seconds.halfTime, 9);
});

test("fit reads stdin as -", async () => {
  const { status, out } = await runFake(["fit", "-", "--format", "csv"], {
    readStdin: async () => new TextEncoder().encode(readings),
  });
  expect([status, out]).toEqual([0, (await fitted(readings, "--format", "csv")).out]);
});

test("fit takes the column asked for", async () => {
  const two = "time_s,ks,uptake\n0,0,0\n10,1,2\n20,1.8,3.7\n40,2.9,6.1\n80,3.9,8\n";
  expect((await data(two, "--column", "uptake")).readingColumn).toBe("uptake");
  expect((await data(two, "--column", "ks")).parameters.plateau).toBeLessThan(6);
});

test("fit gives no line wider than a terminal of 60 to 100 columns", async () => {
  for (const columns of [60, 72, 80, 100]) {
    const { out } = await runFake(["fit", "readings.csv"], { ...file(readings), columns });
    for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns);
  }
});

test("fit says half time, law, and how sure the law is in its first sentences", async () => {
  const first = async (text: string, ...args: string[]) =>
    (await fitted(text, ...args)).out.split("\n\n")[1]!.replace(/\s+/g, " ");
  expect(await first(readings)).toBe(
    "Half of the plateau is taken up after 41.3 s, 90 % of it after 2 min 17 s. The first-order law fits best (AICc 18.1 lower than the next), and the readings tell it apart from the second-order law.",
  );
  expect(await first(readings, "--law", "second-order")).toContain(
    "The second-order law was asked for; the first-order law fits better (AICc 18.1 lower).",
  );
  expect(await first(marske)).toContain(
    "No plateau shows, so there is no half time. The parabolic law fits best (AICc 8.3 lower than the next), and the readings speak for it, but do not rule out the first-order law, by which the half time is 31 h 19 min.",
  );
  expect(await first(readings.split("\n").slice(0, 5).join("\n"))).toContain(
    "4 readings are too few to tell the laws apart",
  );
});

const refusal = async (text: string | Uint8Array, ...args: readonly string[]) => {
  const { status, out, err } = await fitted(text, ...args);
  expect([status, out]).toEqual([2, ""]);
  return err;
};

test("fit names line, column and cell of every cell that is not a number", async () => {
  const err = await refusal("time_s,ks\n1,2\n\n2,x3\n 3 s,4\n5,NaN\n");
  expect(err).toContain(
    'readings.csv:4:3\nerror[csv-number]: row 4, column ks: "x3" is not a number\n   4 | 2,x3\n     |   ^^\n',
  );
  expect(err).toContain(
    'readings.csv:5:2\nerror[csv-number]: row 5, column time_s: "3 s" is not a number\n   5 |  3 s,4\n     |  ^^^\n',
  );
  expect(err).toContain('readings.csv:6:3\nerror[csv-number]: row 6, column ks: "NaN"');
  expect(err).toMatch(/\n3 errors\n$/);
});

test("fit counts lines as an editor does where a cell holds several", async () => {
  const err = await refusal('time_s,ks,note\n1,2,"two\nlines; ""x"", y"\n2,a,"b\n"\n3,"b,c",\n');
  expect(err).toContain('readings.csv:4:3\nerror[csv-number]: row 3, column ks: "a"');
  expect(err).toContain('readings.csv:6:3\nerror[csv-number]: row 4, column ks: "b,c"');
  expect(err).toContain('   6 | 3,"b,c",\n     |   ^^^^^\n');
});

test.each([
  ["an empty file", "", "csv-empty"],
  ["a batch file", "tanks:\n  small:\n    volume: 6 L\n", "no time column among"],
  ["a file of other columns", "foo,bar\n1,2\n", 'no time column among "foo", "bar"'],
  ["a time without a unit", "time,ks\n1,2\n", "the time column has no unit"],
  ["two columns of readings", "time_s,ks,uptake\n1,2,3\n", "or say --column NAME"],
  ["a header alone", "time_s,uptake\n", "0 points: two constants need at least 3"],
  ["one row", "time_s,uptake\n10,2\n", "1 points: two constants need at least 3"],
  ["a negative time", "time_s,uptake\n-1,2\n2,3\n3,4\n", "readings.csv:2:1\nerror[fit-negative-time]"],
  ["uptake that falls", "time_s,uptake\n1,9\n2,6\n4,3\n", "fit-falls"],
  ["no level yet", "time_s,uptake\n1,1\n2,2\n3,3\n", "fit-no-plateau"],
  ["a quote left open", 'time_s,"ks\n1,2\n', "a quote is not closed"],
  ["a decimal comma between commas", "time_s,ks\n1,1,5\n2,2,0\n", "need ; between the cells"],
  ["two decimal signs", "time_s;ks\n1;1,5\n2;2.0\n4;3\n", "readings.csv:3:3\nerror[csv-number]"],
] as const)("fit refuses %s and says why", async (_what, text, said) => {
  expect((await refusal(text)).replace(/[^\S\n]*\n {4,}(?=[\w"])/g, " ")).toContain(said);
});

test("fit shows 100 faults of a file and counts the rest", async () => {
  const rows = (bad: number) => `time_s,ks\n${"x,1\n".repeat(bad)}`;
  expect(await refusal(rows(100))).toMatch(/\n100 errors\n$/);
  const err = await refusal(rows(180));
  expect(err).toContain("error[table-more]: 80 more faults are not shown\n\n101 errors\n");
});

test("fit never sends anyone to an option that it has not", async () => {
  for (const text of ["time_s,ks\n1,1,5\n", "time_s;ks\n1;1,5\n2;2.0\n"])
    expect(await refusal(text)).not.toContain("--decimal");
});

test("fit refuses bytes that are not text, files that are too large or do not exist, and unknown options", async () => {
  expect(await refusal(new Uint8Array([0x7f, 0x45, 0, 1]))).toContain(
    "readings.csv: this is not text in UTF-8",
  );
  expect(await refusal(new Uint8Array([0x74, 0xe9, 0x2c]))).toContain(
    "readings.csv: this is not text in UTF-8",
  );
  expect(await refusal("é".repeat(2 * 1024 * 1024 + 1))).toContain("readings.csv is larger than 4 MiB");
  expect((await runFake(["fit", "none.csv"])).err).toContain(
    "none.csv cannot be read: there is no such file",
  );
  expect(await refusal(readings, "--set", "a=b")).toContain("nothing to set");
  expect(await refusal(readings, "--law", "third-order")).toMatch(/Allowed\s+choices are first-order/);
  expect(await refusal(readings, "--column", "uptake_mg_per_kg")).toContain("did you mean uptake_mg_per_g?");
  expect(await refusal(readings, "--column", "time_s")).toContain('"time_s" is the time');
});

test("fit refuses a law whose rate the readings leave open, and names one that fits", async () => {
  const root = `time_s,uptake\n${[1, 4, 9, 16, 25, 36].map((t) => `${t},${Math.sqrt(t)}`).join("\n")}\n`;
  expect((await data(root)).law).toBe("parabolic");
  const err = await refusal(root, "--law", "cegarra-puente");
  expect(err.replace(/\s+/g, " ")).toContain("error[fit-law-open]");
  expect(err.replace(/\s+/g, " ")).toContain("take the parabolic law, which fits");
});

test("fit with --strict fails on a warning", async () => {
  expect((await fitted(readings, "--strict")).status).toBe(0);
  expect((await fitted(marske, "--strict")).status).toBe(1);
});
