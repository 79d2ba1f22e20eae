import { mapped } from "../mapped.js";
import type { Batch } from "../model/batch.js";

/** True where no money at all was given: such a plan has no costs. */
export const hasMoney = (batch: Batch): boolean =>
  Object.keys(batch.rates).length > 0 ||
  batch.dyes.some((dye) => dye.price !== undefined) ||
  batch.parts.some((part) => part.blank !== undefined) ||
  [...batch.tanks, ...batch.dryers].some((machine) => machine.equipment !== undefined) ||
  Object.values(batch.consumables).some((each) => each > 0);

/** What the cost sheet would need and was not given, in words: each counts as nothing. */
export function notCounted(batch: Batch): string[] {
  const { rates, dryers, baths, orders } = batch;
  const missing: string[] = [];
  const unless = (given: unknown, what: string): void => {
    if (given === undefined) missing.push(what);
  };
  for (const part of new Set(mapped(orders, (order) => order.part)))
    unless(part.blank, `the undyed part "${part.name}"`);
  for (const dye of new Set(mapped(baths, (bath) => bath.dye))) unless(dye.price, `dye "${dye.name}"`);
  unless(rates.waterPerM3, "water");
  unless(rates.electricityPerKwh, "electricity");
  for (const tank of new Set(mapped(baths, (bath) => bath.tank)))
    unless(tank.heaterW, `heating up tank "${tank.name}" (no heater power)`);
  unless(rates.labourPerHour, "labour");
  for (const tank of new Set(mapped(baths, (bath) => bath.tank)))
    unless(tank.equipment, `wear of tank "${tank.name}"`);
  if (dryers[0]) unless(dryers[0].equipment, `wear of dryer "${dryers[0].name}"`);
  else missing.push("drying (no dryer)");
  unless(rates.disposalPerL, "disposal of spent liquor");
  return missing;
}
