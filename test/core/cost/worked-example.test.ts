import { expect, test } from "vitest";
import { moneyText } from "../../../src/core/cost/rounding.js";
import type { Batch, Dye, Tank } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";

/**
 * One small whole batch reckoned by hand. The bath is as warm as the room and the air is saturated, so nothing
 * is heated and nothing evaporates, and cold volumes are hot ones; a parabolic dye without swatches makes the
 * depth s √(t/300 s), so a dip takes 300 s (D/s)².
 */
const tank: Tank = {
  name: "five",
  volumeL: 5,
  capacityL: 8,
  // No open surface: nothing evaporates when the stirring warms the bath.
  surfaceCm2: 0,
  surfaceAssumed: false,
  wallAreaDm2: 14,
  insulation: "none",
  cover: "none",
  heaterW: 500,
  heaterEfficiency: 1,
  agitationW: 360,
  equipment: { price: 100, lifeHours: 1000 },
};
const dye: Dye = {
  name: "moss",
  price: 40,
  dilution: { kind: "liquid", fraction: 0.1 },
  celsius: 20,
  reading: { illuminant: "D65", observer: 10 },
  swatches: [],
  law: "parabolic",
  ratePerSecond: 0.01,
  activationEnergyAssumed: true,
  // Nor does it dye faster then.
  activationEnergyJPerMol: 0,
  uptakePerDm2: 0.5,
  uptakeAssumed: false,
};
const tag = {
  name: "tag",
  massG: 10,
  areaDm2: 0.5,
  volumeCm3: 10,
  blank: 1,
  perLoad: 10,
  heatCapacityKjPerKgK: 1.7,
};
const ring = {
  name: "ring",
  massG: 20,
  areaDm2: 1.5,
  volumeCm3: 20,
  blank: 3,
  perLoad: 5,
  heatCapacityKjPerKgK: 1.7,
};
// Depths √(75/300) = 0.5 and √(147/300) = 0.7.
const pale = { name: "pale", dye, target: { kind: "time", seconds: 75 }, tolerance: 1.5 } as const;
const full = { name: "full", dye, target: { kind: "time", seconds: 147 }, tolerance: 1.5 } as const;
const batch: Batch = {
  name: "worked",
  currency: "EUR",
  rates: { electricityPerKwh: 0.4, waterPerM3: 4, labourPerHour: 36, disposalPerL: 0.6 },
  room: { celsius: 20, humidity: 1 },
  dryers: [
    {
      name: "rack",
      capacity: 25,
      celsius: 60,
      minutes: 60,
      powerW: 500,
      duty: 0.6,
      equipment: { price: 90, lifeHours: 3000 },
    },
  ],
  bases: [],
  dyes: [dye],
  parts: [tag, ring],
  shades: [pale, full],
  tanks: [tank],
  baths: [{ index: 0, tank, dye, start: { kind: "fresh" }, topUp: "none", after: "dump" }],
  orders: [
    { index: 0, part: tag, shade: pale, quantity: 18 },
    { index: 1, part: ring, shade: full, quantity: 9 },
  ],
  handling: {
    loadSeconds: 40,
    loadPartSeconds: 0,
    drainSeconds: 15,
    rinseSeconds: 30,
    rinses: 1,
    rinseWaterL: 3,
    rinseEvery: 1,
    unloadSeconds: 15,
    unloadPartSeconds: 0,
    belowKelvin: 1,
    coolToCelsius: 45,
    dryerLoadingMinutes: 3,
    setUpMinutes: 10,
    cleanUpMinutes: 20,
    timingSeconds: 2,
    shortestSeconds: 15,
    longestSeconds: 300,
    dragOutMlPerDm2: 2,
    dragOutAssumed: false,
    liquorRatioLPerKg: 20,
    freeboard: 0.05,
    assumed: [],
  },
  consumables: { perBath: 0.7, perLoad: 0.1, perPart: 0.03 },
  yield: 0.9,
  pricing: { overhead: 0.1, fees: 0.04, margin: 0.46, tax: 0.2, ending: 0.9 },
  limits: {},
};

