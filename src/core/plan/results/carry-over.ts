import { strengthOf } from "../../bath/load/bath-setting.js";
import { strengthEach } from "../../bath/load/mixed-load.js";
import { mapped } from "../../mapped.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import { daysLater } from "../../quantity/days.js";
import { inYaml } from "../../quantity/text/in-yaml.js";
import { percentText } from "../../quantity/text/percent-text.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { PlanCarryOver } from "../plan-model.js";
import type { BathRun } from "../run/bath-run.js";

/** The value of `start:` for a bath that was kept. */
export const startText = ({
  coldVolumeL,
  strength,
  mix,
  ageDays,
  areaDm2,
}: Pick<PlanCarryOver, "coldVolumeL" | "strength" | "mix" | "ageDays" | "areaDm2">): string =>
  `{ ${[
    `coldVolume: ${coldVolumeL.toFixed(2)} L`,
    `strength: ${mix === undefined ? percentText(strength) : `{ ${mix.map((one) => `${inYaml(one.dye)}: ${percentText(one.strength)}`).join(", ")} }`}`,
    `age: ${shortNumber(ageDays)} d`,
    `area: ${(areaDm2 / 100).toFixed(2)} m2`,
  ].join(", ")} }`;

/** What a kept bath is when it has cooled: what to write on its jug, and in the next batch file. */
export function carryOver(run: BathRun, date: string | undefined): PlanCarryOver | null {
  const { bath, setting, cooled, loads } = run;
  if (bath.after === "dump") return null;
  const { start, dye, everyDays } = bath;
  const kept = start.kind === "kept" ? start : { ageDays: 0, areaDm2: 0 };
  const coldVolumeL = cooled.volumeL * setting.coldPerHot;
  const strength = strengthOf(cooled, setting.fresh);
  const strengths = strengthEach(cooled, setting.fresh);
  const each =
    dye.mix && mapped(dye.mix.parts, (part, i) => ({ dye: part.dye.name, strength: strengths[i]! }));
  const { ageDays } = kept;
  const areaDm2 = kept.areaDm2 + exactSumOf(loads, ({ plan }) => plan.areaDm2);
  const keepsDays = dye.shelfLifeDays === undefined ? null : dye.shelfLifeDays - ageDays;
  return {
    coldVolumeL,
    volumeL: cooled.volumeL,
    strength,
    ...(each && { mix: each }),
    ageDays,
    areaDm2,
    keepsDays,
    useBy: date === undefined || keepsDays === null ? null : daysLater(date, Math.floor(keepsDays)),
    daysToNext: everyDays ?? null,
    start: startText({
      coldVolumeL,
      strength,
      ...(each && { mix: each }),
      ageDays: ageDays + (everyDays ?? 0),
      areaDm2,
    }),
  };
}
