import type { UncertainInput } from "../../core/cost/spread/uncertain-input.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { exponentRange } from "../../core/uptake/swatches/bath-response.js";
import { own } from "../checks/report.js";
import type { Path } from "../source/source.js";
import { amountsOf } from "./amounts.js";
import type { Spec } from "./complete.js";

/** Keys of values that are shares of a whole. */
const shares = new Set([
  "yield",
  "rework",
  "humidity",
  "heaterEfficiency",
  "duty",
  "freeboard",
  "refresh",
  "packing",
]);

/** The greatest value that a quantity can have; undefined if it has no limit. */
function mostOf(path: Path, spec: Spec): number | undefined {
  const key = path.at(-1);
  if (shares.has(String(key))) return 1;
  const [group, name] = path;
  if (group === "pricing" && (key === "fees" || key === "margin")) return 1;
  const dilution =
    group === "dyes" && key === "dilution" ? own(spec.dyes, String(name))?.dilution : undefined;
  if (dilution && dyeKinds[dilution.kind].takesRoom) return 1;
  return undefined;
}

/** Whether the orders of a batch depend on a value: things that are defined but not used do not change its cost. */
function isUsed(path: Path, spec: Spec): boolean {
  const [group, name] = path;
  const uses = (key: "tank" | "dye"): boolean => spec.baths.some((bath) => bath[key] === name);
  switch (group) {
    case "tanks":
      return uses("tank");
    case "dyes":
      return (
        uses("dye") ||
        spec.baths.some((bath) => own(own(spec.mixes, bath.dye)?.mix, String(name)) !== undefined)
      );
    case "mixes":
      return uses("dye");
    case "dryers":
      return Object.keys(spec.dryers)[0] === name;
    case "parts":
      return spec.orders.some((order) => order.part === name);
    case "shades":
      return spec.orders.some((order) => order.shade === name);
    case "limits":
      return false;
    default:
      return true;
  }
}

/** Every figure of a batch that carries ± or an assumed range and that an order depends on. */
export const uncertainInputs = (spec: Spec): UncertainInput[] => [
  ...givenInputs(spec),
  ...exponentInputs(spec),
];

/** The law keeps an exponent that nobody measured between 1 and 2. */
const unknownExponent = { value: 1.5, halfWidth: 0.5 };

/** The strength exponent of every dye whose swatches do not show it. */
const exponentInputs = (spec: Spec): UncertainInput[] =>
  Object.entries(spec.dyes).flatMap(([name, { strengthExponent, swatches }]) => {
    const path = ["dyes", name, "strengthExponent"];
    const known = strengthExponent !== undefined || swatches.some(({ strength }) => strength !== undefined);
    // In a mix uptake goes with the strength: the exponent is that of a bath of its own.
    if (known || !spec.baths.some((bath) => bath.dye === name)) return [];
    const [least, most] = exponentRange;
    return [{ path, ...unknownExponent, least, most, assumed: true }];
  });

const givenInputs = (spec: Spec): UncertainInput[] =>
  amountsOf(spec).flatMap(({ path, amount }): UncertainInput[] => {
    const { value, factor, plusMinus = 0, assumed = false } = amount;
    if (!(factor !== undefined || plusMinus > 0) || !isUsed(path, spec)) return [];
    if (factor !== undefined) return [{ path, value, factor, assumed }];
    const most = mostOf(path, spec);
    return [{ path, value, halfWidth: plusMinus, assumed, ...(most === undefined ? {} : { most }) }];
  });
