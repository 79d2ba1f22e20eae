import { strengthOf } from "../../bath/load/bath-setting.js";
import type { BathState } from "../../bath/load/bath-state.js";
import { strengthEach } from "../../bath/load/mixed-load.js";
import { type Fault, warning } from "../../fault.js";
import type { Batch, Dye, DyedOrder } from "../../model/batch.js";
import { sameReading } from "../../model/colour.js";
import { dyesOf } from "../../model/dyes-of.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { type Carried, carriedMl, carriedStrength } from "../../recipe/carry-over/carried-strength.js";
import {
  carryOverShift,
  type Liquor,
  rinsesUnseen,
  tracelessStrength,
  unseenShift,
} from "../../recipe/carry-over/carry-over.js";
import { mixDyes } from "../../recipe/mixture/mix-dye.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import type { BathRun } from "../run/bath-run.js";

/** What one bath does to a shade of another when some of its liquor gets in. */
interface Harm {
  readonly from: BathRun;
  readonly to: BathRun;
  readonly shade: string;
  readonly shift: number;
  /** More rinses that keep it where nobody sees it. */
  readonly rinses: () => number;
}

interface Known {
  readonly batch: Batch;
  readonly models: ReadonlyMap<Dye, DyeModel>;
  /** By order index. */
  readonly aims: readonly ShadeAim[];
}

/** What the liquor of a bath does to an order in the next; undefined where a colour is not known. */
function harmTo(
  { batch: { handling }, models, aims }: Known,
  from: BathRun,
  to: BathRun,
  order: DyedOrder,
  rinsed: number,
): Harm | undefined {
  const [last, next] = [from.bath.dye, to.bath.dye];
  if (!sameReading(last.reading, next.reading)) return undefined;
  const liquor = ({ bath: { dye }, setting }: BathRun, state: BathState): Liquor | undefined => {
    const parts = dyesOf(dye).map((one) => models.get(one)!);
    const dyes = mixDyes(parts, order.base ?? next.base);
    if (!dyes.ok) return undefined;
    const strengths =
      dye.mix === undefined
        ? [strengthOf(state, setting.fresh)]
        : strengthEach(state, setting.fresh).map((worn, i) => worn * dye.mix!.parts[i]!.strength);
    return { name: dye.name, dyes: dyes.value, strengths };
  };
  const carried: Carried = {
    carriedMl,
    bathMl: 1000 * to.setting.fresh.volumeL,
    rinseMl: 1000 * handling.rinseWaterL,
  };
  if (carriedStrength(strengthOf(from.end, from.setting.fresh), carried, rinsed) < tracelessStrength)
    return undefined;
  const [soils, soiled] = [liquor(from, from.end), liquor(to, to.setting.fresh)];
  if (soils === undefined || soiled === undefined) return undefined;
  const seconds = aims[order.index]!.freshSeconds;
  return {
    from,
    to,
    shade: order.shade.name,
    shift: carryOverShift(soils, soiled, seconds, carried, rinsed),
    rinses: () => rinsesUnseen(soils, soiled, seconds, carried) - rinsed,
  };
}

/** The shade of a bath that liquor of another shifts most. */
function worstHarm(known: Known, from: BathRun, to: BathRun, rinsed: number): Harm | undefined {
  if (from.bath.dye === to.bath.dye) return undefined;
  const harms = [...new Set(to.portions.map(({ order }) => order))].flatMap(
    (order) => harmTo(known, from, to, order, rinsed) ?? [],
  );
  return harms.reduce<Harm | undefined>(
    (worst, harm) => (worst !== undefined && worst.shift >= harm.shift ? worst : harm),
    undefined,
  );
}

const seen = (harm: Harm | undefined): harm is Harm => harm !== undefined && harm.shift > unseenShift;

function rinseIt({ handling }: Batch, what: string, harm: Harm): string {
  const rinses = harm.rinses();
  return `rinse ${what} ${rinses === 1 ? "once" : `${rinses} times`} with ${shortNumber(handling.rinseWaterL)} L of water`;
}

/** The warning on a tank that holds one dye after another. */
function inTank(known: Known, harm: Harm): Fault {
  const { from, to, shade, shift } = harm;
  const [last, next] = [from.bath, to.bath];
  const otherWay = worstHarm(known, to, from, 0);
  const better =
    otherWay !== undefined && otherWay.shift < shift
      ? `; or list the bath of "${next.dye.name}" before that of "${last.dye.name}": in that order it is ${otherWay.shift.toFixed(1)}`
      : "";
  return warning(
    "carry-over",
    ["baths", next.index],
    `${carriedMl} mL of "${last.dye.name}" left in tank "${next.tank.name}" (assumed) shift shade "${shade}" of "${next.dye.name}" by ${shift.toFixed(1)} CIEDE2000`,
    `${rinseIt(known.batch, "the tank", harm)} in between${better}`,
  );
}

/** The warning on a basket or tongs that go from one tank to another. */
function inBasket(known: Known, harm: Harm): Fault {
  const { from, to, shade, shift } = harm;
  return warning(
    "carry-over",
    ["baths", to.bath.index],
    `a basket or tongs that bring ${carriedMl} mL of "${from.bath.dye.name}" along (assumed) shift shade "${shade}" of "${to.bath.dye.name}" by ${shift.toFixed(1)} CIEDE2000`,
    `${rinseIt(known.batch, "them", harm)} in between, or keep a basket for each dye`,
  );
}

/**
 * Warnings where liquor of one dye gets into the bath of another and shifts a shade that one sees: in a tank that holds
 * both one after the other, and with a basket or tongs, which are rinsed as often as the parts.
 */
export function carryOverFaults(
  batch: Batch,
  runs: readonly BathRun[],
  { models, aims }: Omit<Known, "batch">,
): Fault[] {
  const known: Known = { batch, models, aims };
  return runs.flatMap((to, at) => {
    const inSameTank = (run: BathRun): boolean => run.bath.tank.name === to.bath.tank.name;
    const before = runs.slice(0, at).findLast(inSameTank);
    const soiling = before && worstHarm(known, before, to, 0);
    const others = runs
      .filter((run) => !inSameTank(run))
      .flatMap((from) => worstHarm(known, from, to, batch.handling.rinses) ?? [])
      .filter(seen);
    const worst = others.sort((a, b) => b.shift - a.shift).slice(0, 1);
    return [
      ...(seen(soiling) ? [inTank(known, soiling)] : []),
      ...worst.map((harm) => inBasket(known, harm)),
    ];
  });
}
