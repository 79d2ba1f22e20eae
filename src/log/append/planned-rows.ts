import type { MixFigures, Plan, PlanBath, PlanLoad } from "../../core/plan/plan-model.js";
import { type DyeAmount, figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import type { WrittenEvent } from "../row/events.js";
import type { LogValues } from "../row/log-values.js";

/** A row of the log as the plan has it, without a time. */
export interface PlannedRow {
  readonly bath: string;
  readonly event: WrittenEvent;
  /** In its bath, from 1: the load itself, or the one that a top-up follows; 0 before the first load. */
  readonly load?: number;
  readonly values: LogValues;
}

/** As the run sheet prints it: what is poured and timed is that. */
const asPoured = (amount: number): number =>
  amount < 10 ? Math.round(amount * 10) / 10 : Math.round(amount);

/** Dye and water to pour. */
function amounts(added: DyeAmount & { readonly waterMl: number }): LogValues {
  const dye = asPoured(figureOfDye(added, "amount"));
  const { unit } = dyeKinds[kindWith(added, "amount")];
  return {
    ...(unit === "mL" ? { concentrateMl: dye } : { concentrateG: dye }),
    waterMl: asPoured(added.waterMl),
  };
}

/** The dyes of a mix, which the columns of the log hold together. */
const eachSaid = (added: MixFigures<"amount"> | null): string =>
  added?.mix === undefined
    ? ""
    : `: ${added.mix.map((one) => `${one.dye} ${asPoured(figureOfDye(one, "amount"))} ${dyeKinds[kindWith(one, "amount")].unit}`).join(", ")}`;

function loadRows(bath: PlanBath, plan: Plan, load: PlanLoad): PlannedRow[] {
  const { tank } = bath;
  const row = (event: WrittenEvent, values: LogValues): PlannedRow => ({
    bath: tank,
    event,
    load: load.load,
    values: {
      bath: tank,
      event,
      ...values,
      note: `${plan.batch} ${event === "load" ? "" : "after "}load ${load.load}${event === "load" ? "" : eachSaid(load.topUp)}`,
    },
  });
  return [
    row("load", {
      dye: bath.dye,
      part: load.part,
      shade: load.shade,
      ...(load.base === null ? {} : { base: load.base }),
      parts: load.parts,
      seconds: Math.round(load.dipSeconds),
    }),
    ...(load.topUp === null ? [] : [row("top-up", { dye: bath.dye, ...amounts(load.topUp) })]),
  ];
}

/**
 * The rows that a planned day will have if all goes by the sheet, in its order: what is poured, dipped and timed is
 * filled in, what only a thermometer, a ruler or an eye can tell is empty.
 */
export const plannedRows = (plan: Plan): readonly PlannedRow[] =>
  plan.baths.flatMap((bath) => {
    const of = (event: WrittenEvent, values: LogValues): PlannedRow => ({
      bath: bath.tank,
      event,
      values: {
        bath: bath.tank,
        event,
        dye: bath.dye,
        ...values,
        note: `${plan.batch}${event === "made-up" ? eachSaid(bath.makeUp) : ""}`,
      },
    });
    return [
      ...(bath.start.kind === "fresh" ? [of("made-up", amounts(bath.makeUp))] : []),
      ...(bath.startTopUp === null ? [] : [{ ...of("top-up", amounts(bath.startTopUp)), load: 0 }]),
      ...bath.loads.flatMap((load) => loadRows(bath, plan, load)),
      ...(bath.after === "dump" ? [of("dump", {})] : []),
    ];
  });
