import type { Cover, Insulation, Room, Tank } from "../../model/batch.js";
import { surfaceLossWPerM2 } from "./evaporation.js";

/** A lid is on while the bath heats up and off while parts are dipped; balls stay on. Bare: nothing is on the liquor. */
export type Phase = "heating" | "dipping" | "bare";

/** What a tank loses heat through. */
export type LosingTank = Pick<Tank, "surfaceCm2" | "wallAreaDm2" | "insulation" | "cover">;

const WALL_W_PER_M2K: Readonly<Record<Insulation, number>> = { none: 12, housing: 6, foam: 2.2 };

/**
 * Share of the open surface's heat and vapour that passes the cover.
 *
 * Common practice, no source. A lid leaves 20 %, a layer of floating balls 28 %.
 * @example
 * coverFactor("lid", "heating") // => 0.2
 * coverFactor("lid", "dipping") // => 1
 * coverFactor("balls", "dipping") // => 0.28
 */
export function coverFactor(cover: Cover, phase: Phase): number {
  if (phase === "bare") return 1;
  if (cover === "balls") return 0.28;
  return cover === "lid" && phase === "heating" ? 0.2 : 1;
}

/**
 * Heat that walls and floor give off [W]: U A (T - Ta), U of 12 bare, 6 in a housing, 2.2 under foam [W/(m² K)].
 *
 * A constant U is within 21 % of the handbook from 38 to 99 °C, high below and low above.
 * @source openTankHeatLoss
 * @example
 * wallLossW({ wallAreaDm2: 18, insulation: "none" }, 80, { celsius: 20, humidity: 0.5 }) // => 129.6
 */
export const wallLossW = (
  tank: Pick<Tank, "wallAreaDm2" | "insulation">,
  waterCelsius: number,
  room: Room,
): number => WALL_W_PER_M2K[tank.insulation] * (tank.wallAreaDm2 / 100) * (waterCelsius - room.celsius);

/**
 * Heat that a tank gives off through its surface, as covered in that phase, and its walls [W].
 * @source shah2014
 * @example
 * tankLossW({ surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid" }, 80, { celsius: 20, humidity: 0.5 }, "heating") // => 187.0
 */
export const tankLossW = (tank: LosingTank, waterCelsius: number, room: Room, phase: Phase): number =>
  surfaceLossWPerM2(waterCelsius, room) * (tank.surfaceCm2 / 1e4) * coverFactor(tank.cover, phase) +
  wallLossW(tank, waterCelsius, room);
