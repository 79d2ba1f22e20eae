import type { Batch, Bath, Dye, Handling, Order, Part, Shade, Tank } from "../../../src/core/model/batch.js";

/** A small batch for tests of the arithmetic: one tank, one dye, two shades, two parts, prices for everything. */
export const tank: Tank = {
  name: "six",
  volumeL: 6,
  capacityL: 7.2,
  surfaceCm2: 450,
  surfaceAssumed: false,
  wallAreaDm2: 16.5,
  insulation: "none",
  cover: "lid",
  heaterW: 600,
  heaterEfficiency: 0.9,
  agitationW: 180,
  equipment: { price: 140, lifeHours: 1500 },
};

export const dye: Dye = {
  name: "coral",
  price: 46,
  dilution: { kind: "liquid", fraction: 0.1 },
  celsius: 80,
  reading: { illuminant: "D65", observer: 10 },
  swatches: [],
  law: "first-order",
  ratePerSecond: 0.012,
  activationEnergyAssumed: true,
  activationEnergyJPerMol: 75_000,
  uptakePerDm2: 0.03,
  uptakeAssumed: false,
};

export const hook: Part = {
  name: "hook",
  massG: 6.4,
  areaDm2: 0.41,
  volumeCm3: 6.9,
  blank: 1.84,
  perLoad: 24,
  heatCapacityKjPerKgK: 1.7,
};
export const tray: Part = {
  name: "tray",
  massG: 31,
  areaDm2: 1.9,
  volumeCm3: 33,
  blank: 4.1,
  heatCapacityKjPerKgK: 1.7,
};
export const light: Shade = { name: "light", dye, target: { kind: "time", seconds: 30 }, tolerance: 1.5 };
export const deep: Shade = { name: "deep", dye, target: { kind: "time", seconds: 120 }, tolerance: 1.5 };

export const handling: Handling = {
  loadSeconds: 15,
  loadPartSeconds: 2,
  drainSeconds: 15,
  rinseSeconds: 30,
  rinses: 1,
  rinseWaterL: 2,
  rinseEvery: 1,
  unloadSeconds: 10,
  unloadPartSeconds: 1,
  belowKelvin: 1,
  coolToCelsius: 45,
  dryerLoadingMinutes: 3,
  setUpMinutes: 15,
  cleanUpMinutes: 15,
  timingSeconds: 2,
  shortestSeconds: 15,
  longestSeconds: 300,
  dragOutMlPerDm2: 0.8,
  dragOutAssumed: false,
  liquorRatioLPerKg: 20,
  freeboard: 0.05,
  assumed: [],
};

export const bath: Bath = {
  index: 0,
  tank,
  dye,
  start: { kind: "fresh" },
  topUp: "strength",
  after: "keep",
  everyDays: 1,
};

export const order = (index: number, part: Part, shade: Shade, quantity: number): Order => ({
  index,
  part,
  shade,
  quantity,
});

export const batch: Batch = {
  name: "sample",
  currency: "EUR",
  rates: { electricityPerKwh: 0.31, waterPerM3: 4.2, labourPerHour: 34, disposalPerL: 0.6 },
  room: { celsius: 20, humidity: 0.5 },
  dryers: [
    {
      name: "trays",
      capacity: 60,
      celsius: 70,
      minutes: 60,
      powerW: 500,
      duty: 0.6,
      equipment: { price: 90, lifeHours: 3000 },
    },
  ],
  bases: [],
  dyes: [dye],
  parts: [hook, tray],
  shades: [light, deep],
  tanks: [tank],
  baths: [bath],
  orders: [order(0, tray, deep, 20), order(1, hook, light, 97)],
  handling,
  consumables: { perBath: 0.4, perLoad: 0.05, perPart: 0.02 },
  yield: 0.97,
  limits: {},
};

/** A batch whose baths stay at their temperature: parts without a heat of their own, warm top-ups, a strong heater. */
export const isothermal = (of: Batch): Batch => ({
  ...of,
  baths: of.baths.map((one) => ({ ...one, tank: { ...one.tank, heaterW: 6000 } })),
  handling: { ...of.handling, topUpCelsius: Math.max(...of.baths.map((one) => one.dye.celsius)) },
  orders: of.orders.map((one) => ({ ...one, part: { ...one.part, heatCapacityKjPerKgK: 0 } })),
});
