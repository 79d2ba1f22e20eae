import { fallTo } from "../../core/bath/heat/working/rise-and-fall.js";
import { strengthOf } from "../../core/bath/load/bath-setting.js";
import type { RealBath } from "../../core/bath/replay/real-bath.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Bath } from "../../core/model/batch.js";
import { SharedWork } from "../../core/plan/run/shared-work.js";
import { settingOf } from "../../core/plan/run/start-bath.js";
import { madeUpStrength } from "../../core/uptake/law/measured-at.js";
import { aimOf } from "../../core/uptake/shade/fitted-dyes.js";
import type { LogRow } from "../row/log-row.js";
import { lastFilling } from "./filling.js";
import { type LogNames, replayFilling } from "./replay-filling.js";

/** What the log finds in a tank, cooled as at the end of a day, and the row that it goes up to. */
export interface LoggedStart {
  readonly volumeL: number;
  readonly strength: number;
  readonly ageDays: number;
  readonly areaDm2: number;
  readonly row: number;
  readonly time: string;
}

/** A bath of the batch file as `replayFilling` needs it. `shared`: as for `planBatch`. */
export function realBathOf(
  batch: Batch,
  bath: Bath,
  shared = new SharedWork(),
): Outcome<{ readonly real: RealBath; readonly names: LogNames }> {
  const { dye } = bath;
  const fitted = shared.dyes.fit(dye, batch.handling);
  if (!fitted.ok) return fitted;
  const { uptake } = fitted.value.model;
  return done({
    real: {
      setting: settingOf(batch, bath, uptake, shared.heats),
      uptake,
      madeUp: madeUpStrength(dye),
      coolToCelsius: batch.handling.coolToCelsius,
    },
    names: {
      part: (name) => batch.parts.find((part) => part.name === name),
      freshSeconds: ({ shade: wanted, base }) => {
        const shade = batch.shades.find(({ name }) => name === wanted);
        if (shade === undefined || shade.dye !== dye)
          return failed(
            error(
              "log-unknown-shade",
              [],
              `the shade "${wanted}" of dye "${dye.name}" is not in the batch file`,
              "write the seconds of the dip, or add it under shades",
            ),
          );
        const aim = aimOf(
          fitted.value,
          shade,
          batch.bases.find(({ name }) => name === base),
        );
        return aim.ok ? done(aim.value.freshSeconds) : aim;
      },
      roomCelsius: batch.room.celsius,
    },
  });
}

const millisecondsADay = 86_400_000;

/** Days from a local time to the batch's date, where one is given. */
const daysUntil = (date: string | undefined, seconds: number): number =>
  date === undefined ? 0 : (Date.parse(`${date.slice(0, 10)}T00:00:00Z`) - 1000 * seconds) / millisecondsADay;

/** The bath in a tank as the log leaves it, ready for the next batch. `rows` as `readLog` has them, `shared` as for `planBatch`. */
export function startFromLog(
  batch: Batch,
  bath: Bath,
  rows: readonly LogRow[],
  shared = new SharedWork(),
): Outcome<LoggedStart> {
  const filling = lastFilling(rows, bath.tank.name, bath.dye.name);
  if (!filling.ok) return filling;
  const known = realBathOf(batch, bath, shared);
  if (!known.ok) return known;
  const { real, names } = known.value;
  const replayed = replayFilling(real, filling.value, names);
  if (!replayed.ok) return replayed;
  const { after, bath: state } = replayed.value;
  const last = after.at(-1)!;
  fallTo(real.setting.heat, state, real.coolToCelsius);
  return done({
    volumeL: state.volumeL,
    strength: strengthOf(state, real.setting.fresh),
    ageDays: Math.max(last.ageDays, daysUntil(batch.date, filling.value.madeUp.time.seconds)),
    areaDm2: last.areaDm2,
    row: last.row.row!,
    time: last.row.time.text,
  });
}
