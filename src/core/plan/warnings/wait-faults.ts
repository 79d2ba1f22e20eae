import type { TankHeats } from "../../bath/heat/tank-heats.js";
import { type Fault, warning } from "../../fault.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import { largest } from "../../maths/extent.js";
import type { Batch, Bath } from "../../model/batch.js";
import { duration } from "../../quantity/text/duration.js";
import { listed } from "../../quantity/text/listed.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import type { Portion } from "../assign/assign.js";
import type { BathRun } from "../run/bath-run.js";
import { bathWorker } from "../run/bath-worker.js";

/** Waits of a bath that are worth a warning [s], all its loads together. Common practice, no source. */
const longWaits = 300;

/** A remedy must save at least this share of the waits to be named [-]. Common practice, no source. */
const worthSaving = 0.2;

/** As warm as top-up water comes from a kettle and cold water [°C]. Common practice, no source. */
const warmTopUpCelsius = 60;

/** A stronger heater to compare with has this many times the power [-]. Common practice, no source. */
const strongerBy = 1.5;

/** Its power is rounded up to a multiple of this, as heaters are sold [W]. Common practice, no source. */
const heaterStepW = 100;

const strongerHeaterW = (heaterW: number): number =>
  Math.ceil((strongerBy * heaterW) / heaterStepW) * heaterStepW;

/** What a bath waits in all if nothing else is done meanwhile [s]; undefined where it cannot be worked so. */
function waitsOf(
  batch: Batch,
  bath: Bath,
  model: DyeModel,
  portions: readonly Portion[],
  heats: TankHeats,
): number | undefined {
  const worker = bathWorker(batch, bath, model, portions, heats);
  if (worker.startFaults.some(({ severity }) => severity === "error")) return undefined;
  let seconds = 0;
  for (let worked = worker.work(); worked !== undefined; worked = worker.work())
    seconds += worked.result.waitSeconds;
  return worker.run().faults.some(({ severity }) => severity === "error") ? undefined : seconds;
}

/** The warning on a bath whose heater does not keep up, with what would help and how much. */
export function waitFaults(batch: Batch, run: BathRun, model: DyeModel, heats: TankHeats): Fault[] {
  const { bath, loads, portions } = run;
  const { tank, dye } = bath;
  const waited = exactSumOf(loads, ({ result }) => result.waitSeconds);
  if (tank.heaterW === undefined) return [];
  if (waited < longWaits)
    return run.heating.holdingW <= tank.heaterW
      ? []
      : [
          warning(
            "heater-struggles",
            ["tanks", tank.name, "heater"],
            `while parts are dipped, tank "${tank.name}" loses more than its ${shortNumber(tank.heaterW)} W heater gives: the bath of "${dye.name}" cools, which its times count in${waited < 0.5 ? "" : `, and loads wait ${duration(waited)} in all`}`,
            "read the temperature before each dip, and keep to it",
          ),
        ];
  const now = waitsOf(batch, bath, model, portions, heats);
  if (now === undefined) return [];
  const strongerW = strongerHeaterW(tank.heaterW);
  const most = largest(loads.map(({ plan }) => plan.parts));
  const half = Math.ceil(most / 2);
  const withTank = (change: Partial<typeof tank>) => ({ ...bath, tank: { ...tank, ...change } });
  const remedies: readonly (readonly [string, () => number | undefined])[] = [
    ...(tank.cover === "none"
      ? [["a lid", () => waitsOf(batch, withTank({ cover: "lid" }), model, portions, heats)] as const]
      : []),
    ...(half < most
      ? [
          [
            `${half} parts a load`,
            () =>
              waitsOf(
                batch,
                bath,
                model,
                portions.map((one) => ({ ...one, part: { ...one.part, perLoad: half } })),
                heats,
              ),
          ] as const,
        ]
      : []),
    ...(loads.some(({ result }) => result.topUp !== null) && run.setting.topUpCelsius < warmTopUpCelsius
      ? [
          [
            `top-up water of ${warmTopUpCelsius} °C`,
            () => {
              const handling = { ...batch.handling, topUpCelsius: warmTopUpCelsius };
              return waitsOf({ ...batch, handling }, bath, model, portions, heats);
            },
          ] as const,
        ]
      : []),
    [
      `a heater of ${strongerW} W`,
      () => waitsOf(batch, withTank({ heaterW: strongerW }), model, portions, heats),
    ],
  ];
  const helping = remedies.flatMap(([name, waits]) => {
    const seconds = waits();
    return seconds === undefined || seconds > (1 - worthSaving) * now
      ? []
      : [`${name} (${seconds < 0.5 ? "no wait" : duration(seconds)})`];
  });
  return [
    warning(
      "heater-slow",
      ["tanks", tank.name, "heater"],
      `the ${shortNumber(tank.heaterW)} W heater of tank "${tank.name}" does not keep up: loads of "${dye.name}" wait ${duration(waited)} in all, up to ${duration(largest(loads.map(({ result }) => result.waitSeconds)))} each`,
      helping.length === 0 ? "dip in another bath meanwhile" : `${listed(helping)} would shorten that`,
    ),
  ];
}
