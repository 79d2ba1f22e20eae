import { describe, expect, test } from "vitest";
import { compareCosts } from "../../src/core/cost/history/compare.js";
import { costBatch } from "../../src/core/cost/history/snapshot.js";
import { spread } from "../../src/core/cost/spread/spread.js";
import type { Batch } from "../../src/core/model/batch.js";
import { planBatch } from "../../src/core/plan/plan.js";
import type { Plan } from "../../src/core/plan/plan-model.js";
import { spreadOutputs } from "../../src/core/plan/results/spread-outputs.js";
import { costChangeReport } from "../../src/report/cost/change-report.js";
import { costRows } from "../../src/report/cost/cost-rows.js";
import type { CostEntry } from "../../src/report/cost/entry.js";
import { readCostSnapshot } from "../../src/report/cost/read-snapshot.js";
import { costReportOf } from "../../src/report/cost/report.js";
import { csv, csvRows } from "../../src/report/format/csv.js";
import { json, jsonRows } from "../../src/report/format/json.js";
import { markdown } from "../../src/report/format/markdown.js";
import { ndjsonRows } from "../../src/report/format/ndjson.js";
import { plain } from "../../src/report/format/paint.js";
import type { RowFormat } from "../../src/report/format/row-format.js";
import { text } from "../../src/report/format/text.js";
import type { Report } from "../../src/report/report.js";
import { selectColumns } from "../../src/report/select-columns.js";
import { batch } from "../core/plan/sample.js";

const style = { delimiter: ",", decimal: ".", bom: false } as const;
const sold: Batch = {
  ...batch,
  date: "2027-04-16",
  pricing: { overhead: 0.1, fees: 0.04, margin: 0.45, tax: 0.2, ending: 0.9 },
};

function planned(input: Batch): Plan {
  const plan = planBatch(input);
  if (!plan.ok) throw new Error(plan.faults.map(({ message }) => message).join("; "));
  return plan.value;
}

const drawn = (input: Batch, draws: number) => ({
  ...costBatch(planned(input)),
  spread: spread(
    [{ path: ["rates", "labour"], value: 34, halfWidth: 8, assumed: false }],
    ([labourPerHour]) =>
      spreadOutputs(planned({ ...input, rates: { ...input.rates, labourPerHour: labourPerHour! } })),
    { draws },
  ),
});

/** As `cost` writes it. */
function streamed(format: RowFormat, entries: readonly CostEntry[], names?: readonly string[]): string {
  const report = costRows(
    "EUR",
    entries.some(({ spread: drawn }) => drawn !== undefined),
    names,
  );
  if (!report.ok) throw new Error("no such columns");
  const { head, rows, tail } = format.open(report.value, style);
  return [head(), ...entries.map(rows), ...tail({ filesNotCosted: 0 })].join("");
}

const costReport = (plans: readonly Plan[]) => costReportOf(plans.map(costBatch));

