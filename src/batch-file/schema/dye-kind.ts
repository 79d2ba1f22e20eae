import { type DyeKind, dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import type { Report } from "./check.js";

/** An amount whose unit says the kind of dye; still as written if its list has a fault elsewhere. */
type Amount = { readonly of?: DyeKind | undefined } | undefined;

/** The parts of a dye that depend on its kind. */
interface KindSaid {
  readonly dilution?: { readonly kind: DyeKind } | undefined;
  readonly price?: Amount;
  readonly stock?: Amount;
  readonly uptake?: Amount | { readonly evidence: unknown };
  readonly measuredAt?: { readonly dilution?: { readonly kind: DyeKind } | undefined } | undefined;
}

type EvidenceItem = { readonly [Key in (typeof evidenceKeys)[number]]?: Amount } | undefined;
const evidenceKeys = ["yield", "bought", "left", "dumped"] as const;

/** Reports values of a liquid for a dye that is a powder, and the other way round. */
export function checkKinds(dye: KindSaid, report: Report): void {
  const of = dye.dilution?.kind;
  if (of === undefined) return;
  const { given, treated } = dyeKinds[of];
  const other = (kind: DyeKind | undefined): kind is DyeKind => kind !== undefined && kind !== of;
  const { uptake } = dye;
  const amounts = {
    price: dye.price,
    stock: dye.stock,
    uptake: uptake && "of" in uptake ? uptake : undefined,
  };
  for (const key of ["price", "stock", "uptake"] as const) {
    const kind = amounts[key]?.of;
    if (!other(kind)) continue;
    const [what, example] = given[key];
    report(
      "liquid-or-powder",
      [key],
      `${dyeKinds[kind].given[key][0]} is given for a dye that is ${treated}`,
      `write ${what} such as ${example}, or give the dilution of a ${kind}, such as ${dyeKinds[kind].given.dilution[1]}`,
    );
  }
  const evidence = uptake && "evidence" in uptake && Array.isArray(uptake.evidence) ? uptake.evidence : [];
  for (const [i, item] of (evidence as EvidenceItem[]).entries())
    for (const key of evidenceKeys) {
      const kind = item?.[key]?.of;
      if (!other(kind)) continue;
      const [what, example] = given.evidence;
      report(
        "liquid-or-powder",
        ["uptake", "evidence", i, key],
        `${key} is for a ${kind}, but the dye is ${treated}`,
        `write ${what}, such as ${example}`,
      );
    }
  const measured = dye.measuredAt?.dilution?.kind;
  if (!other(measured)) return;
  const [what, example] = given.dilution;
  report(
    "liquid-or-powder",
    ["measuredAt", "dilution"],
    `swatches of a ${measured} are given for a dye that is ${treated}`,
    `write ${what}, such as ${example}`,
  );
}
