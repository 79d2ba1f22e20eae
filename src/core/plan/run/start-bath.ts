import { type HeatUp, heatUp } from "../../bath/heat/heating.js";
import { kwhOf } from "../../bath/heat/power.js";
import type { TankHeats } from "../../bath/heat/tank-heats.js";
import { heatState } from "../../bath/heat/working/heat-state.js";
import { riseTo } from "../../bath/heat/working/rise-and-fall.js";
import { type BathSetting, sizingTank, strengthOf, topUpCelsiusOf } from "../../bath/load/bath-setting.js";
import type { BathState } from "../../bath/load/bath-state.js";
import { fill, weakest } from "../../bath/load/fill.js";
import { topUpBelow } from "../../bath/load/load-size.js";
import { bathToWork, type TopUp, topUpOf, type WorkedBath } from "../../bath/load/worked-bath.js";
import { dyeOf, type MakeUp, makeUp } from "../../bath/make-up/make-up.js";
import { topping } from "../../bath/make-up/top-up.js";
import { coldPerHot } from "../../bath/water.js";
import { error, type Fault, warning } from "../../fault.js";
import { exactSum } from "../../maths/exact-sum.js";
import type { Batch, Bath, BathStart, Dye } from "../../model/batch.js";
import { figureOf } from "../../quantity/dye/dilution.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { dipTimer } from "../../uptake/law/dip-time.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import type { UptakeModel } from "../../uptake/law/uptake-model.js";
import type { PlanHeating } from "../plan-model.js";

/** A bath made up or taken over, filled by its rule and heated to its temperature. */
export interface StartedBath {
  readonly setting: BathSetting;
  readonly start: BathState;
  readonly startTopUp: TopUp | null;
  readonly heating: PlanHeating;
  readonly bath: WorkedBath;
  readonly faults: readonly Fault[];
}

/** What stays the same while the bath works. */
export function settingOf(batch: Batch, bath: Bath, uptake: UptakeModel, heats: TankHeats): BathSetting {
  const { tank, dye } = bath;
  const { room, handling } = batch;
  const heat = heats.at(tank, dye.celsius, room).working;
  const fresh = makeUp({
    volumeHotL: tank.volumeL,
    celsius: dye.celsius,
    roomCelsius: room.celsius,
    dilution: dye.dilution,
  });
  return {
    dye,
    handling,
    tank: sizingTank(tank),
    rule: bath.topUp,
    timer: dipTimer(uptake, dye.celsius, madeUpStrength(dye)),
    pace: heats.pace(uptake.activationEnergyJPerMol, dye.celsius),
    heat,
    cooled: heats.cooled(heat, handling.coolToCelsius),
    fresh: freshState(dye, tank.volumeL, fresh),
    ...(dye.mix && { uptakeEachPerDm2: dye.mix.parts.map((part) => part.dye.uptakePerDm2) }),
    coldPerHot: coldPerHot(dye.celsius, room.celsius),
    partsCelsius: room.celsius,
    topUpCelsius: topUpCelsiusOf(handling, room),
  };
}

/** A fresh bath; of a mix with each of its dyes. */
function freshState({ mix }: Dye, volumeL: number, made: MakeUp): BathState {
  if (mix === undefined) return { volumeL, dye: dyeOf(made) };
  const dyeEach = mix.parts.map(({ dilution }) =>
    dyeKinds[dilution.kind].inFill(figureOf(dilution), made.volumeColdL),
  );
  return { volumeL, dye: exactSum(dyeEach), dyeEach };
}

/** A kept bath, by its strength or those of its dyes. */
function keptState(
  { volumeL, strength, strengthEach }: Extract<BathStart, { kind: "kept" }>,
  fresh: BathState,
): BathState {
  const dyeEach = fresh.dyeEach?.map(
    (dye, i) => ((strengthEach?.[i] ?? strength) * volumeL * dye) / fresh.volumeL,
  );
  return dyeEach === undefined
    ? { volumeL, dye: (strength * volumeL * fresh.dye) / fresh.volumeL }
    : { volumeL, dye: exactSum(dyeEach), dyeEach };
}

