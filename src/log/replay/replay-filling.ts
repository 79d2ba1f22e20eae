import { strengthOf } from "../../core/bath/load/bath-setting.js";
import { cycleSeconds } from "../../core/bath/load/handling-seconds.js";
import { passTime, type RealBath, type ReplayedBath } from "../../core/bath/replay/real-bath.js";
import { type RealDip, type RealLoad, replayLoad } from "../../core/bath/replay/real-load.js";
import { type RealAmounts, realMakeUp, realTopUp } from "../../core/bath/replay/real-top-up.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Part } from "../../core/model/batch.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { inRow } from "../read/in-row.js";
import type { AddedAmounts, LoadRow } from "../row/log-row.js";
import type { Filling, FillingRow } from "./filling.js";
import { overBrim } from "./over-brim.js";

/** What the log names and the batch file knows. */
export interface LogNames {
  readonly part: (name: string) => Part | undefined;
  /** The time that gives a shade in a fresh bath. */
  readonly freshSeconds: (row: LoadRow) => Outcome<number>;
  readonly roomCelsius: number;
}

/** A bath after one of its rows. */
export interface ReplayedRow {
  readonly row: Filling["madeUp"] | FillingRow;
  readonly volumeL: number;
  readonly strength: number;
  readonly celsius: number;
  /** Since the filling was made up. */
  readonly ageDays: number;
  /** Dyed in it so far. */
  readonly areaDm2: number;
  /** Of a load. */
  readonly dip?: ReplayedDip;
  /** Where a level was read, or follows from what was poured up to the mark. */
  readonly level?: RealLevel;
}

/** A level as it was read beside the one that was foreseen [L, hot]. */
export interface RealLevel {
  readonly foreseenL: number;
  readonly readL: number;
}

export interface ReplayedDip extends RealDip {
  readonly part: Part;
  readonly dipSeconds: number;
  readonly celsiusBefore: number;
  readonly strengthDuring: number;
  /** mL of concentrate or g of powder. */
  readonly takenUp: number;
  readonly draggedOut: number;
}

/** A filling followed through all that was done with it. */
export interface ReplayedFilling {
  readonly after: readonly ReplayedRow[];
  /** mL of concentrate or g of powder that it was made up with. */
  readonly madeUpDye: number;
  readonly bath: ReplayedBath;
}

const secondsADay = 86_400;
const dayOf = (seconds: number): number => Math.floor(seconds / secondsADay);

/** Dye that was poured, in the unit of the bath's dye; a row with the other unit is at fault. */
function poured(real: RealBath, row: AddedAmounts & { readonly row?: number }): Outcome<RealAmounts> {
  const { kind } = real.setting.dye.dilution;
  const { unit } = dyeKinds[kind];
  const [own, other] =
    unit === "mL"
      ? (["concentrateMl", "concentrateG"] as const)
      : (["concentrateG", "concentrateMl"] as const);
  if (row[other] !== undefined)
    return failed(
      inRow(
        row.row!,
        other,
        error("log-dye-kind", [], `the dye of this bath is ${dyeKinds[kind].treated}`, `write ${own}`),
      ),
    );
  return done({
    ...(row[own] === undefined ? {} : { dye: row[own] }),
    ...(row.waterMl === undefined ? {} : { waterMl: row.waterMl }),
  });
}

const levelOf = (foreseenL: number, readL: number | undefined): RealLevel | undefined =>
  readL === undefined ? undefined : { foreseenL, readL };

/** Hot litres of what was poured; undefined where the water was not written down. */
function pouredL({ setting }: RealBath, { dye = 0, waterMl }: RealAmounts): number | undefined {
  const { takesRoom } = dyeKinds[setting.dye.dilution.kind];
  return waterMl === undefined ? undefined : (waterMl + (takesRoom ? dye : 0)) / 1000 / setting.coldPerHot;
}

/** The load that a row tells of, or what the batch file does not know of it. */
function loadOf(row: LoadRow, names: LogNames): Outcome<RealLoad & { readonly part: Part }> {
  const part = names.part(row.part);
  if (part === undefined)
    return failed(
      inRow(
        row.row!,
        "part",
        error(
          "log-unknown-part",
          [],
          `the part "${row.part}" is not in the batch file`,
          "add it under parts, with mass and area, or correct the row",
        ),
      ),
    );
  const common = {
    part,
    parts: row.parts,
    ...(row.celsius === undefined ? {} : { celsius: row.celsius }),
  };
  if (row.seconds !== undefined) return done({ ...common, dipped: { seconds: row.seconds } });
  const fresh = names.freshSeconds(row);
  if (!fresh.ok) return failed(...fresh.faults.map((fault) => inRow(row.row!, "shade", fault)));
  return done({ ...common, dipped: { freshSeconds: fresh.value } });
}

