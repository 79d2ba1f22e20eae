import type { HeatUp } from "../../bath/heat/heating.js";
import type { TankHeats } from "../../bath/heat/tank-heats.js";
import type { BathState } from "../../bath/load/bath-state.js";
import { toKeepLevel, toKeepStrength, topUpRecords } from "../../bath/load/top-up-rules.js";
import {
  type BathSetting,
  type LoadResult,
  strengthOf,
  tooLittleLiquor,
  workLoad,
} from "../../bath/load/work-load.js";
import { dyeOf, type MakeUp, makeUp } from "../../bath/make-up/make-up.js";
import { coldPerHot, waterDensityKgM3 } from "../../bath/water.js";
import { error, type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch, Bath } from "../../model/batch.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { dipTimer } from "../../uptake/law/dip-time.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import type { UptakeModel } from "../../uptake/law/uptake-model.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { triedUptake } from "../../uptake/shade/shade-time.js";
import type { LoadPlan } from "../assign/assign.js";
import type { PlanHeating } from "../plan-model.js";
import { startFaults } from "../warnings/start-faults.js";
import { trialFaults } from "../warnings/trial-faults.js";

/** One bath worked through its loads. */
export interface BathRun {
  readonly bath: Bath;
  readonly setting: BathSetting;
  /** The dye's uptake without what a trial dip in this bath corrects. */
  readonly untried: UptakeModel;
  readonly makeUp: MakeUp;
  /** Of a fresh bath of the working volume, whatever this one starts as. */
  readonly freshWaterMl: number;
  readonly heating: PlanHeating;
  readonly loads: readonly { readonly plan: LoadPlan; readonly result: LoadResult }[];
  readonly start: BathState;
  readonly end: BathState;
  readonly faults: readonly Fault[];
}

function heatingOf(
  bath: Bath,
  batch: Batch,
  heats: TankHeats,
): { heating: PlanHeating; faults: readonly Fault[] } {
  const { tank, dye } = bath;
  const { heaterW } = tank;
  const { room } = batch;
  const { holdingW, evaporationKgPerH, up } = heats.at(tank, dye.celsius, room);
  const unheated = { minutes: null, kWh: null, holdingW, evaporationKgPerH };
  if (heaterW === undefined || up === undefined) return { heating: unheated, faults: [] };
  const path = ["tanks", tank.name, "heater"];
  if (!up.reached) {
    const fault = error(
      "heater-too-weak",
      path,
      `the ${shortNumber(heaterW)} W heater of tank "${tank.name}" cannot bring it to ${shortNumber(dye.celsius)} °C for dye "${dye.name}": it stops at ${up.celsius.toFixed(0)} °C`,
      heaterHelp(up, dye.celsius),
    );
    return { heating: unheated, faults: [fault] };
  }
  const struggles =
    holdingW <= heaterW
      ? []
      : [
          warning(
            "heater-struggles",
            path,
            `with the lid off, tank "${tank.name}" loses ${Math.round(holdingW * tank.heaterEfficiency)} W at ${shortNumber(dye.celsius)} °C, more than its ${shortNumber(heaterW)} W heater gives to the liquor: the bath cools while dipping`,
            "put a lid on between loads and read the temperature before each dip",
          ),
        ];
  return { heating: { ...unheated, minutes: up.minutes, kWh: up.kWh }, faults: struggles };
}

function heaterHelp({ neededW, withLid }: HeatUp & { reached: false }, celsius: number): string {
  const stronger = `a heater of more than ${Math.ceil(neededW)} W`;
  if (withLid === undefined) return `take ${stronger} or insulate the tank`;
  return withLid.reached
    ? `with a lid (cover: lid) it reaches ${shortNumber(celsius)} °C in ${Math.ceil(withLid.minutes)} min; without, take ${stronger}`
    : `even with a lid (cover: lid) it stops at ${withLid.celsius.toFixed(0)} °C; as it is, take ${stronger}`;
}

