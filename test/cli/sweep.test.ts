import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { readVaried, splitValues, spreadRange } from "../../src/cli/sweep/vary.js";
import { widthOf } from "../../src/report/format/wrap.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const sweep = (...args: string[]) => runFake(["sweep", "restock.yaml", ...args], folderIo(examples));
const vary = (...keys: string[]): string[] => keys.flatMap((key) => ["--vary", key]);
const rowsOf = (csv: string): Record<string, string>[] => parse(csv, { columns: true });
const json = async (...args: string[]) => JSON.parse((await sweep(...args, "--format", "json")).out);

describe("sweep", () => {
  test("has one row a combination, the last key varying first", async () => {
    const { status, out } = await sweep(
      ...vary("tanks.six.cover=lid,none", "handling.drain=10 s,20 s,30 s"),
      "--format",
      "csv",
    );
    expect(status).toBe(0);
    expect(rowsOf(out).map((row) => [row["tanks.six.cover"], row["handling.drain_s"]])).toEqual([
      ["lid", "10"],
      ["lid", "20"],
      ["lid", "30"],
      ["none", "10"],
      ["none", "20"],
      ["none", "30"],
    ]);
  });

  test("gives each combination the numbers that plan gives with --set", async () => {
    const { combinations } = await json(
      ...vary("tanks.six.volume=5.5 L,6 L", "dyes.brick.dilution=1:9,1:8", "baths.0.topUp=none,strength"),
    );
    expect(combinations).toHaveLength(8);
    for (const { values, results } of combinations) {
      const sets = Object.entries(values).flatMap(([key, value]) => ["--set", `${key}=${value}`]);
      const { out } = await runFake(
        ["plan", "restock.yaml", ...sets, "--format", "json"],
        folderIo(examples),
      );
      const plan = JSON.parse(out);
      const dips = plan.baths.flatMap((bath: { loads: { dipSeconds: number }[] }) =>
        bath.loads.map(({ dipSeconds }) => dipSeconds),
      );
      expect(results).toMatchObject({
        cost: plan.totals.cost,
        costPerPart: plan.totals.cost / plan.totals.good,
        orderCostPerPart: plan.orders.map((order: { costPerPart: number }) => order.costPerPart),
        minutes: plan.totals.minutes,
        operatorMinutes: plan.totals.operatorMinutes,
        loads: plan.totals.loads,
        kWh: plan.totals.kWh,
        longestDipSeconds: Math.max(...dips),
        shortestDipSeconds: Math.min(...dips),
        warnings: plan.warnings.length + plan.exceeded.length,
        restsOnAssumed: plan.restsOnAssumed,
        baths: plan.baths.map(({ life }: { life: { loads: number; parts: number } }) => ({
          lifeLoads: life.loads,
          lifeParts: life.parts,
        })),
      });
    }
  });

  test("gives a combination that cannot be worked its error's code, works the others, and warns once a kind", async () => {
    const { status, out, err } = await sweep(
      ...vary("tanks.six.heater=150 W,600 W", "parts.hook.mass=6.4 g,400 g"),
      "--format",
      "csv",
    );
    expect(status).toBe(0);
    expect(rowsOf(out).map(({ error, cost_EUR }) => [error, cost_EUR === ""])).toEqual([
      ["heater-too-weak", true],
      ["part-too-large", true],
      ["", false],
      ["part-too-large", true],
    ]);
    expect(err.match(/warning\[combination-failed\]/g)).toHaveLength(2);
    expect(err.replace(/\s+/g, " ")).toContain("2 of 4 combinations cannot be worked (part-too-large)");
  });

  test("counts a value that the schema refuses as a combination that cannot be worked", async () => {
    const { combinations } = await json(...vary("tanks.six.volume=6 L,6,6 kg"));
    expect(combinations.map((one: { error: { code: string } | null }) => one.error?.code ?? null)).toEqual([
      null,
      "unit-missing",
      "unit-wrong",
    ]);
  });

  test("says the errors and writes nothing where no combination can be worked", async () => {
    const { status, out, err, files } = await sweep(...vary("tanks.six.volum=6 L,7 L"), "--out", "a.csv");
    expect([status, out, files.size]).toEqual([2, "", 0]);
    expect(err).toContain("did you mean volume?");
    expect(err).toContain("--vary:1:1");
  });

  test("names a column by a whole name that holds a dot", async () => {
    const { out } = await sweep(
      "--set",
      'parts."clip v1.2"={ mass: 5 g, area: 40 cm2 }',
      ...vary('parts."clip v1.2".mass=5 g,6 g', "parts.hook.mass=6 g,7 g"),
      "--result",
      "cost",
    );
    expect(out).toMatch(/^ *"clip v1\.2"\.mass +hook\.mass/m);
  });

  test("varies choices, lists and maps as --set writes them", async () => {
    const { combinations } = await json(
      ...vary(
        "baths.0.start=fresh,{ volume: 5.9 L, strength: 60 % }",
        "shades.brick-deep.lab=[44.0, 38.3, 13.5],[46.0, 38.0, 13.0]",
      ),
    );
    const hands = combinations.map(
      (one: { results: { operatorMinutes: number } }) => one.results.operatorMinutes,
    );
    expect(new Set(hands).size).toBe(4);
    expect(hands[2]).toBeGreaterThan(hands[0]);
  });

  test("leaves swatches where they were dipped, so that a thinner bath dips longer; warns where that is not said", async () => {
    const light = ["--set", "shades.brick-deep={ dye: brick, time: 30 s }", "--format", "json"];
    const kept = await sweep(...vary("dyes.brick.dilution=1:9,1:19"), ...light);
    expect(kept.err).not.toContain("swatches-move");
    const [fresh, thin] = JSON.parse(kept.out).combinations;
    expect(thin.results.shortestDipSeconds).toBeGreaterThan(1.8 * fresh.results.shortestDipSeconds);
    const moved = await sweep(...vary("dyes.teal.temperature=82 °C,78 °C"));
    expect([moved.status, moved.err]).toEqual([0, expect.stringContaining("warning[swatches-move]")]);
  });

  test("keeps --set for all combinations", async () => {
    const one = await json(...vary("handling.drain=10 s,20 s"), "--set", "rates.labour=0 /h");
    const other = await json(...vary("handling.drain=10 s,20 s"));
    expect(one.combinations[0].results.cost).toBeLessThan(other.combinations[0].results.cost);
  });

  test("shows the columns asked for, with or without their unit, and refuses others by name", async () => {
    const { out } = await sweep(
      ...vary("handling.drain=10 s,20 s"),
      "--result",
      "longest_dip,cost,order_2_cost_per_part_EUR",
      "--format",
      "csv",
    );
    expect(Object.keys(rowsOf(out)[0]!)).toEqual([
      "handling.drain_s",
      "longest_dip_s",
      "cost_EUR",
      "order_2_cost_per_part_EUR",
    ]);
    const { status, err } = await sweep(...vary("handling.drain=10 s,20 s"), "--result", "profit");
    expect([status, err]).toEqual([2, expect.stringContaining('there is no result "profit"')]);
  });

  test("has the values as they were written in text and JSON, and as numbers in the decimal sign asked for in CSV", async () => {
    const args = vary("dyes.brick.dilution=1:9,1:8.5", "handling.drain=10.5 s,1 min");
    expect((await sweep(...args)).out).toMatch(/^1:9 +10\.5 s /m);
    const { combinations } = await json(...args);
    expect(combinations[3].values).toEqual({ "dyes.brick.dilution": "1:8.5", "handling.drain": "1 min" });
    const { out } = await sweep(...args, "--result", "loads", "--format", "csv", "--decimal", "comma");
    expect(out.split("\r\n").slice(0, 2)).toEqual([
      "dyes.brick.dilution_percent;handling.drain_s;loads",
      expect.stringMatching(/^10;10,5;\d+$/),
    ]);
  });

  for (const columns of [60, 80])
    test(`keeps every line within ${columns} columns`, async () => {
      const { out } = await runFake(
        ["sweep", "restock.yaml", ...vary("tanks.six.cover=lid,none", "tanks.six.heater=150 W,600 W")],
        { ...folderIo(examples), columns, outIsTerminal: true, env: { NO_COLOR: "1" } },
      );
      for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns);
    });

  const misuses: Readonly<Record<string, readonly string[]>> = {
    "--vary is needed": [],
    "no key or no values": vary("volume"),
    "one of the values is empty": vary("handling.drain=10 s,,20 s"),
    "is given twice": vary("handling.drain=10 s", "handling.drain=20 s"),
    "combinations are too many": vary("handling.drain=1 s..9 s/400", "handling.rinse=1 s..9 s/400"),
  };
  for (const [said, args] of Object.entries(misuses))
    test(`says "${said}" with status 2`, async () => {
      const { status, err } = await sweep(...args);
      expect([status, err.replace(/\s+/g, " ")]).toEqual([2, expect.stringContaining(said)]);
    });
});

