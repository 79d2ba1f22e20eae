import { openSeconds, rackSeconds } from "../../../src/core/bath/load/handling-seconds.js";
import type { RealBath } from "../../../src/core/bath/replay/real-bath.js";
import { passTime } from "../../../src/core/bath/replay/real-bath.js";
import { replayLoad } from "../../../src/core/bath/replay/real-load.js";
import { realMakeUp, realTopUp } from "../../../src/core/bath/replay/real-top-up.js";
import { ciede2000 } from "../../../src/core/colour/difference/ciede2000.js";
import type { Batch, Lab } from "../../../src/core/model/batch.js";
import { SharedWork } from "../../../src/core/plan/run/shared-work.js";
import type { Figures } from "../../../src/core/quality/estimates/figures.js";
import { realWithFigures } from "../../../src/core/quality/estimates/real-with-figures.js";
import { hasCurve } from "../../../src/core/uptake/shade/dye-model.js";
import { aimOf } from "../../../src/core/uptake/shade/fitted-dyes.js";
import { labAfter } from "../../../src/core/uptake/swatches/shade-curve.js";
import { realBathOf } from "../../../src/log/replay/start-from-log.js";
import { localTime } from "../../../src/log/row/local-time.js";
import type { LoadRow, LogRow } from "../../../src/log/row/log-row.js";
import { readFile, readText } from "../../batch-file/read.js";

/** Numbers from a seed: mulberry32. */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const shared = new SharedWork();

export async function workshopBatch(): Promise<Batch> {
  const { batch, diagnostics } = await readText(
    `
batch: learning
include: [workshop.yaml, dyes.yaml]
baths:
  - { tank: six, dye: brick, topUp: strength }
orders:
  - { part: clip, shade: brick-light, base: white, quantity: 40 }
`,
    { readFile: (name) => readFile(`examples/${name}`) },
  );
  if (batch === undefined) throw new Error(JSON.stringify(diagnostics));
  // Nobody knows uptake and drag-out.
  const dye = { ...batch.baths[0]!.dye, uptakePerDm2: 0.03, uptakeAssumed: true };
  const handling = { ...batch.handling, dragOutMlPerDm2: 0.8, dragOutAssumed: true };
  return {
    ...batch,
    handling,
    dyes: [dye],
    baths: [{ ...batch.baths[0]!, dye }],
    shades: batch.shades.filter((shade) => shade.dye.name === dye.name).map((shade) => ({ ...shade, dye })),
  };
}

/** What is true in an invented workshop, and the tool does not know. */
export interface Truth extends Figures {
  readonly strengthExponent: number;
}

export function drawnTruth(random: () => number, batch: Batch): Truth {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const { dye } = batch.baths[0]!;
  return {
    timeFactor: Math.exp(0.15 * normal()),
    uptakePerDm2: 0.03 * Math.exp(2.6 * random()),
    dragOutMlPerDm2: 0.8 * Math.exp(0.5 * normal()),
    strengthExponent: 1 + random(),
    activationEnergyJPerMol: dye.activationEnergyJPerMol * Math.exp(0.2 * normal()),
    evaporation: Math.exp(0.07 * normal()),
  };
}

export interface Work {
  readonly rows: readonly LogRow[];
  /** CIEDE2000 of each load from its shade, without the noise of reading. */
  readonly misses: readonly number[];
  /** ln of the fresh time that each load really got over the one that it should have had. */
  readonly timesOff: readonly number[];
  /** The same for the dip that the sheet asked for, without the hand that timed it. */
  readonly askedOff: readonly number[];
}

interface Options {
  readonly loads: number;
  /** Figures by which the workshop plans; those of the batch file where absent. */
  readonly planned?: Figures;
  /** The bath after so many loads that are not planned so. */
  readonly before?: number;
  /** Added to the colour of what is made of a lot, from its load on. */
  readonly lots?: readonly { readonly from: number; readonly name: string; readonly shift: Lab }[];
  /** The bath keeps its temperature. */
  readonly steady?: boolean;
  /** Nobody writes down how much water is added. */
  readonly withoutWater?: boolean;
  /** Nobody reads a colour. */
  readonly blind?: boolean;
}

