import type { Bath } from "../../core/model/batch.js";
import { lastReadings } from "../../core/quality/estimates/last-readings.js";
import { isDoubtfulFactor } from "../../core/quality/estimates/priors.js";
import type { ReviewLot } from "../../core/quality/review/review-model.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import type { LoadRow, LogRow } from "../row/log-row.js";
import type { LearnedDye } from "./learn-dye.js";

/** A bath this far from its temperature is worth a word [K]. Common practice, no source. */
const kelvinMatters = 1;

const axes = [
  ["lighter", "darker"],
  ["redder", "greener"],
  ["yellower", "bluer"],
] as const;

/** "multiply its times by 1.08: dip 32 s where the sheet says 30 s", at the time of the last dip. */
export function timeAction(dye: string, { last, toUse: { timeFactor }, foreseen }: LearnedDye): string[] {
  const row = foreseen.at(-1)?.reading.row;
  if (row?.seconds === undefined || timeFactor === 1) return [];
  const seconds = Math.round(timeFactor * row.seconds);
  if (seconds === row.seconds) return [];
  if (isDoubtfulFactor(timeFactor))
    return [
      `${dye}: its readings ask for ${shortNumber(timeFactor, 3)} times as long as the sheet says, more than a dye's pace or a worn bath explains: check the seconds, shades and colours of its rows, and the dilution, before you use the timeFactor below`,
    ];
  const lately =
    last === undefined || last.factor === 1
      ? ""
      : ` (of it the last ${last.readings} readings alone ask for x ${shortNumber(last.factor, 3)})`;
  return [
    `${dye}: multiply its times by ${shortNumber(timeFactor, 3)}${lately}: dip ${seconds} s where the sheet says ${row.seconds} s, until the plan has the timeFactor below`,
  ];
}

/** "bring the bath to 80 °C" where the last loads were dipped cooler or warmer. */
export function temperatureAction(rows: readonly LogRow[], { tank, dye }: Bath): string[] {
  const read = rows
    .filter((row): row is LoadRow => row.event === "load" && row.bath === tank.name)
    .flatMap(({ celsius }) => (celsius === undefined ? [] : [celsius]))
    .slice(-lastReadings);
  if (read.length < lastReadings) return [];
  const mean = read.reduce((sum, one) => sum + one, 0) / read.length;
  if (Math.abs(mean - dye.celsius) < kelvinMatters) return [];
  return [
    `${tank.name}: bring the bath to ${shortNumber(dye.celsius)} °C; the last ${lastReadings} loads were dipped at ${mean.toFixed(1)} °C`,
  ];
}

/** "lot B of powder is 1.9 yellower: 3 s longer", where a lot is named. */
export function lotAction(lot: ReviewLot, { foreseen }: LearnedDye): string[] {
  if (!lot.named) return [];
  const axis = [0, 1, 2].reduce(
    (most, i) => (Math.abs(lot.shift[i]!) > Math.abs(lot.shift[most]!) ? i : most),
    0,
  );
  const by = lot.shift[axis]!;
  const word = axes[axis]![by > 0 ? 0 : 1];
  const its = foreseen.filter(({ reading: { row } }) => row.powderLot === lot.lot || row.dyeLot === lot.lot);
  const row = its.at(-1)?.reading.row;
  const apart = its.reduce((sum, one) => sum + one.apart, 0) / Math.max(1, its.length);
  const seconds = row?.seconds === undefined ? 0 : Math.round(Math.expm1(apart) * row.seconds);
  const dips =
    seconds === 0
      ? ""
      : `: dip ${Math.abs(seconds)} s ${seconds > 0 ? "longer" : "shorter"} than ${row!.seconds} s`;
  return [`${lot.kind} lot ${lot.lot} is ${Math.abs(by).toFixed(1)} ${word} in ${lot.dye}${dips}`];
}