describe("readVaried", () => {
  test("takes a name with a dot or an equals sign in quotes", async () => {
    const { varied, diagnostics } = await readVaried('parts."a=b v1.2".mass=5 g,6 g');
    expect(diagnostics).toEqual([]);
    expect(varied!.key).toBe('parts."a=b v1.2".mass');
    expect(varied!.values.map(({ text }) => text)).toEqual(["5 g", "6 g"]);
    expect(varied!.values[1]!.change.steps.map(({ name }) => name)).toEqual(["parts", "a=b v1.2", "mass"]);
  });

  test("parts values at commas outside of brackets, braces and quotes", () => {
    expect(splitValues(`a,"b,c",[1,2],{ x: [3,4], y: 5 }`)).toEqual([
      "a",
      `"b,c"`,
      "[1,2]",
      "{ x: [3,4], y: 5 }",
    ]);
  });

  test("spreads a range at even steps with both ends, and leaves anything else", () => {
    expect(spreadRange("80 °C..60 °C/3")).toEqual(["80 °C", "70 °C", "60 °C"]);
    expect(spreadRange("0.1..0.3 mL/dm2/3")).toEqual(["0.1 mL/dm2", "0.2 mL/dm2", "0.3 mL/dm2"]);
    for (const text of ["1..2", "10 s..60 min/6", "a..b/3", "1 s..2 s/1"])
      expect(spreadRange(text)).toEqual([text]);
  });

  test("reads each value as YAML once", async () => {
    const { varied } = await readVaried("a.b=1,[2]");
    expect(varied!.values.map(({ change }) => change.source.plain)).toEqual([1, [2]]);
  });
});