const outcome = planBatch(batch);
if (!outcome.ok) throw new Error("no plan");
const plan = outcome.value;

test("a hand-reckoned batch starts 20 tags and 10 rings in two loads each", () => {
  // 18/0.9 = 20 tags, 9/0.9 = 10 rings; 10 tags and 5 rings a load.
  expect(plan.orders.map((order) => order.started)).toEqual([20, 10]);
  expect(plan.baths[0]!.loads.map((load) => [load.part, load.parts])).toEqual([
    ["tag", 10],
    ["tag", 10],
    ["ring", 5],
    ["ring", 5],
  ]);
});

/*
 * 5000 mL of liquor hold 500 mL of concentrate. A load takes up 0.5 A D, then carries out 2 A mL of liquor.
 *   load  A dm2  D    taken up  strength before, after, mean          seconds 300 (D/mean)²  dragged out       left mL      volume mL
 *   1     5      0.5  1.25      1,           0.9975,      0.99875      75.18785215            0.9975           497.7525     4990
 *   2     5      0.5  1.25      0.9975,      0.99499499,  0.996247495  75.56605997            0.99499499       495.507505   4980
 *   3     7.5    0.7  2.625     0.99499499,  0.989723906, 0.992359448  149.27233186           1.484585858      491.39791915 4965
 *   4     7.5    0.7  2.625     0.989723906, 0.984436897, 0.987080401  150.87326086           1.476655345      487.29626381 4950
 */
test("a hand-reckoned batch dips for these seconds and leaves this much dye", () => {
  const seconds = [75.18785215, 75.56605997, 149.27233186, 150.87326086];
  plan.baths[0]!.loads.forEach((load, i) => {
    expect(load.dipSeconds).toBeCloseTo(seconds[i]!, 7);
  });
  const balance = plan.baths[0]!.dyeBalance;
  if (!("leftMl" in balance)) throw new Error("a liquid dye is balanced in mL");
  expect(balance.startMl).toBeCloseTo(500, 9);
  expect(balance.leftMl).toBeCloseTo(487.29626381, 7);
});

/*
 * Shares: areas 10 of 25 dm2 and 15 of 25 dm2, so 0.4 and 0.6 of the bath; parts 20 and 10 of 30, so 2/3 and 1/3.
 * Tags
 *   blank        20 × 1.00                                                      = 20
 *   dye          (2.2475 + 2.24499499) mL × 0.04 + 487.29626381 × 0.04 × 0.4    = 7.97644002
 *   water        2 × 3 L × 0.004 + 4500 mL × 0.000004 × 0.4                      = 0.0312
 *   energy       150.75391212 s × 360 W × 0.4/3600000 + 2 h × 300 W × 0.0004 × 2/3 = 0.16603016
 *   labour       (200 + 150.75391212) s × 0.01 + 30 min × 0.6 × 0.4 + 2 × 3 min × 0.6 × 2/3 = 13.10753912
 *   consumables  2 × 0.10 + 0.70 × 0.4 + 20 × 0.03                              = 1.08
 *   equipment    850.89950484 s × 0.1/3600 × 0.4 + 2 h × 0.03 × 2/3              = 0.04945444
 *   disposal     5 L × 0.6 × 0.4                                                 = 1.2
 *   together 43.61066374, a good tag 43.61066374/18 = 2.42281465; × 1.1/0.5 × 1.2 = 6.3962, up to 6.90
 * Rings
 *   blank        10 × 3.00                                                       = 30
 *   dye          (4.10958586 + 4.10165534) × 0.04 + 487.29626381 × 0.04 × 0.6    = 12.02355998
 *   water        2 × 3 L × 0.004 + 4500 × 0.000004 × 0.6                          = 0.0348
 *   energy       300.14559272 s × 0.00004 + 0.24 × 1/3                            = 0.09200582
 *   labour       (200 + 300.14559272) × 0.01 + 18 × 0.6 + 3.6 × 1/3              = 17.00145593
 *   consumables  2 × 0.10 + 0.70 × 0.6 + 10 × 0.03                               = 0.92
 *   equipment    850.89950484 × 0.1/3600 × 0.6 + 0.06 × 1/3                       = 0.03418166
 *   disposal     3 × 0.6                                                          = 1.8
 *   together 61.90600339, a good ring 61.90600339/9 = 6.87844482; × 2.64 = 18.1591, up to 18.90
 */
