import { minorDigits } from "../../core/quantity/currencies.js";
import type { Path } from "../source/source.js";
import { entries, type PartlyRead, plainDyes, type Report } from "./report.js";

/** The path of the first amount of money. */
function firstMoney(batch: PartlyRead): Path | undefined {
  for (const group of ["rates", "consumables", "limits"] as const)
    for (const key of Object.keys(batch[group] ?? {})) return [group, key];
  for (const [name, tank] of entries(batch.tanks))
    if (tank.equipment?.price !== undefined) return ["tanks", name, "equipment", "price"];
  for (const [name, dryer] of entries(batch.dryers))
    if (dryer.equipment?.price !== undefined) return ["dryers", name, "equipment", "price"];
  for (const [name, dye] of plainDyes(batch)) if (dye.price !== undefined) return ["dyes", name, "price"];
  for (const [name, part] of entries(batch.parts))
    if (part.blank !== undefined) return ["parts", name, "blank"];
  return undefined;
}

/** A price ending must be an amount that the currency has: 0.90 EUR, 90 JPY. */
function checkEnding({ pricing, currency }: PartlyRead, report: Report): void {
  const ending = pricing?.ending;
  if (typeof ending !== "number" || typeof currency !== "string") return;
  const units = ending * 10 ** minorDigits(currency);
  if (Math.abs(units - Math.round(units)) <= 1e-9 * Math.max(1, units)) return;
  report(
    "price-ending",
    ["pricing", "ending"],
    `${currency} has no amount of ${ending}`,
    minorDigits(currency) === 0
      ? "write a whole number: 90"
      : `write ${minorDigits(currency)} decimals at most: 0.90`,
  );
}

/** Money without a currency means nothing. */
export function checkCurrency(batch: PartlyRead, report: Report): void {
  checkEnding(batch, report);
  if ("currency" in batch) return;
  const path = firstMoney(batch);
  if (path !== undefined)
    report(
      "currency-missing",
      path,
      "the batch has amounts of money but no currency",
      "add currency: EUR (the three letters of ISO 4217) at the top of the file",
    );
}
