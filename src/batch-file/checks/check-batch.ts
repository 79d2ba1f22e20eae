import { error } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import { undyed } from "../../core/model/undyed.js";
import type { Need } from "../batch-text.js";
import type { PartFault } from "../issues/part-fault.js";
import type { Readers } from "../resources/resources.js";
import { batchSchema, type RawSpec } from "../schema/batch.js";
import { type ReadData, readSections } from "../schema/read-sections.js";
import { pathKey, withoutEchoes } from "../source/echoes.js";
import { isMap } from "../source/is-map.js";
import { checkCoolTo, checkStarts } from "./baths.js";
import { checkCurrency } from "./currency.js";
import { checkMixes } from "./mixes.js";
import { checkNames } from "./names.js";
import { checkOrders } from "./orders.js";
import { checkReaders } from "./readers.js";
import type { Report } from "./report.js";
import { checkValues } from "./values.js";

const keyOf = (need: Need): Exclude<Need, "bathsIfDyed"> => (need === "bathsIfDyed" ? "baths" : need);

const needHelp: { readonly [Key in ReturnType<typeof keyOf>]: string } = {
  tanks: "add tanks: with a name and volume: 6 L below it",
  dyes: "add dyes: with a name, dilution: 1:9 and temperature: 80 °C below it",
  parts: "add parts: with a name, mass: 6.4 g and area: 41 cm2 below it",
  shades: "add shades: with a name and { dye: coral, time: 30 s } behind it",
  baths: "add baths: with - { tank: six, dye: coral } below it",
  orders: "add orders: with - { part: hook, shade: coral-light, quantity: 120 } below it",
  bases: "add bases: with a name and { lab: [92.1, -0.6, -2.3] } behind it",
};

/** Orders of undyed parts alone need no bath. */
const isUndyed = ({ orders }: Record<string, unknown>): boolean =>
  Array.isArray(orders) &&
  orders.length > 0 &&
  orders.every((order: unknown) => isMap(order) && order.shade === undyed);

function missing(data: Record<string, unknown>, needs: readonly Need[]): PartFault[] {
  const isMissing = (need: Need): boolean => {
    if (need === "bathsIfDyed" && isUndyed(data)) return false;
    const value = data[keyOf(need)];
    return (
      value === undefined || (typeof value === "object" && value !== null && Object.keys(value).length === 0)
    );
  };
  return mapped(needs.filter(isMissing).map(keyOf), (key) => ({
    fault: error("missing-key", [key], `the batch has no ${key}, which this command needs`, needHelp[key]),
    part: "key",
  }));
}

/** What zod found, in the words of this tool; those are loaded only where there is a fault. */
async function inWords(
  issues: ReturnType<typeof readSections>["issues"],
  data: Record<string, unknown>,
): Promise<PartFault[]> {
  const { issueFaults } = await import("../issues/issues.js");
  return issues.flatMap((issue) => issueFaults(issue, data, batchSchema()));
}

/**
 * All faults of the data, or the spec if there are none. If the data are not whole, names and needs are not checked:
 * what seems missing may be in the part that could not be read.
 */
export async function checkBatch(
  data: Record<string, unknown>,
  whole: boolean,
  needs: readonly Need[],
  readers: Readers,
  like?: ReadData,
): Promise<{ raw?: RawSpec; faults: PartFault[] }> {
  const { value, issues } = readSections(data, like);
  const faults = issues.length === 0 ? [] : await inWords(issues, data);
  const report: Report = (code, path, message, help, part = "value") =>
    void faults.push({ fault: error(code, path, message, help), part });
  const looks = [
    checkReaders(readers),
    ...(whole
      ? [checkNames, checkMixes, checkOrders, checkValues, checkStarts, checkCoolTo, checkCurrency]
      : []),
  ];
  for (const look of looks) look(value, report);
  if (whole) {
    // What is there in a wrong form is reported as that only.
    const told = new Set(mapped(faults, ({ fault }) => pathKey(fault.path)));
    faults.push(...missing(data, needs).filter(({ fault }) => !told.has(pathKey(fault.path))));
  }
  return faults.length === 0 ? { raw: value as RawSpec, faults } : { faults: withoutEchoes(faults) };
}
