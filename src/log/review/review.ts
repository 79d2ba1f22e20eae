import { ciede2000 } from "../../core/colour/difference/ciede2000.js";
import { done, error, type Fault, failed, isError, type Outcome, warning } from "../../core/fault.js";
import type { Batch, Bath, Dye, Lab } from "../../core/model/batch.js";
import { SharedWork } from "../../core/plan/run/shared-work.js";
import { lotShifts } from "../../core/quality/lots/lot-shifts.js";
import type {
  Review,
  ReviewBath,
  ReviewEstimates,
  ReviewLot,
} from "../../core/quality/review/review-model.js";
import { aimOf } from "../../core/uptake/shade/fitted-dyes.js";
import type { BareRow, LoadRow, LogRow } from "../row/log-row.js";
import { lotAction, temperatureAction, timeAction } from "./actions.js";
import { crowdedLoads } from "./checks/crowded-loads.js";
import { oddLoads } from "./checks/odd-loads.js";
import { otherCapitals, unknownNames } from "./checks/unknown-names.js";
import { dyeLog } from "./dye-log.js";
import { dyeUse } from "./dye-use.js";
import { type LearnedDye, learnDye } from "./learn-dye.js";
import { dyeLotOf, lotReadings } from "./lots.js";
import { pasteOf } from "./paste.js";
import { bathPoints } from "./points/bath-points.js";
import type { JudgedLoad } from "./points/judged-load.js";

interface Learned {
  readonly dye: Dye;
  readonly learned: LearnedDye;
}

function estimatesOf({ dye, learned: { estimates, last, foreseen } }: Learned): ReviewEstimates {
  const { timeFactor, uptakePerDm2, dragOutMlPerDm2, strengthExponent, activationEnergyJPerMol } =
    estimates.figures;
  return {
    timeFactor,
    ...(dye.dilution.kind === "liquid" ? { uptakeMlPerDm2: uptakePerDm2 } : { uptakeGPerDm2: uptakePerDm2 }),
    dragOutMlPerDm2,
    strengthExponent,
    activationEnergyKJPerMol: {
      ...activationEnergyJPerMol,
      value: activationEnergyJPerMol.value / 1000,
      standardError: activationEnergyJPerMol.standardError / 1000,
    },
    readings: foreseen.length,
    lastReadings: last ?? null,
  };
}

/** The bare part of a lot against that of the first lot that was read. */
function bareDifference(rows: readonly LogRow[], lot: string): number | null {
  const bare = rows.filter((row): row is BareRow => row.event === "bare");
  const [first, its] = [bare[0], bare.find(({ powderLot }) => powderLot === lot)];
  return first === undefined || its === undefined || first.powderLot === lot
    ? null
    : ciede2000(first.lab as Lab, its.lab as Lab);
}

function lotsOf({ dye, learned }: Learned, rows: readonly LogRow[]): ReviewLot[] {
  const of = (kind: ReviewLot["kind"], lotOf: (row: LoadRow) => string | undefined): ReviewLot[] =>
    lotShifts(lotReadings(learned.foreseen, lotOf)).map((shift) => ({
      ...shift,
      kind,
      dye: dye.name,
      bareDeltaE00: kind === "powder" ? bareDifference(rows, shift.lot) : null,
    }));
  return [...of("powder", ({ powderLot }) => powderLot), ...of("dye", dyeLotOf(rows))];
}

/** Loads of a bath with the shade that each should have. */
function judged(batch: Batch, { dye, learned }: Learned, tank: string, shared: SharedWork): JudgedLoad[] {
  const fitted = shared.dyes.fit(dye, batch.handling);
  if (!fitted.ok) return [];
  const strengths = new Map(
    learned.fillings.flatMap(({ after }) => after.map(({ row, dip }) => [row, dip?.strengthDuring])),
  );
  return learned.foreseen.flatMap(({ reading: { row, lab }, freshSeconds }) => {
    const shade = batch.shades.find(({ name, dye: its }) => name === row.shade && its === dye);
    if (row.bath !== tank || shade === undefined) return [];
    const aim = aimOf(
      fitted.value,
      shade,
      batch.bases.find(({ name }) => name === row.base),
    );
    if (!aim.ok || aim.value.lab === null) return [];
    const timeRatio = freshSeconds / aim.value.freshSeconds;
    return [{ row, lab, target: aim.value.lab, strength: strengths.get(row) ?? 1, timeRatio }];
  });
}