/** Makes up or takes over the bath, fills it by its rule and heats it. */
export function startBath(batch: Batch, bath: Bath, setting: BathSetting, heats: TankHeats): StartedBath {
  const { start } = bath;
  const first: BathState = start.kind === "fresh" ? setting.fresh : keptState(start, setting.fresh);
  const state = bathToWork(first, batch.room.celsius);
  fill(setting, state, 1);
  // A bath that lacks so little works on without a top-up.
  const short =
    state.topUpShort && weakest(state, setting.fresh) < topUpBelow
      ? [startShort(batch, bath, setting, first)]
      : [];
  const startTopUp = topUpOf(state);
  const { heating, faults } = heatUpBath(batch, bath, state, heats);
  return { setting, start: first, startTopUp, heating, bath: state, faults: [...faults, ...short] };
}

/** The warning on a kept bath in which there is no room for the dye that it lacks. */
function startShort(batch: Batch, bath: Bath, { fresh }: BathSetting, start: BathState): Fault {
  const missing = topping({
    volumeL: start.volumeL,
    strength: strengthOf(start, fresh),
    toVolumeL: fresh.volumeL,
    toStrength: 1,
    celsius: bath.dye.celsius,
    roomCelsius: batch.room.celsius,
    dilution: bath.dye.dilution,
  });
  return warning(
    "top-up-short",
    ["baths", bath.index, "start"],
    `the bath of "${bath.dye.name}" in tank "${bath.tank.name}" has no room under its mark for all the dye that it lacks`,
    missing === undefined
      ? "make it up fresh: start: fresh"
      : `take out ${missing.takeOutHotL.toFixed(2)} L before you fill it`,
  );
}

/** Heats a bath, lid on, and enters what that took. */
function heatUpBath(
  batch: Batch,
  { tank, dye }: Bath,
  state: WorkedBath,
  heats: TankHeats,
): { heating: PlanHeating; faults: readonly Fault[] } {
  const { room } = batch;
  const { holdingW, evaporationKgPerH, up: usual, working } = heats.at(tank, dye.celsius, room);
  const unheated = { minutes: null, kWh: null, holdingW, evaporationKgPerH, evaporatedL: 0 };
  const usualStart = state.volumeL === tank.volumeL && state.celsius === room.celsius;
  const startCelsius = state.celsius;
  const path = ["tanks", tank.name, "heater"];
  state.celsius = working.celsius;
  if (tank.heaterW === undefined || usual === undefined) return { heating: unheated, faults: [] };
  const up = usualStart
    ? usual
    : heatUp({ ...tank, volumeL: state.volumeL }, dye.celsius, room, startCelsius);
  if (!up.reached)
    return {
      heating: unheated,
      faults: [
        error(
          "heater-too-weak",
          path,
          `the ${shortNumber(tank.heaterW)} W heater of tank "${tank.name}" cannot bring it to ${shortNumber(dye.celsius)} °C for dye "${dye.name}": it stops at ${up.celsius.toFixed(1)} °C`,
          heaterHelp(up, dye.celsius),
        ),
      ],
    };
  const warming = heatState(startCelsius, state.volumeL);
  riseTo(working, warming, working.celsius);
  const gainedKwh = kwhOf(state.volumeL * working.jPerLK * (working.celsius - startCelsius));
  state.heaterKwh += up.kWh;
  state.bathKwh += gainedKwh;
  state.lostKwh += tank.heaterEfficiency * up.kWh - gainedKwh;
  const { evaporatedL } = warming;
  return { heating: { ...unheated, minutes: up.minutes, kWh: up.kWh, evaporatedL }, faults: [] };
}

function heaterHelp({ neededW, withLid }: HeatUp & { reached: false }, celsius: number): string {
  const stronger = `a heater of more than ${Math.ceil(neededW)} W`;
  if (withLid === undefined) return `take ${stronger} or insulate the tank`;
  return withLid.reached
    ? `with a lid (cover: lid) it reaches ${shortNumber(celsius)} °C in ${Math.ceil(withLid.minutes)} min; without, take ${stronger}`
    : `even with a lid (cover: lid) it stops at ${withLid.celsius.toFixed(0)} °C; as it is, take ${stronger}`;
}