describe("costReport", () => {
  const columns =
    "batch,date,order,part,shade,base,quantity,started,cost_per_part_EUR,total_EUR,blank_EUR,dye_EUR,water_EUR,energy_EUR,labour_EUR,consumables_EUR,equipment_EUR,disposal_EUR,price_EUR";

  const written = (entry: CostEntry, names?: readonly string[]): string[] =>
    streamed(csvRows, [entry], names).trimEnd().split("\r\n");

  test("has these columns in CSV, one row an order, and what an order rests on where it is asked for", () => {
    const lines = written(costBatch(planned(sold)));
    expect(lines[0]).toBe(columns);
    const asked = written(costBatch(planned(sold)), ["order", "rests_on_assumed"]);
    const [order] = planned(sold).orders;
    expect(asked[0]).toBe("order,rests_on_assumed");
    expect(asked[1]).toBe(`1,${order!.restsOnAssumed.join(" ").replace("dragOut", "drag_out")}`);
    expect(lines).toHaveLength(3);
    expect(lines[1]).toMatch(/^sample,2027-04-16,1,tray,deep,,20,21,\d+\.\d\d,/);
  });

  test("has what is not counted in each line of ndjson where there is any", () => {
    const { waterPerM3: _, ...rates } = sold.rates;
    const lines = (batch: Batch) =>
      streamed(ndjsonRows, [costBatch(planned(batch))])
        .trimEnd()
        .split("\n")
        .map((line) => JSON.parse(line).notCounted);
    expect(lines({ ...sold, rates })).toEqual(
      [["water"], ["water"]].map(() => [expect.stringContaining("water")]),
    );
    const all = costBatch(planned(sold)).notCounted;
    expect(lines(sold)).toEqual(Array(2).fill(all.length > 0 ? all : undefined));
  });

  test("has p10, p50 and p90 of the cost of a good part behind them with a spread", () => {
    const lines = written(drawn(sold, 40));
    expect(lines[0]).toBe(`${columns},p10_EUR,p50_EUR,p90_EUR`);
    const cells = lines[1]!.split(",").map(Number);
    const [p10, p50, p90] = cells.slice(-3) as [number, number, number];
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    expect(Math.abs(p50 - cells[8]!)).toBeLessThan(0.05 * cells[8]!);
  });

  test("leaves the percentiles of a batch without a spread empty where another has one", () => {
    const lines = csv(costReportOf([costBatch(planned(batch)), drawn(sold, 10)]).rows, style)
      .trimEnd()
      .split("\r\n");
    expect(lines[1]).toMatch(/,,,$/);
    expect(lines[3]).not.toMatch(/,,,$/);
  });

  test("names yen in whole ones and dinars to the thousandth", () => {
    const cost = (currency: string): string =>
      csv(costReport([planned({ ...batch, currency })]).rows, style)
        .split("\r\n")[1]!
        .split(",")[8]!;
    expect(cost("JPY")).toMatch(/^\d+$/);
    expect(cost("KWD")).toMatch(/^\d+\.\d{3}$/);
  });

  test("says in text what moves the cost most and how long the bath lasts", () => {
    const report = text(costReportOf([drawn(sold, 40)]).blocks, 100, plain);
    expect(report).toContain("How sure: cost of a good part in 40 draws");
    expect(report).toMatch(
      /what moves the total most: rates\.labour 100 % of the variation, \+\d+\.\d\d EUR from/,
    );
    expect(report).toMatch(/the bath of coral in six lasts \d+ parts/);
  });

  test("says from how many parts a colour pays, and what another base would change", () => {
    const blank = new Map([
      ["white", 1.84],
      ["grey", 1.62],
    ]);
    const [first, ...rest] = sold.orders;
    const orders = [{ ...first!, part: { ...first!.part, blank }, base: { name: "white" } }, ...rest];
    const report = text(costReport([planned({ ...sold, orders })]).blocks, 100, plain).replace(/\s+/g, " ");
    expect(report).toMatch(
      /a fresh bath of coral costs \d+\.\d\d EUR before the first part, and each good part \d+\.\d\d EUR more; at \d+\.\d\d EUR before tax, with overhead and fees, it pays from \d+ parts on\./,
    );
    expect(report).toMatch(
      /sample 1, tray: on grey a good part costs \d+\.\d\d EUR; for equal profit the price on white before tax must lie 0\.26 EUR above that on grey\./,
    );
  });

  const headOf = (input: Batch, print: (report: Report) => string): string => {
    const lines = print(costReport([planned(input)])).split("\n");
    return lines[lines.findIndex((line) => line.includes("batch"))]!;
  };
  const asMarkdown = ({ blocks }: Report): string => markdown(blocks);

  test("says for people that tax is in the price where it is, and keeps the name of the column in CSV", () => {
    const untaxed = { ...sold, pricing: { ...sold.pricing!, tax: 0 } };
    expect(headOf(sold, asMarkdown)).toContain("| price with tax |");
    expect(headOf(untaxed, asMarkdown)).toMatch(/\| price \|$/);
    for (const input of [sold, untaxed])
      expect(headOf(input, ({ rows }) => csv(rows, style))).toContain(",price_EUR,");
  });

  test("has in JSON the tax that is in a price, as a share of the net price", () => {
    const [order] = costReport([planned(sold)]).data.orders as { tax: number }[];
    expect(order!.tax).toBe(0.2);
    expect(planned(batch).orders[0]).not.toHaveProperty("tax");
  });

  test("lists bases for people where a part in one shade is ordered on several", () => {
    const [first, ...rest] = sold.orders;
    const on = (name: string) => ({ ...first!, base: { name } });
    expect(headOf(sold, asMarkdown)).not.toContain("base");
    expect(headOf({ ...sold, orders: [on("white"), ...rest] }, asMarkdown)).not.toContain("base");
    const two = [on("white"), on("grey")].map((order, index) => ({ ...order, index }));
    const report = costReport([planned({ ...sold, orders: two })]);
    expect(headOf({ ...sold, orders: two }, asMarkdown)).toContain("| shade | base | quantity |");
    expect(markdown(report.blocks)).toMatch(/\| deep \| white \|[^\n]*\n[^\n]*\| deep \| grey \|/);
  });

  test("gives the same bytes for the same batch, in every format", () => {
    const write = (): string[] => {
      const report = costReportOf([drawn(sold, 20)]);
      return [
        json(report.name, report.data),
        csv(report.rows, style),
        markdown(report.blocks),
        text(report.blocks, 80, plain),
      ];
    };
    expect(write()).toEqual(write());
  });

  test("carries in JSON the drivers of each order, and the spread of orders and of the batch", () => {
    const data = JSON.parse(json("cost", costReportOf([drawn(sold, 20)]).data));
    expect(data.schema).toBe("dipwright/cost@1");
    expect(data.orders[0].drivers).toMatchObject({ dye: "coral", dyePrice: 46, labourPerHour: 34 });
    expect(Object.keys(data.orders[0].spread.costPerPart)).toEqual(["p10", "p50", "p90"]);
    expect(data.batches[0].spread).toMatchObject({ draws: 20, seed: 1, failed: 0 });
    expect(data.batches[0].spread.ranking[0]).toMatchObject({ path: "rates.labour", assumed: false });
    expect(data.batches[0].spread.baths[0]).toMatchObject({ tank: "six", dye: "coral" });
  });
});