function bathOf(
  one: Learned,
  tank: string,
  rows: readonly LogRow[],
  itsLoads: readonly JudgedLoad[],
): ReviewBath {
  const loads = rows.filter(
    (row): row is LoadRow =>
      row.event === "load" && row.bath === tank && (row.dye ?? one.dye.name) === one.dye.name,
  );
  const inspected = loads.filter(({ good }) => good !== undefined);
  const sum = (of: (row: LoadRow) => number, its = loads): number =>
    its.reduce((total, row) => total + of(row), 0);
  return {
    bath: tank,
    loads: loads.length,
    parts: sum(({ parts }) => parts),
    goodShare:
      inspected.length === 0
        ? null
        : sum(({ good }) => good!, inspected) / sum(({ parts }) => parts, inspected),
    ...bathPoints(itsLoads, one.dye.celsius),
  };
}

/** The log has one column for the dye of a bath, whichever it is. */
const notTold =
  (as: typeof error) =>
  ({ dye, index, tank }: Bath): Fault =>
    as(
      "log-mix",
      ["baths", index],
      `the log does not tell the dyes of mix "${dye.name}" apart: nothing is learned of its bath in tank "${tank.name}"`,
      "write dips of the mix under its trials",
    );

/** What a log teaches of the baths of a batch file. `rows` as `readLog` has them, `shared` as for `planBatch`. */
export function reviewLog(batch: Batch, rows: readonly LogRow[], shared = new SharedWork()): Outcome<Review> {
  const inLog = batch.baths.filter(({ tank }) => rows.some(({ bath }) => bath === tank.name));
  const logged = inLog.filter(({ dye }) => dye.mix === undefined);
  const mixes = inLog.filter(({ dye }) => dye.mix !== undefined);
  if (logged.length === 0 && mixes.length > 0) return failed(...mixes.map(notTold(error)));
  if (logged.length === 0) {
    const others = [...new Set(rows.map(({ bath }) => bath))];
    return failed(
      error(
        "log-no-bath",
        [],
        "the log has no bath of this batch file",
        others.length === 0
          ? "record what was done first: dipwright record"
          : `its baths are ${others.map((name) => `"${name}"`).join(", ")}`,
      ),
    );
  }
  const learned: Learned[] = [];
  const faults: Fault[] = [];
  for (const dye of new Set(logged.map((bath) => bath.dye))) {
    const log = dyeLog(batch, dye, rows, shared);
    faults.push(...log.faults);
    if (log.ok) learned.push({ dye, learned: learnDye(log.value) });
  }
  if (faults.some(isError)) return { ok: false, faults };
  const of = (dye: Dye): Learned => learned.find((one) => one.dye === dye)!;
  const loads = logged.map(({ dye, tank }) => judged(batch, of(dye), tank.name, shared));
  faults.push(
    ...otherCapitals(batch, rows),
    ...learned.flatMap(({ dye, learned: { fillings } }) => [
      ...unknownNames(batch, dye, fillings),
      ...crowdedLoads(batch, fillings),
    ]),
    ...learned.flatMap(({ dye, learned: one }) =>
      oddLoads(
        one,
        loads.flatMap((its, i) => (logged[i]!.dye === dye ? its : [])),
      ),
    ),
  );
  const lots = learned.flatMap((one) => lotsOf(one, rows));
  const used = learned.map(({ dye, learned: { fillings } }) => dyeUse(dye, fillings, batch.handling));
  return done(
    {
      baths: logged.map(({ dye, tank }, i) => bathOf(of(dye), tank.name, rows, loads[i]!)),
      estimates: Object.fromEntries(learned.map((one) => [one.dye.name, estimatesOf(one)])),
      lots,
      dyes: used.map(({ dye }) => dye),
      use: used.flatMap(({ use }) => use),
      actions: [
        ...learned.flatMap(({ dye, learned: one }) => timeAction(dye.name, one)),
        ...logged.flatMap((bath) => temperatureAction(rows, bath)),
        ...lots.flatMap((lot) =>
          lotAction(lot, of(batch.dyes.find(({ name }) => name === lot.dye)!).learned),
        ),
      ],
      paste: pasteOf(learned, batch.handling),
    },
    [...faults, ...mixes.map(notTold(warning))],
  );
}
