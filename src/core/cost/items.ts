import { dryingKwh, kwhOf } from "../bath/heat/power.js";
import { mapped } from "../mapped.js";
import { exactSumOf } from "../maths/exact-sum.js";
import type { AssumedLoadTime, Batch, Equipment, Handling } from "../model/batch.js";
import { isDyed } from "../model/undyed.js";
import type { RestingShares } from "./assumed-shares.js";
import { dyeCost } from "./dye-cost.js";
import type { CostLine } from "./line/cost-lines.js";
import { equipmentPerHour } from "./rate/depreciation.js";

/** One thing that was paid for, and the orders that share it by weight. */
export interface CostItem {
  readonly line: CostLine;
  readonly what: string;
  readonly amount: number;
  /** How much of it rests on assumptions; absent: none of it. */
  readonly rests?: RestingShares;
  readonly shares: readonly { readonly order: number; readonly weight: number }[];
}

/** One load as the cost sheet sees it. */
export interface LoadUse {
  readonly order: number;
  readonly areaDm2: number;
  readonly dipSeconds: number;
  readonly cycleSeconds: number;
  /** Of its wait, what counts as work. */
  readonly handsOnWaitSeconds: number;
  /** mL of concentrate or g of powder, as what is dragged out. */
  readonly takenUp: number;
  readonly draggedOut: number;
  /** The same of each dye of a mix. */
  readonly takenUpEach?: readonly number[];
  readonly draggedOutEach?: readonly number[];
  readonly parts: number;
  /** Its size follows from the liquor ratio. */
  readonly sizedByRatio: boolean;
  /** Its drag-out is that of the handling, not the part's own. */
  readonly usualDragOut: boolean;
}

/** One bath as the cost sheet sees it. Dye in mL or g, waters in mL measured cold. */
export interface BathUse {
  readonly batch: Batch;
  readonly tank: Batch["tanks"][number];
  readonly dye: Batch["dyes"][number];
  readonly fresh: boolean;
  readonly loads: readonly LoadUse[];
  /** Drawn from the mains to heat up, and after that. */
  readonly heatingKwh: number;
  readonly workingKwh: number;
  /** Heating up, waits and cycles. */
  readonly hotSeconds: number;
  /** Of all its loads. */
  readonly rinseLitres: number;
  readonly makeUpWaterMl: number;
  readonly topUpWaterMl: number;
  readonly dyeLeft: number;
  readonly dyeLeftEach?: readonly number[] | undefined;
  /** Of a bath that is kept, whose costs are shared over it; absent for one that is dumped. */
  readonly life?:
    | {
        readonly areaDm2: number;
        readonly dyeLeft: number;
        readonly dyeLeftEach?: readonly number[] | undefined;
        /** The dye that it loses ends it, not age. */
        readonly endedByDye: boolean;
      }
    | undefined;
}

const wearPerHour = (equipment: Equipment | undefined): number =>
  equipment ? equipmentPerHour(equipment.price, equipment.lifeHours) : 0;

/** The share of a kept bath's whole life that this batch uses; a bath that cannot finish the batch is used up. */
export const lifeShare = (areaDm2: number, lifeAreaDm2: number): number =>
  lifeAreaDm2 > areaDm2 ? areaDm2 / lifeAreaDm2 : 1;

/** How much of a load's time rests on times and a load size that nobody gave. */
function restingTimes({ assumed, ...handling }: Handling, load: LoadUse): RestingShares {
  const all = load.cycleSeconds + load.handsOnWaitSeconds;
  const seconds: Readonly<Record<AssumedLoadTime, number>> = {
    load: handling.loadSeconds,
    loadPart: handling.loadPartSeconds * load.parts,
    drain: handling.drainSeconds,
    rinse: handling.rinseSeconds,
    unload: handling.unloadSeconds,
    unloadPart: handling.unloadPartSeconds * load.parts,
  };
  let times = 0;
  for (const key of assumed) times += key in seconds ? seconds[key as AssumedLoadTime] : 0;
  const perLoad = all - seconds.loadPart - seconds.unloadPart;
  return {
    handlingTimes: times / all,
    ...(load.sizedByRatio && assumed.includes("liquorRatio") ? { liquorRatio: perLoad / all } : {}),
  };
}

/** What the loads of one bath cost each: the hands, the stirring, the rinse, what is used up, the dye that left the bath. */
export function loadItems({ batch, tank, dye, loads }: BathUse): CostItem[] {
  const { rates, handling, consumables } = batch;
  const perMlOrG = (dye.price ?? 0) / 1000;
  const costOf = (amount: number, each: readonly number[] | undefined): number =>
    each === undefined ? perMlOrG * amount : dyeCost(dye, each);
  const rinseL = handling.rinseEvery === 1 ? handling.rinses * handling.rinseWaterL : 0;
  return loads.flatMap((load): CostItem[] => {
    const shares = [{ order: load.order, weight: 1 }];
    const item = (line: CostLine, what: string, amount: number, rests: RestingShares = {}): CostItem => ({
      line,
      what,
      amount,
      rests,
      shares,
    });
    return [
      item(
        "labour",
        "dipping",
        ((rates.labourPerHour ?? 0) * (load.cycleSeconds + load.handsOnWaitSeconds)) / 3600,
        restingTimes(handling, load),
      ),
      item("energy", "agitation", (rates.electricityPerKwh ?? 0) * kwhOf(tank.agitationW * load.dipSeconds)),
      item("water", "rinsing", ((rates.waterPerM3 ?? 0) * rinseL) / 1000),
      item("consumables", "per load", consumables.perLoad),
      item("dye", "taken up", costOf(load.takenUp, load.takenUpEach), dye.uptakeAssumed ? { uptake: 1 } : {}),
      item(
        "dye",
        "dragged out",
        costOf(load.draggedOut, load.draggedOutEach),
        handling.dragOutAssumed && load.usualDragOut ? { dragOut: 1 } : {},
      ),
    ];
  });
}

