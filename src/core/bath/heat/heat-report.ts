import type { Cover, Insulation, Room } from "../../model/batch.js";
import { waterDensityKgM3 } from "../water.js";
import { type Phase, tankLossW } from "./heat-loss.js";
import { evaporationKgPerH, type HeatedTank, heatUp, sensibleHeatKj } from "./heating.js";
import { type WarmUpPoint, warmUp } from "./warm-up.js";

/** A bath kept at its temperature. */
export interface Holding {
  readonly lossW: number;
  /** From the mains, the heater's losses in it. */
  readonly powerW: number;
  /** The heater gives what is lost; null where no heater is known. */
  readonly holds: boolean | null;
  /** At full power, from the bath's temperature: positive where it still warms. Null where no heater is known. */
  readonly kelvinPerMinute: number | null;
  /** With the heater off. */
  readonly coolingKelvinPerMinute: number;
  readonly evaporationKgPerH: number;
  /** Hot litres. */
  readonly evaporationLPerH: number;
}

/** What would be otherwise under another cover, insulation or room. */
export interface HeatVariant {
  readonly cover: Cover;
  readonly insulation: Insulation;
  readonly room: Room;
  /** Null where it does not get hot enough, or no heater is known. */
  readonly minutes: number | null;
  readonly kWh: number | null;
  /** While parts are dipped, a lid off. */
  readonly dipping: Holding;
  /** Between loads, a lid on. */
  readonly covered: Holding;
}

export interface HeatReport {
  readonly warmUp: readonly WarmUpPoint[];
  /** As it is. */
  readonly now: HeatVariant;
  /** One thing changed at a time: each other cover, each other insulation, each other room given. */
  readonly variants: readonly HeatVariant[];
}

function holding(tank: HeatedTank, celsius: number, room: Room, phase: Phase): Holding {
  const lossW = tankLossW(tank, celsius, room, phase);
  const density = waterDensityKgM3(celsius);
  const joulePerKelvin = 1000 * sensibleHeatKj((tank.volumeL * density) / 1000, 1);
  const givenW = tank.heaterW === undefined ? undefined : tank.heaterW * tank.heaterEfficiency;
  const evaporation = evaporationKgPerH(tank, celsius, room, phase);
  return {
    lossW,
    powerW: lossW / tank.heaterEfficiency,
    holds: givenW === undefined ? null : givenW >= lossW,
    kelvinPerMinute: givenW === undefined ? null : (60 * (givenW - lossW)) / joulePerKelvin,
    coolingKelvinPerMinute: (60 * lossW) / joulePerKelvin,
    evaporationKgPerH: evaporation,
    evaporationLPerH: (1000 * evaporation) / density,
  };
}

function variant(tank: HeatedTank, celsius: number, room: Room): HeatVariant {
  const up = tank.heaterW === undefined ? undefined : heatUp(tank, celsius, room);
  return {
    cover: tank.cover,
    insulation: tank.insulation,
    room,
    minutes: up?.reached ? up.minutes : null,
    kWh: up?.reached ? up.kWh : null,
    dipping: holding(tank, celsius, room, "dipping"),
    covered: holding(tank, celsius, room, "heating"),
  };
}

const covers: readonly Cover[] = ["none", "lid", "balls"];
const insulations: readonly Insulation[] = ["none", "housing", "foam"];

/**
 * How a tank warms up, what holding it takes with a lid off and on, what evaporates, and what a cover, insulation
 * or another room would change.
 *
 * Rates of change m c dT/dt = η P - loss, at the bath's temperature. Losses as in `tankLossW`: known to some 20 %.
 * @source shah2014
 * @example
 * heatReport({ volumeL: 6, surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }).now.dipping.holds // => false
 * heatReport({ volumeL: 6, surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }).now.covered.lossW // => 187.0
 */
export function heatReport(
  tank: HeatedTank,
  celsius: number,
  room: Room,
  options: { readonly steps?: number; readonly rooms?: readonly Room[] } = {},
): HeatReport {
  const up = tank.heaterW === undefined ? undefined : heatUp(tank, celsius, room);
  const others: readonly HeatVariant[] = [
    ...covers
      .filter((cover) => cover !== tank.cover)
      .map((cover) => variant({ ...tank, cover }, celsius, room)),
    ...insulations
      .filter((insulation) => insulation !== tank.insulation)
      .map((insulation) => variant({ ...tank, insulation }, celsius, room)),
    ...(options.rooms ?? []).map((other) => variant(tank, celsius, other)),
  ];
  return {
    warmUp: warmUp(tank, celsius, room, {
      ...(options.steps === undefined ? {} : { steps: options.steps }),
      ...(up?.reached === false ? { stopsAtCelsius: up.celsius } : {}),
    }),
    now: variant(tank, celsius, room),
    variants: others,
  };
}