describe("costs as they come", () => {
  test("are lines of NDJSON, an order each with its schema first", () => {
    const lines = streamed(ndjsonRows, [costBatch(planned(sold))]).split("\n");
    expect(lines).toHaveLength(3);
    expect(lines[0]).toMatch(
      /^\{"schema":"dipwright\/cost-order@1","currency":"EUR","batch":"sample","date":"2027-04-16","order":1,/,
    );
    expect(JSON.parse(lines[0]!).costPerPart).toBe(planned(sold).orders[0]!.costPerPart);
  });

  test("are in JSON what a report of all of them is", () => {
    for (const entries of [[], [costBatch(planned(sold))], [drawn(sold, 5), costBatch(planned(batch))]]) {
      const { orders, batches } = costReportOf(entries).data;
      expect(JSON.parse(streamed(jsonRows, entries))).toEqual(
        JSON.parse(json("cost", { currency: "EUR", orders, batches, filesNotCosted: 0 })),
      );
    }
  });

  test("are never written with a number that JSON cannot hold", () => {
    const entry = costBatch(planned(sold));
    const broken = { ...entry, orders: [{ ...entry.orders[0]!, costPerPart: Number.NaN }] };
    for (const format of [jsonRows, ndjsonRows])
      expect(() => streamed(format, [broken])).toThrow(/costPerPart is NaN/);
  });
});

describe("csv without its header", () => {
  test("goes on where an earlier table ended", () => {
    const { rows } = costReport([planned(sold)]);
    const half = (from: number, to: number) => ({ ...rows, rows: rows.rows.slice(from, to) });
    const marked = { ...style, bom: true };
    expect(csv(half(0, 1), marked) + csv(half(1, 2), marked, false)).toBe(csv(rows, marked));
  });
});

describe("selectColumns", () => {
  const { rows } = costReport([planned(sold)]);

  test("keeps the columns asked for in the order asked, with or without the currency", () => {
    const chosen = selectColumns(rows, ["part", "cost_per_part", "total_EUR", "batch"]);
    if (!chosen.ok) throw new Error("no columns");
    expect(chosen.value.columns.map(({ key }) => key)).toEqual([
      "part",
      "cost_per_part_EUR",
      "total_EUR",
      "batch",
    ]);
    expect(chosen.value.rows[0]).toEqual(["tray", rows.rows[0]![8], rows.rows[0]![9], "sample"]);
  });

  test("says every column it does not know, and those there are", () => {
    const { faults } = selectColumns(rows, ["part", "colour", "cost"]);
    expect(faults.map(({ message }) => message)).toEqual([
      'there is no column "colour"',
      'there is no column "cost"',
    ]);
    expect(faults[0]!.help).toMatch(/^the columns are batch, date, order, /);
  });
});

describe("readCostSnapshot", () => {
  const written = json("cost", costReport([planned(sold)]).data);

  test("reads back what the report wrote", () => {
    const read = readCostSnapshot(written);
    if (!read.ok) throw new Error("not read");
    expect(read.value).toEqual({
      currency: "EUR",
      filesNotCosted: 0,
      orders: costBatch(planned(sold)).orders,
    });
  });

  test("reads an older report without drivers", () => {
    const data = JSON.parse(written);
    for (const order of data.orders) delete order.drivers;
    const read = readCostSnapshot(JSON.stringify(data));
    expect(read.ok && read.value.orders.map(({ drivers }) => drivers)).toEqual([null, null]);
  });

  test.each([
    ["no JSON", "batch: x", "the earlier report is not JSON"],
    ["another report", '{"schema":"dipwright/plan@1"}', "is not a cost report"],
    ["a list", "[]", "is not a cost report"],
    ["no orders", '{"schema":"dipwright/cost@1","currency":"EUR"}', "has no list of orders"],
    [
      "an order that is none",
      '{"schema":"dipwright/cost@1","currency":null,"orders":[3]}',
      "order of its order 1",
    ],
    [
      "a cost in words",
      json("cost", {
        currency: "EUR",
        orders: [{ ...costBatch(planned(sold)).orders[0], costPerPart: "2" }],
      }),
      "costPerPart of its order 1",
    ],
  ])("refuses %s", (_, input, message) => {
    const read = readCostSnapshot(input);
    expect(read.ok).toBe(false);
    expect(read.faults[0]!.code).toBe("not-a-cost-report");
    expect(read.faults[0]!.message).toContain(message);
  });
});

describe("costChangeReport", () => {
  const before = costBatch(planned(sold));
  const [first, ...rest] = sold.orders;
  const now = costBatch(
    planned({
      ...sold,
      rates: { ...sold.rates, labourPerHour: 36 },
      orders: [{ ...first!, base: { name: "white" } }, ...rest],
    }),
  );
  const outcome = compareCosts(
    { currency: "EUR", orders: before.orders },
    { currency: "EUR", orders: now.orders },
  );
  if (!outcome.ok) throw new Error("not compared");
  const report = costChangeReport(outcome.value);

  test("counts changed, new and gone orders and says why costs moved", () => {
    const said = text(report.blocks, 200, plain);
    expect(said).toContain("1 changed, 0 the same, 1 new, 1 gone");
    // One order is gone and another new, alike but for their bases.
    expect(said).toMatch(/shade +base +status/);
    expect(said).toMatch(/labour per hour \+\d\.\d\d \(34\.00 -> 36\.00\)/);
  });

  test("says what the causes after the third come to together, so that they add up to the change", () => {
    const dearer = costBatch(
      planned({
        ...sold,
        rates: { electricityPerKwh: 9, waterPerM3: 900, labourPerHour: 60, disposalPerL: 3 },
        consumables: { perBath: 3, perLoad: 1, perPart: 0.5 },
      }),
    );
    const moved = compareCosts(
      { currency: "EUR", orders: before.orders },
      { currency: "EUR", orders: dearer.orders },
    );
    if (!moved.ok) throw new Error("not compared");
    const said = csv(costChangeReport(moved.value).rows, style).trimEnd().split("\r\n").slice(1);
    expect(said.some((row) => row.includes("other causes +"))).toBe(true);
    for (const [i, row] of said.entries()) {
      const parts = [...row.matchAll(/[a-z] ([+-]\d+\.\d\d)(?: \(|;|$)/g)].map((found) => Number(found[1]));
      const { change } = moved.value.orders[i]!;
      // Each is rounded to cents.
      expect(Math.abs(parts.reduce((sum, part) => sum + part, 0) - change!)).toBeLessThan(
        0.0051 * (parts.length + 1),
      );
    }
  });

  test("has a row an order in CSV, with changes by line", () => {
    const lines = csv(report.rows, style).trimEnd().split("\r\n");
    expect(lines[0]).toBe(
      "batch,date,order,part,shade,base,status,quantity_before,quantity,total_before_EUR,total_EUR,cost_per_part_before_EUR,cost_per_part_EUR,change_EUR,change_percent,blank_change_EUR,dye_change_EUR,water_change_EUR,energy_change_EUR,labour_change_EUR,consumables_change_EUR,equipment_change_EUR,disposal_change_EUR,price_before_EUR,price_EUR,causes",
    );
    expect(lines.slice(1).map((line) => line.split(",")[6])).toEqual(["new", "changed", "gone"]);
  });

  test("has a schema of its own in JSON and unrounded changes", () => {
    const data = JSON.parse(json(report.name, report.data));
    expect(data.schema).toBe("dipwright/cost-change@1");
    expect(data.orders[1].causes[0]).toMatchObject({
      code: "labour-rate",
      line: "labour",
      before: 34,
      now: 36,
    });
    expect(data.orders[1].change).toBe(outcome.ok && outcome.value.orders[1]!.change);
  });

  test("leaves out for people what stayed the same", () => {
    const same = compareCosts(
      { currency: "EUR", orders: before.orders },
      { currency: "EUR", orders: before.orders },
    );
    if (!same.ok) throw new Error("not compared");
    expect(markdown(costChangeReport(same.value).blocks)).not.toContain("|");
    expect(costChangeReport(same.value).rows.rows).toHaveLength(2);
  });
});