/** Makes items of a bath, which its orders share by dyed area. */
function sharedByArea({ loads }: BathUse): (line: CostLine, what: string, amount: number) => CostItem {
  const shares = mapped(loads, (load) => ({ order: load.order, weight: load.areaDm2 }));
  return (line, what, amount) => ({ line, what, amount, shares });
}

/** What one bath costs before its first load, however many follow. */
export function setUpItems(use: BathUse): CostItem[] {
  const { rates, handling, consumables } = use.batch;
  const item = sharedByArea(use);
  const minutes = handling.setUpMinutes + handling.cleanUpMinutes;
  const assumedMinutes =
    (handling.assumed.includes("setUp") ? handling.setUpMinutes : 0) +
    (handling.assumed.includes("cleanUp") ? handling.cleanUpMinutes : 0);
  return [
    {
      ...item("labour", "set-up and clean-up", ((rates.labourPerHour ?? 0) * minutes) / 60),
      rests: { handlingTimes: minutes > 0 ? assumedMinutes / minutes : 0 },
    },
    item("energy", "heating up", (rates.electricityPerKwh ?? 0) * use.heatingKwh),
    item("consumables", "per bath", consumables.perBath),
  ];
}

/** What one bath costs while it works, beside its loads. */
export function runningItems(use: BathUse): CostItem[] {
  const { rates, handling } = use.batch;
  const item = sharedByArea(use);
  // A filling that serves several loads is shared by them all.
  const sharedRinseL = handling.rinseEvery === 1 ? 0 : use.rinseLitres;
  return [
    item("energy", "working", (rates.electricityPerKwh ?? 0) * use.workingKwh),
    item("water", "top-up", ((rates.waterPerM3 ?? 0) * use.topUpWaterMl) / 1e6),
    item("water", "rinsing", ((rates.waterPerM3 ?? 0) * sharedRinseL) / 1000),
    item("equipment", "tank", (wearPerHour(use.tank.equipment) * use.hotSeconds) / 3600),
  ];
}

/** What is in one bath and leaves it in the end: whole where it is dumped, by its life share where it is kept. */
export function contentItems(use: BathUse): CostItem[] {
  const { batch, tank, dye, loads, fresh, life } = use;
  const { rates } = batch;
  const item = sharedByArea(use);
  const share = life
    ? lifeShare(
        exactSumOf(loads, (load) => load.areaDm2),
        life.areaDm2,
      )
    : 1;
  const makeUpMl = life || fresh ? use.makeUpWaterMl * share : 0;
  const left = life ? life.dyeLeft * share : use.dyeLeft;
  const leftEach = life ? life.dyeLeftEach?.map((one) => one * share) : use.dyeLeftEach;
  const leftCost = leftEach === undefined ? ((dye.price ?? 0) * left) / 1000 : dyeCost(dye, leftEach);
  // A life that dye ends is as long as uptake and drag-out make it.
  const rests: RestingShares =
    life?.endedByDye === true
      ? {
          ...(dye.uptakeAssumed ? { uptake: 1 } : {}),
          ...(batch.handling.dragOutAssumed ? { dragOut: 1 } : {}),
        }
      : {};
  return [
    { ...item("water", "make-up", ((rates.waterPerM3 ?? 0) * makeUpMl) / 1e6), rests },
    { ...item("dye", "left in the bath", leftCost), rests },
    { ...item("disposal", "spent liquor", (rates.disposalPerL ?? 0) * tank.volumeL * share), rests },
  ];
}

/** All that one bath costs. */
export const bathItems = (use: BathUse): CostItem[] => [
  ...loadItems(use),
  ...setUpItems(use),
  ...runningItems(use),
  ...contentItems(use),
];

/** What all parts share equally, what the dyed ones share, and each order's blanks. `started` is by order index. */
export function partItems(batch: Batch, started: readonly number[], dryerRuns: number): CostItem[] {
  const { rates, handling, consumables, dryers, orders } = batch;
  const dryer = dryers[0];
  const parts = started.reduce((sum, count) => sum + count, 0);
  const shares = mapped(orders, (order) => ({ order: order.index, weight: started[order.index]! }));
  const dyed = shares.filter(({ order }) => isDyed(orders[order]!));
  const item = (line: CostLine, what: string, amount: number): CostItem => ({
    line,
    what,
    amount,
    shares: dyed,
  });
  const blanks = mapped(orders, (order): CostItem => {
    const { blank } = order.part;
    const each = typeof blank === "number" ? blank : ((order.base && blank?.get(order.base.name)) ?? 0);
    return {
      line: "blank",
      what: "undyed parts",
      amount: each * started[order.index]!,
      shares: [{ order: order.index, weight: 1 }],
    };
  });
  const perPart: CostItem = {
    ...item("consumables", "per part", consumables.perPart * parts),
    shares,
  };
  if (!dryer) return [...blanks, perPart];
  const hours = (dryerRuns * dryer.minutes) / 60;
  return [
    ...blanks,
    perPart,
    item("energy", "drying", (rates.electricityPerKwh ?? 0) * dryingKwh(dryer, dryerRuns)),
    item("equipment", "dryer", wearPerHour(dryer.equipment) * hours),
    {
      ...item(
        "labour",
        "dryer loading",
        ((rates.labourPerHour ?? 0) * dryerRuns * handling.dryerLoadingMinutes) / 60,
      ),
      rests: { handlingTimes: handling.assumed.includes("dryerLoading") ? 1 : 0 },
    },
  ];
}
