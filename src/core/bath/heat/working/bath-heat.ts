import type { Room, Tank } from "../../../model/batch.js";
import { waterDensityKgM3 } from "../../water.js";
import { coverFactor, type LosingTank, type Phase, wallLossW } from "../heat-loss.js";
import { liquorJPerLK } from "../mixing-temperature.js";
import { lookUp } from "./celsius-table.js";
import { type RoomAir, roomAir } from "./room-air.js";

/** What warms a bath and lets it cool while one kind of work goes on. */
export interface HeatPhase {
  /** Open surface that would lose as much as the surface as it is covered [m²]. */
  readonly openM2: number;
  /** Most that the heater gives to the liquor [W]: η P. */
  readonly heatingW: number;
  /** All of it ends as heat in the liquor. */
  readonly agitationW: number;
  /** Growth of the loss with temperature, at the bath's own [W/K]. */
  readonly lossWPerK: number;
}

/** A bath's tank, heater and room as its heat sees them: what stays the same while it works. */
export interface BathHeat {
  /** Where the thermostat holds the bath: T_set. */
  readonly celsius: number;
  readonly air: RoomAir;
  readonly heaterEfficiency: number;
  readonly wallWPerK: number;
  /** Heat capacity of a litre, measured hot. */
  readonly jPerLK: number;
  /** Density of the liquor: water that evaporates leaves as hot litres. */
  readonly kgPerL: number;
  /** A lid on, heater on: heating up, racking, waiting. */
  readonly covered: HeatPhase;
  /** A lid off, heater and agitation on. */
  readonly dipping: HeatPhase;
  /** A lid off, heater on, agitation off: draining, rinsing, unloading. */
  readonly open: HeatPhase;
  /** Nothing on the liquor, heater and agitation off. */
  readonly cooling: HeatPhase;
  /** Longest step: this share of the time constant, and what moves the bath by so many kelvins. */
  readonly step: { readonly share: number; readonly kelvin: number };
}

/** A tank whose bath is worked; a heater that is not known holds the bath, whatever that takes. */
export type WorkedTank = LosingTank & Pick<Tank, "heaterW" | "heaterEfficiency" | "agitationW">;

/**
 * Heat that a bath gives off [W]: `tankLossW`, from the tabulated losses of the open surface.
 * @example
 * bathLossW(bathHeat({ surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9, agitationW: 0 }, 80, { celsius: 20, humidity: 0.5 }), 0.045, 80) // => 416.84
 */
export const bathLossW = ({ air, wallWPerK }: BathHeat, openM2: number, celsius: number): number =>
  openM2 * lookUp(air.lossWPerM2, celsius) + wallWPerK * (celsius - air.room.celsius);

/** Hot litres that evaporate in a second. */
export const vapourLPerS = ({ air, kgPerL }: BathHeat, openM2: number, celsius: number): number =>
  (openM2 * lookUp(air.evaporationKgM2H, celsius)) / (3600 * kgPerL);

/**
 * The heat of a bath at its temperature [°C] in a tank and a room. `air` is `roomAir(room)`, which baths of one room share.
 * @example
 * bathHeat({ surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9, agitationW: 0 }, 80, { celsius: 20, humidity: 0.5 }).covered.openM2 // => 0.009
 */
export function bathHeat(
  tank: WorkedTank,
  celsius: number,
  room: Room,
  air: RoomAir = roomAir(room),
): BathHeat {
  const heatingW =
    tank.heaterW === undefined ? Number.POSITIVE_INFINITY : tank.heaterW * tank.heaterEfficiency;
  const wallWPerK = wallLossW(tank, room.celsius + 1, room);
  const surfaceWPerM2K = lookUp(air.lossWPerM2, celsius + 0.5) - lookUp(air.lossWPerM2, celsius - 0.5);
  const phase = (cover: Phase, heaterGivesW: number, agitationW: number): HeatPhase => {
    const openM2 = (tank.surfaceCm2 / 1e4) * coverFactor(tank.cover, cover);
    return { openM2, heatingW: heaterGivesW, agitationW, lossWPerK: openM2 * surfaceWPerM2K + wallWPerK };
  };
  const jPerLK = liquorJPerLK(celsius);
  return {
    celsius,
    air,
    heaterEfficiency: tank.heaterEfficiency,
    wallWPerK,
    jPerLK,
    kgPerL: waterDensityKgM3(celsius) / 1000,
    covered: phase("heating", heatingW, 0),
    dipping: phase("dipping", heatingW, tank.agitationW),
    open: phase("dipping", heatingW, 0),
    cooling: phase("bare", 0, 0),
    step: { share: 0.1, kelvin: 1.25 },
  };
}