/** Makes up or takes over the bath, heats it and works its loads in order. */
export function runBath(
  bath: Bath,
  batch: Batch,
  model: DyeModel,
  plans: readonly LoadPlan[],
  heats: TankHeats,
): BathRun {
  const { tank, dye, topUp: rule } = bath;
  const { room, handling } = batch;
  const fresh = makeUp({
    volumeHotL: tank.volumeL,
    celsius: dye.celsius,
    roomCelsius: room.celsius,
    dilution: dye.dilution,
  });
  const { heating, faults: heatingFaults } = heatingOf(bath, batch, heats);
  const density = waterDensityKgM3(dye.celsius);
  const { start } = bath;
  const tried = triedUptake(model, {
    strength: start.kind === "kept" ? start.strength : 1,
    celsius: dye.celsius,
    ...(bath.trial === undefined ? {} : { trial: bath.trial }),
  });
  const uptake = (tried.ok ? tried.value?.uptake : undefined) ?? model.uptake;
  const setting: BathSetting = {
    dye,
    handling,
    rule,
    timer: dipTimer(uptake, dye.celsius, madeUpStrength(dye)),
    fresh: { volumeL: tank.volumeL, dye: dyeOf(fresh) },
    evaporationLPerSecond: (1000 * heating.evaporationKgPerH) / density / 3600,
    coldPerHot: coldPerHot(dye.celsius, room.celsius),
  };
  const first: BathState =
    start.kind === "fresh"
      ? setting.fresh
      : { volumeL: start.volumeL, dye: (start.strength * start.volumeL * setting.fresh.dye) / tank.volumeL };
  const worked = workLoads(bath, setting, first, plans);
  return {
    bath,
    setting,
    untried: model.uptake,
    makeUp:
      start.kind === "fresh"
        ? fresh
        : makeUp({
            volumeHotL: start.volumeL,
            celsius: dye.celsius,
            roomCelsius: room.celsius,
            dilution: dye.dilution,
          }),
    freshWaterMl: fresh.waterMl,
    heating,
    loads: worked.loads,
    start: first,
    end: worked.end,
    faults: [
      ...heatingFaults,
      ...startFaults(bath, handling, plans),
      ...trialFaults(bath, tried),
      ...worked.faults,
    ],
  };
}

/** Warnings that may come with every load: one a kind, for the first load, with the count of the others. */
function loadWarnings(path: Fault["path"]) {
  const first = new Map<string, { load: number; message: string; help: string; others: number }>();
  return {
    add: (code: string, load: number, message: string, help: string): void => {
      const known = first.get(code);
      if (known) known.others++;
      else first.set(code, { load, message, help, others: 0 });
    },
    faults: (): Fault[] =>
      mapped([...first], ([code, { load, message, help, others }]) => {
        const more = others > 0 ? ` and ${others} more` : "";
        return warning(code, path, `load ${load}${more} of ${message}`, help);
      }),
  };
}

/** A load that takes more than this share of the dye in the bath is large. Common practice, no source. */
const largeLoadShare = 0.1;

function workLoads(bath: Bath, setting: BathSetting, first: BathState, plans: readonly LoadPlan[]) {
  const { handling, fresh } = setting;
  const path = ["baths", bath.index];
  const where = `the bath of "${bath.dye.name}" in tank "${bath.tank.name}"`;
  const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
  const faults: Fault[] = [];
  const warnings = loadWarnings(path);
  const loads: { plan: LoadPlan; result: LoadResult }[] = [];
  const dry = (load: number): Fault =>
    error(
      "bath-dry",
      path,
      `${where} is empty after load ${load} of ${plans.length}: what leaves with the parts and as vapour is not topped up`,
      topUpRecords[bath.topUp].keepsLevel ? "split the order over several batches" : `write ${toKeepLevel}`,
    );
  let state = first;
  for (const plan of plans) {
    const number = loads.length + 1;
    const { part, shade } = plan.order;
    const result = workLoad(setting, state, plan);
    if (result === undefined) {
      faults.push(
        error(
          "too-little-dye",
          bath.start.kind === "kept" && number === 1 ? [...path, "start"] : path,
          `${where} holds less dye than load ${number} (${plan.parts} ${part.name}, shade "${shade.name}") takes up: its strength is ${percent(strengthOf(state, fresh))} then`,
          number === 1 && bath.start.kind === "kept"
            ? "strengthen it first or make it up fresh: start: fresh"
            : `${topUpRecords[bath.topUp].keepsStrength ? "" : `write ${toKeepStrength}, or `}dip fewer parts in this bath, or use a larger tank`,
        ),
      );
      break;
    }
    if (!(result.volumeAfterL > 1e-6)) {
      faults.push(dry(number));
      break;
    }
    loads.push({ plan, result });
    const least = (handling.liquorRatioLPerKg * plan.parts * part.massG) / 1000;
    if (tooLittleLiquor(handling, state, plan.parts * part.massG))
      warnings.add(
        "too-little-liquor",
        number,
        `${where}: ${state.volumeL.toFixed(2)} L are left, and ${handling.liquorRatioLPerKg} L/kg asks for ${least.toFixed(2)} L`,
        topUpRecords[bath.topUp].keepsLevel
          ? "dip fewer parts a load: perLoad under the part"
          : `write ${toKeepLevel}, or dip fewer parts a load`,
      );
    if (result.takenUp > largeLoadShare * state.dye)
      warnings.add(
        "large-load",
        number,
        `${where}: it takes ${percent(result.takenUp / state.dye)} of the dye in the bath, so the shade may be uneven and its time is uncertain`,
        "dip fewer parts a load, or use a larger tank",
      );
    if (result.topUpShort)
      warnings.add(
        "top-up-short",
        number,
        `${where}: the tank is full before all missing dye is in; strength is brought to ${percent(result.strengthAfter)} only`,
        "take some liquor out before topping up",
      );
    state = result.after;
  }
  faults.push(...warnings.faults());
  return { loads, end: state, faults };
}
