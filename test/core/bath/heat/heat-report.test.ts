import { expect, test } from "vitest";
import { tankLossW } from "../../../../src/core/bath/heat/heat-loss.js";
import { heatReport } from "../../../../src/core/bath/heat/heat-report.js";
import {
  evaporationKgPerH,
  type HeatedTank,
  heatUp,
  holdingPowerW,
} from "../../../../src/core/bath/heat/heating.js";
import { warmUp } from "../../../../src/core/bath/heat/warm-up.js";
import { waterDensityKgM3 } from "../../../../src/core/bath/water.js";
import type { Room } from "../../../../src/core/model/batch.js";
import { tank as sample } from "../../plan/sample.js";

const room: Room = { celsius: 20, humidity: 0.5 };
const tank: HeatedTank = { ...sample, heaterW: 600 };
const heatCapacity = (sample.volumeL * waterDensityKgM3(80) * 4186) / 1000;

test("the curve begins cold at 0 min, rises ever slower and ends with the time of heating up", () => {
  const curve = warmUp(tank, 80, room);
  const whole = heatUp(tank, 80, room);
  expect(curve).toHaveLength(13);
  expect(curve[0]).toEqual({ minutes: 0, celsius: 20 });
  expect(curve.at(-1)!.celsius).toBe(80);
  expect(whole.reached && whole.minutes).toBeCloseTo(curve.at(-1)!.minutes, 8);
  const gaps = curve.slice(1).map((point, i) => point.minutes - curve[i]!.minutes);
  gaps.slice(1).forEach((gap, i) => {
    expect(gap).toBeGreaterThan(gaps[i]!);
  });
});

test("the curve is that of small steps of time", () => {
  const seconds = 0.5;
  let [celsius, minutes] = [20, 0];
  for (const point of warmUp(tank, 80, room)) {
    while (minutes < point.minutes) {
      celsius += (seconds * (540 - tankLossW(tank, celsius, room, "heating"))) / heatCapacity;
      minutes += seconds / 60;
    }
    expect(Math.abs(celsius - point.celsius)).toBeLessThan(0.05);
  }
});

test("a tank that loses heat through its walls alone warms up as T = Ta + P/UA (1 - exp(-UA t/mc))", () => {
  const closed: HeatedTank = { ...tank, surfaceCm2: 0, heaterW: 300 };
  const lossPerKelvin = tankLossW(closed, 80, room, "heating") / 60;
  for (const { minutes, celsius } of warmUp(closed, 80, room))
    expect(celsius).toBeCloseTo(
      20 + ((300 * 0.9) / lossPerKelvin) * -Math.expm1((-lossPerKelvin * 60 * minutes) / heatCapacity),
      8,
    );
});

test("a heater that stops short has a curve that nears the temperature where it stops", () => {
  const { warmUp: curve, now } = heatReport({ ...tank, heaterW: 150 }, 80, room);
  const up = heatUp({ ...tank, heaterW: 150 }, 80, room);
  expect(now.minutes).toBeNull();
  if (up.reached) throw new Error("it reaches 80 °C");
  expect(curve.at(-1)!.celsius).toBeCloseTo(20 + 0.98 * (up.celsius - 20), 8);
  expect(Number.isFinite(curve.at(-1)!.minutes)).toBe(true);
});

test("a tank without a heater has no curve and no warming, and still cools and evaporates", () => {
  const { heaterW: _, ...cold } = tank;
  const report = heatReport(cold, 80, room);
  expect(report.warmUp).toEqual([]);
  expect(report.now).toMatchObject({ minutes: null, kWh: null });
  expect(report.now.dipping).toMatchObject({ holds: null, kelvinPerMinute: null });
  expect(report.now.dipping.coolingKelvinPerMinute).toBeGreaterThan(0.5);
});

test("a heater of just the holding power holds with the lid off, and one of 1 W less cools by that watt", () => {
  const power = holdingPowerW(tank, 80, room);
  const holding = heatReport({ ...tank, heaterW: power * (1 + 1e-12) }, 80, room).now.dipping;
  expect(holding.holds).toBe(true);
  expect(holding.kelvinPerMinute).toBeCloseTo(0, 8);
  const short = heatReport({ ...tank, heaterW: power - 1 / 0.9 }, 80, room).now.dipping;
  expect(short.holds).toBe(false);
  expect(short.kelvinPerMinute).toBeCloseTo(-60 / heatCapacity, 8);
});

test("with the heater off a bath cools by its loss over m c", () => {
  const { dipping, covered } = heatReport(tank, 80, room).now;
  for (const { lossW, coolingKelvinPerMinute, kelvinPerMinute } of [dipping, covered]) {
    expect(coolingKelvinPerMinute).toBeCloseTo((60 * lossW) / heatCapacity, 10);
    expect(kelvinPerMinute! + coolingKelvinPerMinute).toBeCloseTo((60 * 540) / heatCapacity, 10);
  }
});

test("evaporation is that of the tank with the lid off, and a fifth with it on, in hot litres by the density", () => {
  const { dipping, covered } = heatReport(tank, 80, room).now;
  expect(dipping.evaporationKgPerH).toBe(evaporationKgPerH(tank, 80, room, "dipping"));
  expect(covered.evaporationKgPerH).toBeCloseTo(0.2 * dipping.evaporationKgPerH, 12);
  expect(dipping.evaporationLPerH).toBeCloseTo(dipping.evaporationKgPerH / 0.9718, 4);
});

test("the variants change one thing each: better covers and insulation save, a cold room costs", () => {
  const bare: HeatedTank = { ...tank, cover: "none", heaterW: 900 };
  const cold: Room = { celsius: 10, humidity: 0.5 };
  const { now, variants } = heatReport(bare, 80, room, { rooms: [cold] });
  expect(variants.map(({ cover, insulation }) => `${cover} ${insulation}`)).toEqual([
    "lid none",
    "balls none",
    "none housing",
    "none foam",
    "none none",
  ]);
  const [lid, balls, , foam, coldRoom] = variants;
  expect(lid!.minutes!).toBeLessThan(balls!.minutes!);
  expect(balls!.minutes!).toBeLessThan(now.minutes!);
  expect(lid!.dipping).toEqual(now.dipping);
  expect(balls!.dipping.lossW).toBeLessThan(now.dipping.lossW);
  expect(foam!.kWh!).toBeLessThan(now.kWh!);
  expect(foam!.dipping.evaporationKgPerH).toBe(now.dipping.evaporationKgPerH);
  expect(coldRoom!.minutes!).toBeGreaterThan(now.minutes!);
});
