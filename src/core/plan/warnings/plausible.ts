import { type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch } from "../../model/batch.js";
import { volumeShare } from "../../quantity/dye/dilution.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { implausiblePrices } from "./plausible-prices.js";
import { implausibleWork } from "./plausible-work.js";

// Bounds that no shop of this kind passes but by a slip of unit or decimal. Common practice, no source.
const deepestCm = 120;
const shallowestCm = 3;
const thinnestMm = 0.2;
const strongest = 0.5;
const strongestHeaterWPerL = 400;

/** Of the surface of a ball: what rounded figures may be short of it. */
const leastOfBall = 0.999;

/** Surface of a ball of that volume [dm²]: no body has less. */
const ballDm2 = (volumeCm3: number): number => ((36 * Math.PI) ** (1 / 3) * volumeCm3 ** (2 / 3)) / 100;

/** Warnings on inputs that are possible and yet hardly meant: a wrong unit, a lost decimal, a ratio turned round. */
export const implausible = (batch: Batch): Fault[] => [
  ...implausibleSizes(batch),
  ...implausibleWork(batch),
  ...implausiblePrices(batch),
];

function implausibleSizes({ baths, orders }: Pick<Batch, "baths" | "orders">): Fault[] {
  const faults: Fault[] = [];
  for (const tank of new Set(mapped(baths, (bath) => bath.tank))) {
    const depthCm = (1000 * tank.volumeL) / tank.surfaceCm2;
    if (depthCm > deepestCm || depthCm < shallowestCm)
      faults.push(
        warning(
          "tank-shape",
          ["tanks", tank.name, "surface"],
          `tank "${tank.name}" is ${shortNumber(depthCm, 2)} cm deep: ${shortNumber(tank.volumeL)} L over ${shortNumber(tank.surfaceCm2)} cm2 of surface`,
          "check volume and surface, and their units",
        ),
      );
    if (tank.heaterW !== undefined && tank.heaterW > strongestHeaterWPerL * tank.volumeL)
      faults.push(
        warning(
          "heater-strong",
          ["tanks", tank.name, "heater"],
          `a heater of ${shortNumber(tank.heaterW)} W is a lot for the ${shortNumber(tank.volumeL)} L of tank "${tank.name}"`,
          "check its power and unit",
        ),
      );
  }
  for (const dye of new Set(mapped(baths, (bath) => bath.dye)))
    if (volumeShare(dye.dilution) > strongest)
      faults.push(
        warning(
          "dilution-strong",
          ["dyes", dye.name, "dilution"],
          `dye "${dye.name}" makes ${shortNumber(100 * volumeShare(dye.dilution))} % of its bath`,
          "a dilution is dye : water, so 1:9 is 1 part dye + 9 parts water",
        ),
      );
  for (const part of new Set(mapped(orders, (order) => order.part))) {
    const least = ballDm2(part.volumeCm3);
    const wallMm = (20 * part.volumeCm3) / (100 * part.areaDm2);
    const of = `part "${part.name}" of ${shortNumber(part.volumeCm3)} cm3`;
    if (part.areaDm2 < least * leastOfBall)
      faults.push(
        warning(
          "area-small",
          ["parts", part.name],
          `${of} cannot have a surface of ${shortNumber(100 * part.areaDm2)} cm2: even a ball has ${shortNumber(100 * least)} cm2`,
          "check area, mass and their units",
        ),
      );
    else if (wallMm < thinnestMm)
      faults.push(
        warning(
          "area-large",
          ["parts", part.name],
          `${of} with ${shortNumber(100 * part.areaDm2)} cm2 of surface would be ${shortNumber(wallMm, 2)} mm thick on average`,
          "check area, mass and their units",
        ),
      );
  }
  return faults;
}
