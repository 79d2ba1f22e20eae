import { type BathSetting, strengthOf } from "../../bath/load/bath-setting.js";
import type { BathState } from "../../bath/load/bath-state.js";
import { toKeepLevel, toKeepStrength, topUpRecords } from "../../bath/load/top-up-rules.js";
import type { Hindrance } from "../../bath/load/work-load.js";
import { error, type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import { largest } from "../../maths/extent.js";
import type { Bath } from "../../model/batch.js";
import { percentText } from "../../quantity/text/percent-text.js";
import type { LoadPlan, WorkedLoad } from "./bath-run.js";

/** A load that takes more than this share of the dye in the bath is large. Common practice, no source. */
const largeLoadShare = 0.1;

/** A bath above this strength has grown too strong for its times to be the usual ones [-]. Common practice, no source. */
const tooStrong = 1.1;

/** With less liquor a bath is empty [L]. */
const dryL = 1e-3;

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

/** What goes wrong with the loads of a bath, collected while they are worked. */
export interface LoadFaults {
  worked(load: WorkedLoad, before: BathState, number: number): void;
  /** The load cannot be worked: nothing comes after it. */
  hindered(by: Hindrance, before: BathState, plan: LoadPlan, number: number): void;
  all(): readonly Fault[];
}

export function loadFaults(bath: Bath, setting: BathSetting): LoadFaults {
  const path = ["baths", bath.index];
  const where = `the bath of "${bath.dye.name}" in tank "${bath.tank.name}"`;
  const { keepsLevel, keepsStrength } = topUpRecords[bath.topUp];
  const kept = bath.start.kind === "kept";
  const startStrength =
    bath.start.kind === "kept" ? largest(bath.start.strengthEach ?? [bath.start.strength]) : 1;
  const errors: Fault[] = [];
  const warnings = loadWarnings(path);
  const hindrance: Readonly<Record<Hindrance, (before: BathState, plan: LoadPlan, number: number) => Fault>> =
    {
      "too-little-dye": (before, { parts, part, order }, number) =>
        error(
          "too-little-dye",
          kept && number === 1 ? [...path, "start"] : path,
          `${where} holds less dye than load ${number} (${parts} ${part.name}, shade "${order.shade.name}") takes up: its strength is ${percentText(strengthOf(before, setting.fresh))} then`,
          number === 1 && kept
            ? "strengthen it first or make it up fresh: start: fresh"
            : `${keepsStrength ? "" : `write ${toKeepStrength}, or `}dip fewer parts in this bath, or use a larger tank`,
        ),
      "too-little-liquor": ({ volumeL }, { part }, number) => {
        const { leastL } = setting.tank;
        const why =
          leastL !== undefined && volumeL < leastL
            ? `its heater must not run with less than ${leastL} L`
            : `not one ${part.name} may be dipped in that at ${setting.handling.liquorRatioLPerKg} L/kg`;
        return error(
          "too-little-liquor",
          kept && number === 1 ? [...path, "start"] : path,
          `${where} holds ${volumeL.toFixed(2)} L before load ${number}, and ${why}`,
          keepsLevel ? "split the order over several batches" : `write ${toKeepLevel}`,
        );
      },
      "heater-too-weak": (_before, _plan, number) =>
        error(
          "heater-too-weak",
          ["tanks", bath.tank.name, "heater"],
          `the heater of tank "${bath.tank.name}" does not bring the bath of "${bath.dye.name}" back to its temperature before load ${number}`,
          "use a stronger heater, a lid, or insulate the tank",
        ),
      "longest-dip": (_before, _plan, number) =>
        error("dip-too-long", path, `load ${number} of ${where} takes longer than the longest dip`),
      "off-shade": (_before, _plan, number) =>
        error("mix-off-shade", path, `load ${number} of ${where} does not come near its shade`),
    };
  return {
    worked: ({ result }, before, number) => {
      if (!(result.volumeAfterL > dryL))
        errors.push(
          error(
            "bath-dry",
            path,
            `${where} is empty after load ${number}: its parts carry all liquor out`,
            "check dragOut, or use a larger tank",
          ),
        );
      const share = largest(
        result.takenUpEach.map((taken, i) => taken / before.dyeEach![i]!),
        result.takenUp / before.dye,
      );
      if (share > largeLoadShare)
        warnings.add(
          "large-load",
          number,
          `${where}: it takes ${percentText(share)} of the dye in the bath, so the shade may be uneven and its time is uncertain`,
          "dip fewer parts a load, or use a larger tank",
        );
      if (result.topUpShort)
        warnings.add(
          "top-up-short",
          number,
          `${where}: the tank is full before all missing dye is in; strength is brought to ${percentText(result.strengthAfter)} only`,
          "take some liquor out before topping up",
        );
      const strongest = largest([
        result.strengthBefore,
        result.strengthAfter,
        ...result.strengthBeforeEach,
        ...result.strengthAfterEach,
      ]);
      if (strongest > Math.max(tooStrong, startStrength))
        warnings.add(
          "bath-too-strong",
          number,
          `${where}: it has grown to ${percentText(strongest)} strength, since more water than dye leaves it`,
          keepsStrength
            ? "top up with water only"
            : `write ${toKeepStrength}: it adds water where no dye is missing`,
        );
    },
    hindered: (by, before, plan, number) => {
      errors.push(hindrance[by](before, plan, number));
    },
    all: () => [...errors, ...warnings.faults()],
  };
}
