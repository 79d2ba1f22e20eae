import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tankLossW } from "../../../../src/core/bath/heat/heat-loss.js";
import {
  evaporationKgPerH,
  type HeatedTank,
  heatUp,
  holdingPowerW,
} from "../../../../src/core/bath/heat/heating.js";
import { waterDensityKgM3 } from "../../../../src/core/bath/water.js";

const room = { celsius: 20, humidity: 0.5 };
const six: HeatedTank = {
  volumeL: 6,
  surfaceCm2: 450,
  wallAreaDm2: 18,
  insulation: "none",
  cover: "lid",
  heaterW: 400,
  heaterEfficiency: 0.9,
};
const minutes = (tank: HeatedTank, celsius = 80): number => {
  const up = heatUp(tank, celsius, room);
  return up.reached ? up.minutes : Number.NaN;
};
const jouleToWarm = (tank: HeatedTank, celsius: number): number =>
  tank.volumeL * waterDensityKgM3(celsius) * 4.186 * (celsius - room.celsius);

describe("heatUp", () => {
  test("gives m c ΔT/(η P) where nothing is lost", () => {
    const sealed = { ...six, surfaceCm2: 0, wallAreaDm2: 0 };
    expect(minutes(sealed)).toBeCloseTo(jouleToWarm(six, 80) / 360 / 60, 10);
  });

  test("gives the logarithm of a constant wall loss where the surface is sealed", () => {
    const wall = (12 * 18) / 100;
    const perKelvin = jouleToWarm(six, 80) / 60;
    const exact = ((perKelvin / wall) * Math.log(360 / (360 - wall * 60))) / 60;
    expect(minutes({ ...six, surfaceCm2: 0 })).toBeCloseTo(exact, 9);
  });

  test("agrees with the bath followed second by second", () => {
    const perKelvin = jouleToWarm(six, 80) / 60;
    const slope = (t: number): number => (360 - tankLossW(six, t, room, "heating")) / perKelvin;
    let celsius = 20;
    let before = celsius;
    let seconds = 0;
    while (celsius < 80) {
      before = celsius;
      celsius += slope(celsius + slope(celsius) / 2);
      seconds++;
    }
    const exact = seconds - 1 + (80 - before) / (celsius - before);
    expect(minutes(six)).toBeCloseTo(exact / 60, 4);
  });

  test("charges the whole heater for that time", () => {
    expect(heatUp(six, 80, room)).toEqual({
      reached: true,
      minutes: minutes(six),
      kWh: (0.4 * minutes(six)) / 60,
    });
  });

  test("takes no time for a bath no warmer than the room", () => {
    expect(heatUp(six, 20, room)).toEqual({ reached: true, minutes: 0, kWh: 0 });
    expect(heatUp(six, 15, room)).toEqual({ reached: true, minutes: 0, kWh: 0 });
  });

  test("says where a heater stops, the power it would take, and how long it takes with a lid", () => {
    const open = { ...six, cover: "none" } as const;
    const up = heatUp(open, 80, room);
    if (up.reached) throw new Error("reached");
    expect(tankLossW(open, up.celsius, room, "heating")).toBeCloseTo(360, 5);
    expect(up.withLid).toEqual({ reached: true, minutes: minutes(six) });
    expect(heatUp({ ...open, heaterW: up.neededW * 0.999 }, 80, room).reached).toBe(false);
    expect(heatUp({ ...open, heaterW: up.neededW * 1.001 }, 80, room).reached).toBe(true);
  });

  test("says what a lid reaches where that falls short too, and nothing of a lid where one is on", () => {
    const weak = heatUp({ ...six, cover: "balls", heaterW: 150 }, 80, room);
    const lidded = heatUp({ ...six, heaterW: 150 }, 80, room);
    if (weak.reached || lidded.reached) throw new Error("reached");
    expect(weak.withLid).toEqual({ reached: false, celsius: lidded.celsius });
    expect(lidded.celsius).toBeGreaterThan(weak.celsius);
    expect(lidded.withLid).toBeUndefined();
  });

  test("stays at the room's temperature without a heater, and below boiling with any", () => {
    const { heaterW: _, ...unheated } = six;
    expect(heatUp(unheated, 80, room)).toMatchObject({ reached: false, celsius: 20 });
    expect(heatUp({ ...six, heaterW: 1e6 }, 100, room)).toMatchObject({ reached: false, celsius: 99.9 });
  });

  test("is slower with a weaker heater or a hotter goal, and slower than without losses", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 3000, noNaN: true }),
        fc.double({ min: 30, max: 90, noNaN: true }),
        fc.constantFrom("none", "lid", "balls"),
        (heaterW, celsius, cover) => {
          const tank = { ...six, heaterW, cover } as const;
          const base = minutes(tank, celsius);
          fc.pre(!Number.isNaN(base));
          expect(base).toBeGreaterThan(minutes({ ...tank, heaterW: heaterW * 1.1 }, celsius));
          expect(base).toBeGreaterThan(minutes(tank, celsius - 1));
          expect(base * 60).toBeGreaterThan(jouleToWarm(tank, celsius) / (heaterW * 0.9));
        },
      ),
    );
  });
});

test("holding power is what the open tank loses over the heater's efficiency", () => {
  expect(holdingPowerW(six, 80, room)).toBeCloseTo(tankLossW(six, 80, room, "dipping") / 0.9, 12);
  expect(holdingPowerW(six, 80, room)).toBe(holdingPowerW({ ...six, cover: "none" }, 80, room));
});

test("a lid leaves a fifth of the vapour while heating up and all of it while dipping; balls leave 28 %", () => {
  const open = evaporationKgPerH({ ...six, cover: "none" }, 80, room, "dipping");
  expect(evaporationKgPerH(six, 80, room, "heating")).toBeCloseTo(0.2 * open, 12);
  expect(evaporationKgPerH(six, 80, room, "dipping")).toBe(open);
  expect(evaporationKgPerH({ ...six, cover: "balls" }, 80, room, "dipping")).toBeCloseTo(0.28 * open, 12);
});
