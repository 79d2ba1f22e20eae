import { describe, expect, test } from "vitest";
import { compareCosts } from "../../../src/core/cost/history/compare.js";
import { type CostSnapshot, costBatch } from "../../../src/core/cost/history/snapshot.js";
import { type CostLine, costLines } from "../../../src/core/cost/line/cost-lines.js";
import type { PriceDriver } from "../../../src/core/cost/line/drivers.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import { costChangeReport } from "../../../src/report/cost/change-report.js";
import { readCostSnapshot } from "../../../src/report/cost/read-snapshot.js";
import { costReportOf } from "../../../src/report/cost/report.js";
import { json } from "../../../src/report/format/json.js";
import { plain } from "../../../src/report/format/paint.js";
import { text } from "../../../src/report/format/text.js";
import { batch } from "../../core/plan/sample.js";

const plan = planBatch(batch);
if (!plan.ok) throw new Error("no plan");
const now = costBatch(plan.value);

/** Prices that lines follow, and that a report does not know from before the line existed. */
const prices: Partial<Record<CostLine, PriceDriver>> = {
  dye: "dyePrice",
  water: "waterPerM3",
  energy: "electricityPerKwh",
  labour: "labourPerHour",
  disposal: "disposalPerL",
};

/** Today's report as it was before a line existed: without the line, its price and its money. */
function reportBefore(line: CostLine): string {
  const report = JSON.parse(json("cost", costReportOf([now]).data));
  for (const order of report.orders) {
    const younger = order.lines[line];
    delete order.lines[line];
    delete order.drivers[prices[line] ?? ""];
    order.total -= younger;
    order.costPerPart = order.total / order.quantity;
  }
  return JSON.stringify(report);
}

function read(report: string): CostSnapshot {
  const snapshot = readCostSnapshot(report);
  if (!snapshot.ok) throw new Error(snapshot.faults[0]!.message);
  return snapshot.value;
}

describe.each(costLines)("a report from before the line %s existed", (line) => {
  const before = read(reportBefore(line));
  const outcome = compareCosts(before, { currency: "EUR", orders: now.orders });
  if (!outcome.ok) throw new Error("not compared");
  const { orders } = outcome.value;

  test("has cost nothing on that line, and knows all others and its other drivers", () => {
    before.orders.forEach((order, i) => {
      expect(order.lines).toEqual({ ...now.orders[i]!.lines, [line]: 0 });
      const price = prices[line];
      expect(order.drivers).toEqual({ ...now.orders[i]!.drivers, ...(price ? { [price]: null } : {}) });
    });
  });

  test("is compared: the change is the line's, and its causes say so", () => {
    orders.forEach(({ status, change, lines, causes }, i) => {
      const { lines: sheet, quantity } = now.orders[i]!;
      const whole = sheet![line] / quantity;
      expect(whole).toBeGreaterThan(0);
      expect(status).toBe("changed");
      expect(change).toBeCloseTo(whole, 9);
      expect(lines![line]).toBeCloseTo(whole, 9);
      expect(causes.map((cause) => cause.line)).toEqual([line]);
      expect(causes[0]!.change).toBeCloseTo(whole, 9);
      expect(causes[0]!.before).toBe(0);
    });
  });

  test("has the cause among the words of the comparison", () => {
    const said = text(costChangeReport(outcome.value).blocks, 200, plain);
    expect(said).toContain("2 changed, 0 the same, 0 new, 0 gone");
    expect(said.match(/^.*: .+ \+\d+\.\d+/gm)).toHaveLength(2);
  });
});

test("a report that lost a line is damaged: its lines do not come to its total", () => {
  const report = JSON.parse(json("cost", costReportOf([now]).data));
  delete report.orders[1].lines.labour;
  const { ok, faults } = readCostSnapshot(JSON.stringify(report));
  expect(ok).toBe(false);
  expect(faults[0]!.message).toBe(
    "the earlier report is damaged: lines of its order 2 is not what it should be",
  );
});

test("a report with words for money on a line is damaged", () => {
  const report = JSON.parse(json("cost", costReportOf([now]).data));
  report.orders[0].lines.labour = String(report.orders[0].lines.labour);
  expect(readCostSnapshot(JSON.stringify(report)).ok).toBe(false);
});
