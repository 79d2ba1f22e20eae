import { mapped } from "../../mapped.js";
import type { Batch, Rates } from "../../model/batch.js";
import { dyesOf } from "../../model/dyes-of.js";
import { blankCauses } from "./blank-causes.js";
import { priceAndAmount, wholeLine } from "./change.js";
import { labourCauses } from "./labour-causes.js";
import type { CauseWords, LineRecord } from "./line-record.js";

/** Keeps the codes of a record's causes in its type. */
const line = <const Code extends string>(record: LineRecord<Code>): LineRecord<Code> => record;

const rateGiven =
  (rate: keyof Rates) =>
  ({ rates }: Batch): boolean =>
    rates[rate] !== undefined;

const unless = (given: unknown, what: string): string[] => (given === undefined ? [what] : []);

/** What is missing of each tank that a bath is in. */
const ofTanks = ({ baths }: Batch, missing: (tank: Batch["tanks"][number]) => string[]): string[] =>
  [...new Set(mapped(baths, ({ tank }) => tank))].flatMap(missing);

const yieldWords: CauseWords = { name: "parts started per good one", figure: "number" };

/** The lines of a cost sheet, in the order in which they are printed. */
export const lineRecords = {
  blank: line({
    title: "blank",
    isGiven: ({ parts }) => parts.some(({ blank }) => blank !== undefined),
    missing: ({ orders }) =>
      [...new Set(mapped(orders, ({ part }) => part))].flatMap(({ name, blank }) =>
        unless(blank, `the undyed part "${name}"`),
      ),
    causes: blankCauses,
    words: { "blank-price": { name: "undyed part", figure: "money" }, yield: yieldWords },
  }),
  dye: line({
    title: "dye",
    isGiven: ({ dyes }) => dyes.some(({ price }) => price !== undefined),
    missing: ({ baths }) =>
      [...new Set(baths.flatMap(({ dye }) => dyesOf(dye)))].flatMap(({ name, price }) =>
        unless(price, `dye "${name}"`),
      ),
    causes: priceAndAmount("dyePrice", "dye-price", "dye-amount"),
    words: {
      "dye-price": { name: "price of dye", figure: "money" },
      "dye-amount": { name: "mL or g of dye per part", figure: "thousandths" },
    },
  }),
  water: line({
    title: "water",
    isGiven: rateGiven("waterPerM3"),
    missing: ({ rates }) => unless(rates.waterPerM3, "water"),
    causes: priceAndAmount("waterPerM3", "water-price", "water-amount"),
    words: {
      "water-price": { name: "price of water", figure: "money" },
      "water-amount": { name: "L of water per part", figure: "thousandths" },
    },
  }),
  energy: line({
    title: "energy",
    isGiven: rateGiven("electricityPerKwh"),
    missing: (batch) => [
      ...unless(batch.rates.electricityPerKwh, "electricity"),
      ...ofTanks(batch, ({ name, heaterW }) =>
        unless(heaterW, `heating up tank "${name}" (no heater power)`),
      ),
    ],
    causes: priceAndAmount("electricityPerKwh", "electricity-price", "energy-amount"),
    words: {
      "electricity-price": { name: "price of electricity", figure: "money" },
      "energy-amount": { name: "kWh per part", figure: "amount" },
    },
  }),
  labour: line({
    title: "labour",
    isGiven: rateGiven("labourPerHour"),
    missing: ({ rates }) => unless(rates.labourPerHour, "labour"),
    causes: labourCauses,
    words: {
      "labour-rate": { name: "labour per hour", figure: "money" },
      "load-size": { name: "parts a load", figure: "parts" },
      yield: yieldWords,
      strength: { name: "dip time by bath strength", figure: "share" },
      "dip-time": { name: "dip time", figure: "seconds" },
      "handling-time": { name: "handling per load", figure: "seconds" },
      "set-up-share": { name: "set-up, cleaning and dryer loading per part", figure: "minutes" },
    },
  }),
  consumables: line({
    title: "consumables",
    isGiven: ({ consumables }) => Object.values(consumables).some((each) => each > 0),
    missing: () => [],
    causes: wholeLine("consumables"),
    words: { consumables: { name: "consumables", figure: "money" } },
  }),
  equipment: line({
    title: "equipment",
    isGiven: ({ tanks, dryers }) => [...tanks, ...dryers].some(({ equipment }) => equipment !== undefined),
    missing: (batch) => {
      const [dryer] = batch.dryers;
      return [
        ...ofTanks(batch, ({ name, equipment }) => unless(equipment, `wear of tank "${name}"`)),
        ...(dryer ? unless(dryer.equipment, `wear of dryer "${dryer.name}"`) : ["drying (no dryer)"]),
      ];
    },
    causes: wholeLine("equipment"),
    words: { equipment: { name: "equipment", figure: "money" } },
  }),
  disposal: line({
    title: "disposal",
    isGiven: rateGiven("disposalPerL"),
    missing: ({ rates }) => unless(rates.disposalPerL, "disposal of spent liquor"),
    causes: priceAndAmount("disposalPerL", "disposal-price", "disposal-amount"),
    words: {
      "disposal-price": { name: "price of disposal", figure: "money" },
      "disposal-amount": { name: "L of spent liquor per part", figure: "amount" },
    },
  }),
};

export type CostLine = keyof typeof lineRecords;

/** What a change of cost comes from. A price is what a unit costs, an amount how much of it a good part takes. */
export type CauseCode = { [Line in CostLine]: keyof (typeof lineRecords)[Line]["words"] }[CostLine];

/** The keys of the lines, in their order. */
export const costLines = Object.keys(lineRecords) as readonly CostLine[];

/** What a cause on a line is called, and what its figure counts. */
export const causeWords = (key: CostLine, code: CauseCode): CauseWords =>
  (lineRecords[key].words as Readonly<Record<CauseCode, CauseWords>>)[code];