describe("the three questions of the examples", () => {
  const readme = readFileSync(new URL("../../examples/README.md", import.meta.url), "utf8");
  const section = /## Three questions of an owner([\s\S]*)/.exec(readme)![1]!;
  const commands = [...section.matchAll(/^dipwright (.*)$/gm)].map((match) =>
    (match[1]!.match(/(?:[^\s']|'[^']*')+/g) ?? []).map((word) => word.replace(/'/g, "")),
  );
  const answers = () =>
    Promise.all(
      commands.map(async (args) =>
        rowsOf((await runFake([...args, "--format", "csv"], folderIo(examples))).out),
      ),
    );

  test("are answered with the numbers that the commands give", async () => {
    const [tanks, covers, dilutions] = await answers();
    for (const row of tanks!) expect(section).toContain(row.cost_EUR);
    const at = (rows: Record<string, string>[], row: number, key: string): number => Number(rows[row]![key]);
    const gain = (rows: Record<string, string>[], key: string, from: number, to: number): number =>
      at(rows, from, key) - at(rows, to, key);
    expect([gain(tanks!, "loads", 0, 1), Math.round(gain(tanks!, "operator_minutes", 0, 1))]).toEqual([
      4, 11,
    ]);
    expect([gain(tanks!, "loads", 0, 2), Math.round(-gain(tanks!, "operator_minutes", 0, 2))]).toEqual([
      0, 28,
    ]);
    expect(-gain(tanks!, "energy_kWh", 0, 1)).toBeCloseTo(0.69, 2);
    expect(Math.round(gain(covers!, "minutes", 0, 1))).toBe(17);
    expect(gain(covers!, "energy_kWh", 0, 1)).toBeCloseTo(0.327, 3);
    expect(gain(covers!, "energy_kWh", 0, 2)).toBeCloseTo(0.44, 2);
    expect(gain(covers!, "cost_EUR", 0, 1)).toBeCloseTo(0.78, 6);
    expect(dilutions!.map(({ shortest_dip_s }) => shortest_dip_s)).toEqual(["24.5", "31.6", "51.7", "76.7"]);
    expect([at(dilutions!, 1, "dye_used_mL"), at(dilutions!, 3, "dye_used_mL")]).toEqual([17.5, 9.7]);
    expect(Math.round(-gain(dilutions!, "operator_minutes", 1, 3))).toBe(15);
    expect(Math.round(-gain(dilutions!, "cost_EUR", 1, 3))).toBe(8);
  });
});