const sheets = [
  {
    blank: 20,
    dye: 7.97644002,
    water: 0.0312,
    energy: 0.16603016,
    labour: 13.10753912,
    consumables: 1.08,
    equipment: 0.04945444,
    disposal: 1.2,
  },
  {
    blank: 30,
    dye: 12.02355998,
    water: 0.0348,
    energy: 0.09200582,
    labour: 17.00145593,
    consumables: 0.92,
    equipment: 0.03418166,
    disposal: 1.8,
  },
] as const;

test("a hand-reckoned batch costs this, line by line", () => {
  plan.orders.forEach((order, i) => {
    for (const [line, amount] of Object.entries(sheets[i]!))
      expect(order.lines![line as keyof (typeof sheets)[0]], `${order.part} ${line}`).toBeCloseTo(amount, 7);
  });
});

test("a hand-reckoned batch costs 2.42 a good tag, 6.88 a good ring and 105.52 in all, sold at 6.90 and 18.90", () => {
  expect(plan.orders.map((order) => moneyText(order.costPerPart!, "EUR"))).toEqual(["2.42", "6.88"]);
  expect(plan.orders.map((order) => moneyText(order.total!, "EUR"))).toEqual(["43.61", "61.91"]);
  expect(moneyText(plan.totals.cost!, "EUR")).toBe("105.52");
  expect(plan.orders.map((order) => order.price)).toEqual([6.9, 18.9]);
});

/*
 * Before the first part: 500 mL × 0.04 + 4500 mL × 0.000004 = 20.018 of make-up, 30 min × 0.6 + 0.70 = 18.70 of
 * set-up, 3.00 of disposal: 41.718. With the parts: blanks 50, per part 0.90, dryer 0.24 + 0.06 + 3.60, dipping
 * 850.89950484 s × 0.01, agitation 450.89950484 s × 0.00004, rinsing 0.048, per load 0.40, tank 850.89950484 s ×
 * 0.1/3600: 63.79866712, a good part 63.79866712/27 = 2.36291360. A tag is sold at 6.90 (2.42281465 × 2.2 × 1.2 = 6.40
 * raised to the ending) and a ring at 18.90 (6.87844482 × 2.2 × 1.2 = 18.16), before tax 5.75 and 15.75, on average
 * 9.08333333; after fees and cost 9.08333333 × 0.96 - 2.36291360 × 1.1 = 6.12079504 are left of it, and
 * 41.718 × 1.1/6.12079504 = 7.50 parts pay for the colour.
 */
test("a hand-reckoned colour pays from the 8th part on", () => {
  const [colour, ...others] = plan.colours;
  expect(others).toEqual([]);
  expect(colour!.fixed.makeUp).toBeCloseTo(20.018, 9);
  expect(colour!.fixed.setUp).toBeCloseTo(18.7, 9);
  expect(colour!.fixed.heating).toBe(0);
  expect(colour!.fixed.disposal).toBeCloseTo(3, 9);
  expect(colour!.variablePerPart).toBeCloseTo(2.3629136, 7);
  expect(colour!.netPrice).toBeCloseTo(9.08333333, 7);
  expect(colour!.breakEvenParts).toBe(8);
});
