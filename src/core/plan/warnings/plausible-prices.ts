import { type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch, Dye } from "../../model/batch.js";
import { type DyeKind, dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { shortNumber } from "../../quantity/text/short-number.js";

// Prices are in any currency, so they are held against each other. Bounds that no shop of this kind passes but by a
// slip of unit. Common practice, no source.
/** An hour of labour in kWh of electricity. */
const labourInKwh = { least: 5, most: 1000 };
/** The others in hours of labour. */
const litreOrKgOfDyeInHours: Readonly<Record<DyeKind, Range>> = {
  liquid: { least: 0.005, most: 100 },
  powder: { least: 0.01, most: 300 },
};
const m3OfWaterInHours = { least: 0.002, most: 5 };
const litreOfDisposalInHours = { least: 0, most: 2 };

interface Range {
  readonly least: number;
  readonly most: number;
}

/** A price, and what it may have been given per by mistake: how many of those its own unit has. */
interface Price {
  readonly path: readonly (string | number)[];
  /** "a litre of dye" */
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly per: string;
  readonly slips: readonly { readonly per: string; readonly count: number }[];
}

const within = (ratio: number, { least, most }: Range): boolean => ratio >= least && ratio <= most;

/** The slip that brings a ratio of prices into its range. */
const slipOf = ({ slips }: Price, ratio: number, range: Range) =>
  slips.find(({ count }) => within(ratio / count, range));

/** The warning on a price that is out of all proportion to another. */
function outOfProportion(price: Price, range: Range, yardstick: Pick<Price, "value" | "what">): Fault[] {
  const ratio = price.value / yardstick.value;
  if (!Number.isFinite(ratio) || price.value === 0 || within(ratio, range)) return [];
  const slip = slipOf(price, ratio, range);
  return [
    warning(
      "price-scale",
      price.path,
      `${price.what} costs ${shortNumber(price.value)}, ${shortNumber(ratio, 2)} times ${yardstick.what}`,
      slip === undefined
        ? "check both prices and their units"
        : `write ${shortNumber(price.value / slip.count)} ${price.unit} if it is meant per ${price.per}, not per ${slip.per}`,
    ),
  ];
}

const labourOf = (value: number): Price => ({
  path: ["rates", "labour"],
  what: "an hour of labour",
  value,
  unit: "/h",
  per: "hour",
  slips: [
    { per: "minute", count: 60 },
    { per: "day", count: 1 / 24 },
  ],
});

const electricityOf = (value: number): Price => ({
  path: ["rates", "electricity"],
  what: "a kWh of electricity",
  value,
  unit: "/kWh",
  per: "kWh",
  slips: [{ per: "Wh", count: 1000 }],
});

const waterOf = (value: number): Price => ({
  path: ["rates", "water"],
  what: "a cubic metre of water",
  value,
  unit: "/m3",
  per: "cubic metre",
  slips: [{ per: "litre", count: 1000 }],
});

const disposalOf = (value: number): Price => ({
  path: ["rates", "disposal"],
  what: "the disposal of a litre",
  value,
  unit: "/L",
  per: "litre",
  slips: [{ per: "millilitre", count: 1000 }],
});

const dyeOf = ({ name, dilution }: Dye, value: number): Price => {
  const { unit, per, thousandth } = dyeKinds[dilution.kind].priced;
  return {
    path: ["dyes", name, "price"],
    what: `a ${per} of dye "${name}"`,
    value,
    unit,
    per,
    slips: [{ per: thousandth, count: 1000 }],
  };
};

/** Warnings on prices that are hardly meant. Labour is held against electricity, the others against labour. */
export function implausiblePrices({ rates, baths }: Pick<Batch, "rates" | "baths">): readonly Fault[] {
  const { electricityPerKwh, labourPerHour, waterPerM3, disposalPerL } = rates;
  if (labourPerHour === undefined || labourPerHour === 0) return [];
  const labour = labourOf(labourPerHour);
  if (electricityPerKwh !== undefined && electricityPerKwh > 0) {
    const electricity = electricityOf(electricityPerKwh);
    const ratio = labourPerHour / electricityPerKwh;
    const dear = ratio < labourInKwh.least && slipOf(labour, ratio, labourInKwh) === undefined;
    const found = dear
      ? outOfProportion(electricity, { least: 1 / labourInKwh.most, most: 1 / labourInKwh.least }, labour)
      : outOfProportion(labour, labourInKwh, electricity);
    if (found.length > 0) return found;
  }
  const dyes = [...new Set(mapped(baths, (bath) => bath.dye))];
  return [
    ...dyes.flatMap((dye) =>
      dye.price === undefined
        ? []
        : outOfProportion(dyeOf(dye, dye.price), litreOrKgOfDyeInHours[dye.dilution.kind], labour),
    ),
    ...(waterPerM3 === undefined ? [] : outOfProportion(waterOf(waterPerM3), m3OfWaterInHours, labour)),
    ...(disposalPerL === undefined
      ? []
      : outOfProportion(disposalOf(disposalPerL), litreOfDisposalInHours, labour)),
  ];
}