/** Works loads by plan in a workshop whose truth is another, and writes them down. */
export function work(batch: Batch, truth: Truth, random: () => number, options: Options): Work {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const bath = batch.baths[0]!;
  const known = realBathOf(batch, bath, shared);
  const fitted = shared.dyes.fit(bath.dye, batch.handling);
  if (!known.ok || !fitted.ok || !hasCurve(fitted.value.model)) throw new Error("no curve");
  const { chosen } = fitted.value.model;
  const assumed = known.value.real;
  const planned: RealBath = options.planned ? realWithFigures(assumed, options.planned) : assumed;
  const real = realWithFigures(assumed, truth);
  const shades = batch.shades.filter(({ dye }) => dye === bath.dye);
  const part = batch.parts.find(({ name }) => name === "clip")!;
  const white = batch.bases.find(({ name }) => name === "white")!;
  const [there, foreseen] = [real, assumed].map((one) => realMakeUp(one, {}, batch.room.celsius));
  // The plan follows the log with what it knows; the first loads are planned as assumed.
  const follower = realMakeUp(planned, {}, batch.room.celsius);
  const rows: LogRow[] = [];
  const misses: number[] = [];
  const timesOff: number[] = [];
  const askedOff: number[] = [];
  let seconds = 0;
  let row = 1;
  const time = () => {
    const day = Math.floor(seconds / 28_800);
    const at = 28_800 + Math.round(seconds % 28_800);
    return localTime(
      2026,
      1 + Math.floor(day / 28),
      1 + (day % 28),
      Math.floor(at / 3600),
      Math.floor(at / 60) % 60,
      at % 60,
    )!;
  };
  const common = () => ({ row: ++row, time: time(), bath: bath.tank.name });
  rows.push({ ...common(), event: "made-up", dye: bath.dye.name });
  for (let load = 0; load < options.loads; load++) {
    const shade = shades[load % shades.length]!;
    const aim = aimOf(fitted.value, shade, white);
    if (!aim.ok) throw new Error("no aim");
    const { freshSeconds } = aim.value;
    const learned = options.before === undefined || load >= options.before;
    const [plan, state] = learned ? ([planned, follower] as const) : ([assumed, foreseen!] as const);
    const drift = 1.5 * normal();
    const celsius = bath.dye.celsius - 0.5 + (options.steady === true ? 0 : drift);
    const parts = 45 + Math.floor(10 * random());
    const sheet = { ...state };
    replayLoad(plan, sheet, { part, parts, celsius, dipped: { freshSeconds } });
    const asked = Math.max(5, Math.round(sheet.dipSeconds));
    const dippedSeconds = Math.max(3, asked + normal());
    const asAsked = replayLoad(real, { ...there! }, { part, parts, celsius, dipped: { seconds: asked } });
    const dip = replayLoad(real, there!, { part, parts, celsius, dipped: { seconds: dippedSeconds } });
    for (const [one, bathOf] of [
      [assumed, foreseen!],
      [planned, follower],
    ] as const)
      replayLoad(one, bathOf, { part, parts, celsius, dipped: { seconds: asked } });
    const lot = options.lots?.findLast(({ from }) => load >= from);
    const shift = lot?.shift ?? [0, 0, 0];
    const trueLab = labAfter(chosen.curve, dip.freshSeconds).map(
      (value, i) => value + shift[i]!,
    ) as unknown as Lab;
    askedOff.push(Math.log(asAsked.freshSeconds / freshSeconds));
    timesOff.push(Math.log(dip.freshSeconds / freshSeconds));
    misses.push(ciede2000(trueLab, aim.value.lab!));
    seconds += rackSeconds(real.setting, parts) + dippedSeconds + openSeconds(real.setting, parts);
    const loaded: LoadRow = {
      ...common(),
      event: "load",
      part: part.name,
      shade: shade.name,
      base: white.name,
      parts,
      seconds: asked,
      celsius: Math.round(10 * (celsius + 0.3 * normal())) / 10,
      ...(options.blind === true
        ? {}
        : { lab: trueLab.map((value) => Math.round(10 * (value + 0.3 * normal())) / 10) as unknown as Lab }),
      ...(lot === undefined ? {} : { powderLot: lot.name }),
    };
    rows.push(loaded);
    if (load % 3 === 2) {
      // To the mark with water, with the dye that the plan says.
      const { fresh, coldPerHot } = real.setting;
      const dye = Math.round(10 * Math.max(0, fresh.dye - state.dye)) / 10;
      // Nobody hits the mark to the millimetre.
      const filledL = fresh.volumeL * (1 + 0.003 * normal());
      const coldMl = 1000 * Math.max(0, filledL - there!.volumeL) * coldPerHot;
      const waterMl = Math.round(Math.max(0, coldMl - dye));
      realTopUp(real, there!, { dye, volumeL: filledL });
      realTopUp(assumed, foreseen!, { dye });
      realTopUp(planned, follower, { dye });
      rows.push({
        ...common(),
        event: "top-up",
        concentrateMl: dye,
        ...(options.withoutWater === true ? {} : { waterMl }),
      });
    }
    // A day has eight hours; what is left of it is too short for a load.
    const left = 28_800 - (seconds % 28_800);
    const overNight = left < 900;
    const wait = overNight ? left : 120 * random();
    seconds += wait;
    for (const [one, bathOf] of [
      [real, there!],
      [assumed, foreseen!],
      [planned, follower],
    ] as const)
      passTime(one, bathOf, overNight ? wait + 57_600 : wait, overNight);
  }
  return { rows, misses, timesOff, askedOff };
}
