import type { Part } from "../../model/batch.js";
import { floatAdvice } from "../../part/floats.js";
import { meanWallMm, thinWallAdvice } from "../../part/wall.js";

/** How to handle one kind of part in one bath; `code` is stable and may be scripted against. */
export interface Advice {
  readonly code: "floats" | "thin-walls" | "holds-liquor";
  /** Position of the bath in the plan, from 1. */
  readonly bath: number;
  readonly part: string;
  readonly densityGPerCm3: number;
  readonly meanWallMm: number;
  readonly message: string;
}

/** A part that carries out so many times what others do has cups or blind holes. Common practice, no source. */
const cuppedFrom = 1.5;

/**
 * What follows from density, walls and drag-out of the parts that a bath gets, each kind once, in the order given.
 * `usualDragOut` is that of other parts [mL/dm2].
 */
export function adviceFor(
  bath: number,
  celsius: number,
  parts: readonly Part[],
  usualDragOut: number,
): Advice[] {
  return [...new Set(parts)].flatMap((part) => {
    const { name, massG, volumeCm3, areaDm2 } = part;
    const densityGPerCm3 = massG / volumeCm3;
    const areaCm2 = 100 * areaDm2;
    const of = { bath, part: name, densityGPerCm3, meanWallMm: meanWallMm(volumeCm3, areaCm2) };
    const float = floatAdvice(densityGPerCm3, celsius);
    const thin = thinWallAdvice(volumeCm3, areaCm2);
    const cupped = (part.dragOutMlPerDm2 ?? 0) >= cuppedFrom * usualDragOut;
    return [
      ...(float === undefined ? [] : [{ code: "floats" as const, ...of, message: `${name} ${float}` }]),
      ...(cupped
        ? [
            {
              code: "holds-liquor" as const,
              ...of,
              message: `${name} holds liquor and air: turn it under the surface until no bubble comes, lift it mouth down`,
            },
          ]
        : []),
      ...(thin === undefined ? [] : [{ code: "thin-walls" as const, ...of, message: `${name}: ${thin}` }]),
    ];
  });
}
