import { makeUp } from "../../core/bath/make-up/make-up.js";
import { dilutedVolume } from "../../core/bath/make-up/mixing.js";
import { liquorMl, stockMl, strengthCorrected } from "../../core/bath/make-up/on-weight.js";
import { topping } from "../../core/bath/make-up/top-up.js";
import { coldPerHot } from "../../core/bath/water.js";
import { done, error, failed, type Outcome, warning } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import { type Caution, cautions } from "../../core/plan/advice/cautions.js";
import { dilutionInWords, volumeShare } from "../../core/quantity/dye/dilution.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { assumedWarmth } from "../../report/mix/assumed.js";
import { makeUpReport } from "../../report/mix/make-up.js";
import { onWeightReport } from "../../report/mix/on-weight.js";
import { thinningReport } from "../../report/mix/thinning.js";
import { topUpReport } from "../../report/mix/top-up.js";
import type { Report } from "../../report/report.js";
import { percent, pour, volumeSaid } from "../../report/words/amounts.js";
import { type Execute, refused, unplaced } from "../command.js";
import { readTask } from "./read-task.js";
import type { MixTask, TaskOf, Warmth } from "./task.js";

const heed = ({ celsius, roomCelsius }: Omit<Warmth, "celsiusAssumed">, powder: boolean): Caution[] =>
  cautions({
    celsius,
    roomCelsius,
    agitation: false,
    drying: false,
    powder,
    lid: false,
    coolToCelsius: defaults.handling.coolToCelsius,
  });

/** What to take out of a bath that is too strong, so that water alone brings it to the strength asked for. */
function thinnedAfterTakingOut({
  fromVolumeL,
  fromStrength,
  volumeL,
  strength,
  ...warmth
}: TaskOf<"top-up">) {
  const keptL = dilutedVolume(strength, volumeL, fromStrength);
  return {
    takeOutHotL: fromVolumeL - keptL,
    waterMl: (volumeL - keptL) * coldPerHot(warmth.celsius, warmth.roomCelsius) * 1000,
  };
}

function toppedUp(task: TaskOf<"top-up">): Outcome<Report> {
  if (task.fromStrength * volumeShare(task.dilution) > 1)
    return failed(
      error(
        "strength",
        ["--from-strength"],
        `${percent(task.fromStrength)} is more than undiluted concentrate has`,
        "a fresh bath has 100 %",
      ),
    );
  const asked = {
    volumeL: task.fromVolumeL,
    strength: task.fromStrength,
    toVolumeL: task.volumeL,
    toStrength: task.strength,
    celsius: task.celsius,
    roomCelsius: task.roomCelsius,
    dilution: task.dilution,
  };
  const found = topping(asked);
  if (found === undefined)
    return failed(
      error(
        "strength",
        ["--strength"],
        `${percent(task.strength)} is more than undiluted concentrate gives`,
        "ask for less",
      ),
    );
  const reached = found.tooStrong ? thinnedAfterTakingOut(task) : undefined;
  const warnings = [
    ...(found.takeOutHotL * 1000 >= 0.05
      ? [warning("too-full", [], `the bath is too full: take out ${pour(found.takeOutHotL * 1000)} first`)]
      : []),
    ...(reached !== undefined
      ? [
          warning(
            "too-strong",
            [],
            `the bath is too strong: water alone leaves ${percent(found.strength)} strength in ${volumeSaid(task.volumeL)}; for ${percent(task.strength)} take out ${pour(reached.takeOutHotL * 1000)} first, then fill up with ${pour(reached.waterMl)} of water`,
          ),
        ]
      : []),
  ];
  const dilution = dilutionInWords(task.dilution);
  const caution = heed(task, dyeKinds[task.dilution.kind].raisesDust);
  return done(
    topUpReport({
      asked,
      topping: found,
      ...(reached === undefined ? {} : { reached }),
      dilution,
      cautions: caution,
      warnings,
      assumptions: assumedWarmth(task.celsiusAssumed, task.roomCelsius),
    }),
    warnings,
  );
}

function thinned(task: TaskOf<"thinning">): Outcome<Report> {
  const { kind: _, celsiusAssumed, ...facts } = task;
  if (task.strength > task.fromStrength)
    return failed(
      error(
        "strength",
        ["--strength"],
        "thinning cannot make a bath stronger",
        "add --volume and --dilution for a top-up",
      ),
    );
  const volumeL = dilutedVolume(task.fromStrength, task.fromVolumeL, task.strength);
  const waterMl = (volumeL - task.fromVolumeL) * coldPerHot(task.celsius, task.roomCelsius) * 1000;
  return done(
    thinningReport({
      ...facts,
      volumeL,
      waterMl,
      cautions: heed(task, false),
      assumptions: assumedWarmth(celsiusAssumed, task.roomCelsius),
    }),
  );
}

function onWeight(task: TaskOf<"on-weight">): Outcome<Report> {
  const { kind: _, ...facts } = task;
  const { goodsG, depth, dyeStrength, stockGPerL, ratioLPerKg } = facts;
  const dyeG = strengthCorrected(goodsG * depth, dyeStrength * 100);
  const stock =
    stockGPerL === undefined
      ? undefined
      : strengthCorrected(
          stockMl({ massG: goodsG, percentOfMass: depth * 100, stockGPer100Ml: stockGPerL / 10 }),
          dyeStrength * 100,
        );
  const liquor = ratioLPerKg === undefined ? undefined : liquorMl(goodsG, ratioLPerKg);
  const water = liquor === undefined ? undefined : liquor - (stock ?? 0);
  if (water !== undefined && water < 0)
    return failed(
      error(
        "stock-too-weak",
        ["--stock"],
        `${pour(stock ?? 0)} of stock solution is more than the ${pour(liquor ?? 0)} of liquor`,
        "take a stronger stock solution or a longer liquor ratio",
      ),
    );
  return done(
    onWeightReport({
      ...facts,
      dyeG,
      ...(stock === undefined ? {} : { stockMl: stock }),
      ...(liquor === undefined || water === undefined ? {} : { liquorMl: liquor, waterMl: water }),
      cautions: heed(
        { celsius: defaults.room.celsius, roomCelsius: defaults.room.celsius },
        stock === undefined,
      ),
    }),
  );
}

function work(task: MixTask): Outcome<Report> {
  switch (task.kind) {
    case "make-up": {
      const { celsius, roomCelsius, dilution } = task;
      const made = makeUp({ volumeHotL: task.volumeL, celsius, roomCelsius, dilution });
      const caution = heed(task, dyeKinds[dilution.kind].raisesDust);
      return done(
        makeUpReport({
          made,
          celsius,
          roomCelsius,
          dilution: dilutionInWords(dilution),
          cautions: caution,
          assumptions: assumedWarmth(task.celsiusAssumed, roomCelsius),
        }),
      );
    }
    case "top-up":
      return toppedUp(task);
    case "thinning":
      return thinned(task);
    case "on-weight":
      return onWeight(task);
  }
}

const inCamel = (option: string): string =>
  option.replace(/-(\w)/g, (_all, letter: string) => letter.toUpperCase());

/** Amounts from the options of `mix` alone. */
export const execute: Execute = async ({ options, output }) => {
  const task = readTask((option) => options[inCamel(option)] as string | undefined);
  const unset =
    output.set.length > 0
      ? [error("usage", ["--set"], "mix reads no batch file, so there is nothing to set")]
      : [];
  if (!task.ok || unset.length > 0) return refused(...task.faults, ...unset);
  const report = work(task.value);
  const diagnostics = report.faults.map(unplaced);
  return report.ok ? { report: report.value, diagnostics } : { diagnostics };
};
