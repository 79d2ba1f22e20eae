import fc from "fast-check";
import {
  type BathHeat,
  bathHeat,
  type WorkedTank,
} from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { dip } from "../../../../../src/core/bath/heat/working/dip.js";
import { dyePace } from "../../../../../src/core/bath/heat/working/dye-pace.js";
import {
  type HeatState,
  immerseParts,
  liftParts,
  pourTopUp,
} from "../../../../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../../../../src/core/bath/heat/working/hold.js";
import { fallTo, riseTo } from "../../../../../src/core/bath/heat/working/rise-and-fall.js";
import type { Room } from "../../../../../src/core/model/batch.js";

export const room: Room = { celsius: 20, humidity: 0.5 };

/** A tank for 6 L at 80 °C. */
export const six = {
  surfaceCm2: 450,
  wallAreaDm2: 18,
  insulation: "none",
  cover: "lid",
  heaterW: 900,
  heaterEfficiency: 0.9,
  agitationW: 180,
} as const satisfies WorkedTank;

/** A tank of 1 L that loses heat through its walls alone, and so cools or warms by one exponential. */
export function exponentialTank(perSecond: number, roomCelsius: number, setCelsius: number): BathHeat {
  const sealed = { ...six, surfaceCm2: 0, wallAreaDm2: 100, heaterW: 0, agitationW: 0 };
  const perDm2 = bathHeat(sealed, setCelsius, room);
  const wallAreaDm2 = (100 * perSecond * perDm2.jPerLK) / perDm2.wallWPerK;
  return bathHeat({ ...sealed, wallAreaDm2 }, setCelsius, { celsius: roomCelsius, humidity: 0.5 });
}

export const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** A bath to work, and the tank that it is in. */
export interface WorkedSample {
  readonly tank: WorkedTank;
  readonly volumeL: number;
  readonly celsius: number;
  readonly room: Room;
}

/** Tanks of all covers, walls and heaters, with their volume, temperature and room. */
export const samples: fc.Arbitrary<WorkedSample> = fc
  .record({
    volumeL: real(1, 40),
    areaCm2PerL: fc.oneof({ weight: 9, arbitrary: real(20, 150) }, { weight: 1, arbitrary: fc.constant(0) }),
    wallDm2PerL: real(0.5, 6),
    insulation: fc.constantFrom("none" as const, "housing" as const, "foam" as const),
    cover: fc.constantFrom("none" as const, "lid" as const, "balls" as const),
    heaterWPerL: fc.oneof(
      { weight: 9, arbitrary: real(0, 400) },
      { weight: 1, arbitrary: fc.constant(undefined) },
    ),
    heaterEfficiency: real(0.5, 1),
    agitationWPerL: real(0, 60),
    celsius: real(35, 95),
    room: fc.record({ celsius: real(5, 30), humidity: real(0.1, 0.95) }),
  })
  .map(({ volumeL, celsius, room, heaterWPerL, ...tank }) => ({
    volumeL,
    celsius,
    room,
    tank: {
      ...tank,
      surfaceCm2: tank.areaCm2PerL * volumeL,
      wallAreaDm2: tank.wallDm2PerL * volumeL,
      ...(heaterWPerL === undefined ? {} : { heaterW: heaterWPerL * volumeL }),
      agitationW: tank.agitationWPerL * volumeL,
    },
  }));

/** The tank with a heater of a known power. */
export const limited = (tank: WorkedTank, volumeL: number): WorkedTank => ({
  ...tank,
  heaterW: tank.heaterW ?? 250 * volumeL,
});

/** One thing that is done with a bath; amounts per litre of it. */
export type Move = (heat: BathHeat, state: HeatState) => void;

const phases = ["covered", "dipping", "open", "cooling"] as const;

/** Whatever happens to a bath, in any order. */
export const moves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.oneof(
    fc.record({ phase: fc.constantFrom(...phases), seconds: real(0, 1800) }).map(
      ({ phase, seconds }): Move =>
        (heat, state) =>
          hold(heat, heat[phase], state, seconds),
    ),
    fc.record({ share: real(0, 0.2), seconds: real(1, 400), kj: real(0, 150) }).map(
      ({ share, seconds, kj }): Move =>
        (heat, state) => {
          const jPerK = share * state.volumeL * heat.jPerLK;
          immerseParts(heat, state, { jPerK, celsius: heat.air.room.celsius });
          dip(heat, state, seconds, dyePace(1000 * kj, heat.celsius));
          liftParts(state);
        },
    ),
    fc.record({ share: real(0, 0.3), celsius: real(5, 60) }).map(
      ({ share, celsius }): Move =>
        (heat, state) =>
          pourTopUp(heat, state, { volumeL: share * state.volumeL, celsius }),
    ),
    real(0, 5).map(
      (below): Move =>
        (heat, state) =>
          riseTo(heat, state, heat.celsius - below),
    ),
    real(0, 30).map(
      (fall): Move =>
        (heat, state) =>
          fallTo(heat, state, state.celsius - fall),
    ),
  ),
  { minLength: 1, maxLength: 12 },
);
