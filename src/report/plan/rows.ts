import type { Plan, PlanBath, PlanLoad } from "../../core/plan/plan-model.js";
import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { type DyeKind, dyeKinds, kindsOfDye } from "../../core/quantity/dye/dye-kinds.js";
import type { Cell, Column, Table } from "../table.js";
import { restsInCell } from "../words/assumed.js";
import { decimals } from "../words/digits.js";

/** A column of the load table: its header, and what it holds. */
interface LoadColumn extends Column {
  readonly of: (plan: Plan, bath: PlanBath, load: PlanLoad) => Cell;
}

const to = (places: number) => (value: number) => decimals(value, places);
const text = (key: string, of: LoadColumn["of"]): LoadColumn => ({ key, title: key, of });
const number = (key: string, places: number, of: LoadColumn["of"]): LoadColumn => ({
  key,
  title: key,
  digits: to(places),
  of,
});

/** Codes of what to heed with the parts of a load. */
const adviceOn: LoadColumn["of"] = ({ advice, baths }, bath, { part }) =>
  advice
    .filter((one) => baths[one.bath - 1] === bath && one.part === part)
    .map(({ code }) => code)
    .join(" ");

/** What a top-up takes of one kind of dye. */
const topUpColumn = (kind: DyeKind): LoadColumn => {
  const { what, unit, tableDecimals } = dyeKinds[kind];
  return number(`top_up_${what}_${unit}`, tableDecimals, (_p, _b, { topUp }) =>
    topUp && kindWith(topUp, "amount") === kind ? figureOfDye(topUp, "amount") : null,
  );
};

const columns: readonly LoadColumn[] = [
  text("batch", (plan) => plan.batch),
  text("date", (plan) => plan.date),
  number("bath", 0, (_p, bath) => bath.bath + 1),
  text("tank", (_p, bath) => bath.tank),
  text("dye", (_p, bath) => bath.dye),
  number("bath_C", 1, (_p, bath) => bath.celsius),
  number("load", 0, (_p, _b, load) => load.load),
  number("order", 0, (_p, _b, load) => load.order),
  text("part", (_p, _b, load) => load.part),
  text("shade", (_p, _b, load) => load.shade),
  text("base", (_p, _b, load) => load.base),
  number("parts", 0, (_p, _b, load) => load.parts),
  number("area_dm2", 2, (_p, _b, load) => load.areaDm2),
  number("depth", 4, (_p, _b, load) => load.depth),
  number("dip_s", 1, (_p, _b, load) => load.dipSeconds),
  number("wait_s", 0, (_p, _b, load) => load.waitSeconds),
  number("before_C", 1, (_p, _b, load) => load.celsiusBefore),
  number("after_C", 1, (_p, _b, load) => load.celsiusAfter),
  number("window_from_s", 1, (_p, _b, load) => load.windowSeconds?.[0] ?? null),
  number("window_to_s", 1, (_p, _b, load) => load.windowSeconds?.[1] ?? null),
  number("delta_E00", 2, (_p, _b, load) => load.deltaE00),
  number("strength_before_pct", 2, (_p, _b, load) => 100 * load.strengthBefore),
  number("strength_after_pct", 2, (_p, _b, load) => 100 * load.strengthAfter),
  number("volume_before_L", 3, (_p, _b, load) => load.volumeBeforeL),
  number("volume_after_L", 3, (_p, _b, load) => load.volumeAfterL),
  ...kindsOfDye.map(topUpColumn),
  number("top_up_water_mL", 0, (_p, _b, { topUp }) => topUp?.waterMl ?? null),
  text("rests_on_assumed", (_p, _b, load) => restsInCell(load.restsOnAssumed)),
  text("advice", adviceOn),
];

/** What a top-up takes of each dye of a mix: "straw 2.1 mL; rose 1.0 mL". */
const topUpMix = text("top_up_mix", (_p, _b, { topUp }) =>
  topUp?.mix === undefined
    ? null
    : topUp.mix
        .map((one) => {
          const { unit, tableDecimals } = dyeKinds[kindWith(one, "amount")];
          return `${one.dye} ${decimals(figureOfDye(one, "amount"), tableDecimals)} ${unit}`;
        })
        .join("; "),
);

/** One row a load, for spreadsheets. */
export function planRows(plan: Plan): Table {
  const mixed = plan.baths.some(({ makeUp }) => makeUp.mix !== undefined);
  const own = mixed ? [...columns, topUpMix] : columns;
  return {
    columns: own,
    rows: plan.baths.flatMap((bath) => bath.loads.map((load) => own.map(({ of }) => of(plan, bath, load)))),
  };
}
