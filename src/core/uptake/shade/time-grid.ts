import { done, type Outcome } from "../../fault.js";
import type { Base, Dye, Handling, Lab } from "../../model/batch.js";
import { dipTimer } from "../law/dip-time.js";
import { madeUpStrength } from "../law/measured-at.js";
import { aimAt } from "./aim.js";
import { type DyeModel, dyeModel } from "./dye-model.js";
import type { ShadeWish } from "./shade-time.js";

/**
 * Temperatures of a card, as differences from the dye's own [K]: a bath that waits for its heater is cooler by a few K,
 * one that is overheated by less. Common practice, no source.
 */
const kelvinsAway = [-4, -3, -2, -1, 0, 1, 2] as const;

/**
 * Strengths of a card [-], from a bath that evaporation has thickened to one that is half used up. Common practice, no
 * source.
 */
const strengths = [1.1, 1, 0.9, 0.8, 0.7, 0.6, 0.5] as const;

/** Dip times for one shade over temperature and strength: `seconds[i][j]` at `strengths[i]` and `celsius[j]`. */
export interface TimeGrid {
  readonly celsius: readonly number[];
  readonly strengths: readonly number[];
  readonly seconds: readonly (readonly number[])[];
}

/** A card of dip times for one shade, to hang beside the tank. */
export interface TimeCard extends TimeGrid {
  readonly dye: string;
  readonly name: string;
  readonly base: string | null;
  /** Null where one swatch does not tell it. */
  readonly lab: Lab | null;
  readonly deltaE00: number | null;
  readonly tolerance: number;
  readonly reachable: boolean;
  /** Whether swatches told how the dye answers to strength, and to temperature. */
  readonly strengthMeasured: boolean;
  readonly temperatureMeasured: boolean;
  /** On all times of the dye, from the bath log; 1 without one. */
  readonly timeFactor: number;
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
}

/** The card of a shade. Faults as of the time for it. */
export function timeCard(
  dye: Dye,
  handling: Handling,
  base: Base | undefined,
  wish: ShadeWish,
): Outcome<TimeCard> {
  const read = dyeModel(dye, handling);
  if (!read.ok) return read;
  const aim = aimAt(read.value, { ...wish, dye }, base);
  if (!aim.ok) return aim;
  const { lab, deltaE00, reachable, freshSeconds } = aim.value;
  const { response } = read.value;
  return done(
    {
      dye: dye.name,
      name: wish.name,
      base: (base ?? dye.base)?.name ?? null,
      lab,
      deltaE00,
      tolerance: wish.tolerance,
      reachable,
      strengthMeasured: response.strengthExponent !== undefined || dye.strengthExponent !== undefined,
      temperatureMeasured: response.activationEnergyJPerMol !== undefined || !dye.activationEnergyAssumed,
      timeFactor: read.value.uptake.timeFactor ?? 1,
      shortestSeconds: handling.shortestSeconds,
      longestSeconds: handling.longestSeconds,
      ...timeGrid(read.value, freshSeconds),
    },
    read.faults,
  );
}

/**
 * Dip times of a card for the wall: from 4 °C under to 2 °C over the dye's temperature, from 50 to 110 % strength.
 * @param freshSeconds time that gives the shade in a fresh bath at the temperature that the dye was measured at [s]
 */
function timeGrid({ uptake, dye }: Pick<DyeModel, "uptake" | "dye">, freshSeconds: number): TimeGrid {
  const celsius = kelvinsAway.map((kelvin) => dye.celsius + kelvin);
  const timers = celsius.map((at) => dipTimer(uptake, at, madeUpStrength(dye)));
  return {
    celsius,
    strengths,
    seconds: strengths.map((strength) => timers.map((timer) => timer(freshSeconds, strength))),
  };
}