/** The fault of a row after which nothing is left in the bath: not poured, carried out by too many parts, or evaporated. */
const emptied = (row: ReplayedRow["row"]): Fault =>
  inRow(
    row.row!,
    row.event === "load" ? "parts" : "time",
    error(
      "log-empty",
      [],
      "by the log nothing is left in the bath after this row",
      "check the parts, the seconds and the levels up to this row",
    ),
  );

/**
 * Follows a filling through its rows, each at its time: a load by the seconds, the temperature and the level that were
 * read, a top-up by what was poured. The time of a row is when its work was done.
 */
export function replayFilling(
  real: RealBath,
  { madeUp, rows }: Filling,
  names: LogNames,
): Outcome<ReplayedFilling> {
  const faults: Fault[] = [madeUp, ...rows].flatMap((row) => overBrim(real, row));
  const first = poured(real, madeUp);
  if (!first.ok) return failed(...first.faults, ...faults);
  const { setting } = real;
  const said = ({ volumeL, celsius }: Pick<RealAmounts, "volumeL" | "celsius">) => ({
    ...(volumeL === undefined ? {} : { volumeL }),
    ...(celsius === undefined ? {} : { celsius }),
  });
  const bath = realMakeUp(real, { ...first.value, ...said(madeUp) }, names.roomCelsius);
  if (!(bath.volumeL > 0)) return failed(...faults, emptied(madeUp));
  const madeUpDye = bath.dye;
  const after: ReplayedRow[] = [];
  let areaDm2 = 0;
  const enter = (row: ReplayedRow["row"], level?: RealLevel, dip?: ReplayedDip): void => {
    after.push({
      row,
      volumeL: bath.volumeL,
      strength: strengthOf(bath, setting.fresh),
      celsius: bath.celsius,
      ageDays: (row.time.seconds - madeUp.time.seconds) / secondsADay,
      areaDm2,
      ...(dip === undefined ? {} : { dip }),
      ...(level === undefined ? {} : { level }),
    });
  };
  enter(madeUp);
  let at = madeUp.time.seconds;
  for (const row of rows) {
    const overNight = dayOf(row.time.seconds) > dayOf(at);
    const wait = (busySeconds: number): void =>
      passTime(real, bath, Math.max(0, row.time.seconds - at - busySeconds), overNight);
    if (row.event === "load") {
      const load = loadOf(row, names);
      if (!load.ok) {
        faults.push(...load.faults);
        continue;
      }
      wait(cycleSeconds(setting, row.parts, row.seconds ?? 0));
      const dip = replayLoad(real, bath, load.value);
      const { part } = load.value;
      areaDm2 += row.parts * part.areaDm2;
      const level = levelOf(bath.volumeL, row.volumeL);
      bath.volumeL = row.volumeL ?? bath.volumeL;
      const { dipSeconds, celsiusBefore, strengthDuring, takenUp, draggedOut } = bath;
      enter(row, level, { ...dip, part, dipSeconds, celsiusBefore, strengthDuring, takenUp, draggedOut });
    } else {
      wait(0);
      const before = bath.volumeL;
      if (row.event === "top-up") {
        const added = poured(real, row);
        if (!added.ok) {
          faults.push(...added.faults);
          continue;
        }
        realTopUp(real, bath, { ...added.value, ...said(row) });
        const addedL = pouredL(real, added.value);
        enter(row, addedL === undefined ? undefined : levelOf(before + addedL, bath.volumeL));
      } else {
        bath.volumeL = row.volumeL ?? bath.volumeL;
        bath.celsius = row.celsius ?? bath.celsius;
        enter(row, levelOf(before, row.volumeL));
      }
    }
    at = row.time.seconds;
    if (!(bath.volumeL > 0)) return failed(...faults, emptied(row));
  }
  return faults.length > 0 ? { ok: false, faults } : done({ after, madeUpDye, bath });
}
