import type { RealBath } from "../../core/bath/replay/real-bath.js";
import { done, type Fault, type Outcome } from "../../core/fault.js";
import type { Batch, Bath, Dye } from "../../core/model/batch.js";
import type { SharedWork } from "../../core/plan/run/shared-work.js";
import type { Evidence } from "../../core/quality/estimates/estimate.js";
import type { Figures, Priors } from "../../core/quality/estimates/figures.js";
import { priorsOf } from "../../core/quality/estimates/priors.js";
import { realWithFigures } from "../../core/quality/estimates/real-with-figures.js";
import { hasCurve } from "../../core/uptake/shade/dye-model.js";
import { type Filling, fillingsOf } from "../replay/filling.js";
import { type LogNames, replayFilling } from "../replay/replay-filling.js";
import { realBathOf } from "../replay/start-from-log.js";
import type { LogRow } from "../row/log-row.js";
import { type LoadReading, readingOf } from "./dye-readings.js";
import type { FollowedFilling } from "./followed-filling.js";
import { nextLoadsOff } from "./next-loads.js";

/** A level is read to this share of the mark, one standard deviation. Common practice, no source. */
const levelNoise = 0.005;

/** What counts as the fresh time of a load that finds no dye in its bath, or no bath, so that it has a logarithm [s]. */
const leastFreshSeconds = 1e-3;

interface Worked {
  readonly bath: Bath;
  readonly filling: Filling;
  readonly real: RealBath;
  readonly names: LogNames;
}

/** All fillings of a dye in all its baths, to be followed with whatever figures the dye has. */
export interface DyeLog {
  readonly dye: Dye;
  readonly priors: Priors;
  /** In the order of time. */
  readonly readings: readonly LoadReading[];
  readonly follow: (figures: Figures) => readonly FollowedFilling[];
  readonly evidence: Evidence;
}

/** Differences of one shade's readings, which share what the noise of the swatches does to that shade [σ]. */
function shareSwatches(apart: readonly { readonly by: number; readonly of: LoadReading }[]): number[] {
  const swatch = apart.reduce((sum, { of }) => sum + of.swatchDeviation, 0) / apart.length;
  let weights = 1 / swatch ** 2;
  let weighted = 0;
  for (const { by, of } of apart) {
    weights += 1 / of.deviation ** 2;
    weighted += by / of.deviation ** 2;
  }
  const shared = weighted / weights;
  return [shared / swatch, ...apart.map(({ by, of }) => (by - shared) / of.deviation)];
}

/** The fillings of a dye that the log holds. Rows that name what the batch file does not know are faults. */
export function dyeLog(batch: Batch, dye: Dye, rows: readonly LogRow[], shared: SharedWork): Outcome<DyeLog> {
  const fitted = shared.dyes.fit(dye, batch.handling);
  if (!fitted.ok) return fitted;
  const { model } = fitted.value;
  const worked: Worked[] = [];
  for (const bath of batch.baths) {
    if (bath.dye !== dye) continue;
    const known = realBathOf(batch, bath, shared);
    if (!known.ok) return known;
    for (const filling of fillingsOf(rows, bath.tank.name))
      if (filling.madeUp.dye === dye.name) worked.push({ bath, filling, ...known.value });
  }
  const faults: Fault[] = [];
  const ok = worked.filter(({ real, names, filling }) => {
    const replayed = replayFilling(real, filling, names);
    faults.push(...replayed.faults);
    return replayed.ok;
  });
  if (faults.length > 0) return { ok: false, faults };
  const warnings: Fault[] = [];
  const readings: LoadReading[] = [];
  if (hasCurve(model))
    for (const row of ok.flatMap(({ filling }) => filling.rows)) {
      if (row.event !== "load") continue;
      const reading = readingOf(model, batch, row);
      warnings.push(...reading.faults);
      if (reading.ok && reading.value !== undefined) readings.push(reading.value);
    }
  readings.sort((one, other) => one.row.time.seconds - other.row.time.seconds);
  const follow = (figures: Figures): FollowedFilling[] =>
    ok.flatMap(({ bath, filling, real: assumed, names }) => {
      const real = realWithFigures(assumed, figures);
      const replayed = replayFilling(real, filling, names);
      return replayed.ok ? [{ ...replayed.value, of: bath, filling, real }] : [];
    });
  return done(
    {
      dye,
      priors: priorsOf(model, batch.handling),
      readings,
      follow,
      evidence: {
        readings: readings.length,
        residuals: (figures) => residuals(readings, follow(figures)),
        nextLoadsOff: (sheet, really) => nextLoadsOff(follow(sheet), follow(really), batch.room.celsius),
      },
    },
    warnings,
  );
}

/** ln of the time in a fresh bath that each load read amounts to [s]. */
export function logFresh(
  readings: readonly LoadReading[],
  fillings: readonly FollowedFilling[],
): readonly number[] {
  const dips = new Map(fillings.flatMap(({ after }) => after.map(({ row, dip }) => [row, dip])));
  return readings.map(({ row }) => Math.log(Math.max(leastFreshSeconds, dips.get(row)?.freshSeconds ?? 0)));
}

/** What was read against what the figures make of it, colours by their fresh times and levels [σ]. */
function residuals(readings: readonly LoadReading[], fillings: readonly FollowedFilling[]): number[] {
  const after = fillings.flatMap((one) => one.after.map((row) => ({ ...row, markL: one.of.tank.volumeL })));
  const foreseen = logFresh(readings, fillings);
  const byShade = new Map<string, { by: number; of: LoadReading }[]>();
  for (const [i, of] of readings.entries()) {
    const by = of.logFresh - foreseen[i]!;
    const key = `${of.row.shade} ${of.row.base}`;
    byShade.set(key, [...(byShade.get(key) ?? []), { by, of }]);
  }
  return [
    ...[...byShade.values()].flatMap(shareSwatches),
    ...after.flatMap(({ level, markL }) =>
      level === undefined ? [] : [(level.readL - level.foreseenL) / (levelNoise * markL)],
    ),
  ];
}
