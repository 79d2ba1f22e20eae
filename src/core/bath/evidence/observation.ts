import { error, type Fault } from "../../fault.js";
import {
  type Evidence,
  type PurchaseEvidence,
  type SlowerEvidence,
  usualRelative,
  type YieldEvidence,
} from "./forms.js";
import { spentStrength } from "./spent-strength.js";

/** A piece of evidence as a number that κ and drag-out predict, with its standard deviation. */
export interface Observation {
  /** Of the list of evidence; null for an assumed figure. */
  readonly index: number | null;
  readonly kind: Evidence["kind"] | "assumed-uptake" | "assumed-drag-out";
  /** The name of an assumed figure in messages; evidence is named by its kind. */
  readonly said?: string;
  readonly observed: number;
  /** Of the logarithm or of the number itself, as `scale` says. */
  readonly deviation: number;
  readonly scale: "log" | "linear";
  /** κ in mL or g per dm², drag-out in mL per dm². */
  readonly expected: (uptakePerDm2: number, dragOutMlPerDm2: number) => number;
}

/**
 * Standard deviation of the logarithm of a quantity whose own is this share of it: sqrt(ln(1 + r²)).
 * @example
 * logDeviation(1) // => 0.8325546
 * logDeviation(0.01) // => 0.0099998
 */
export const logDeviation = (relative: number): number => Math.sqrt(Math.log1p(relative * relative));

/** Dye that left the bath to colour the area: not what was left over or thrown out. */
const dyeSpent = (one: YieldEvidence | PurchaseEvidence): number =>
  one.kind === "yield" ? one.dye * (one.usedShare ?? 1) : one.bought - one.left - one.dumped;

const drainedG = (one: { readonly wetG: number; readonly dryG: number }): number => one.wetG - one.dryG;

/** The first thing in a piece of evidence that makes it tell nothing. */
export function evidenceFault(one: Evidence, index: number): Fault | undefined {
  const fault = (key: string, message: string): Fault => error("evidence-impossible", [index, key], message);
  if (!(one.areaDm2 > 0)) return fault("area", "evidence needs an area above 0");
  if (one.relative !== undefined && !(one.relative > 0))
    return fault("relative", "the uncertainty of evidence must be above 0");
  switch (one.kind) {
    case "yield":
    case "purchases":
      if (dyeSpent(one) > 0) return undefined;
      return fault(
        one.kind === "yield" ? "dye" : "bought",
        "more dye is left or thrown out than was there: nothing was used",
      );
    case "weighing":
      return drainedG(one) > 0 ? undefined : fault("wet", "wet parts must weigh more than dry ones");
    case "slower":
      return one.strength > 0 && one.strengthError > 0
        ? undefined
        : fault("strength", "the bath's strength must be above 0 and have an uncertainty");
  }
}

/** What a checked piece of evidence says. */
export function observationOf(one: Evidence, index: number): Observation {
  const common = { index, kind: one.kind };
  switch (one.kind) {
    case "yield":
    case "purchases":
      return {
        ...common,
        observed: dyeSpent(one) / one.areaDm2,
        deviation: logDeviation(one.relative ?? usualRelative[one.kind]),
        scale: "log",
        expected: (uptake, dragOut) =>
          uptake * one.depth + (dragOut / 1000) * one.dyePerL * (one.strength ?? 1),
      };
    case "weighing":
      return {
        ...common,
        observed: drainedG(one) / (one.gPerMl ?? 1) / one.areaDm2,
        deviation: logDeviation(one.relative ?? usualRelative.weighing),
        scale: "log",
        expected: (_uptake, dragOut) => dragOut,
      };
    case "slower":
      return {
        ...common,
        observed: one.strength,
        deviation: one.strengthError,
        scale: "linear",
        expected: (uptake, dragOut) => strengthAfter(one, uptake, dragOut),
      };
  }
}

const strengthAfter = (one: SlowerEvidence, uptakePerDm2: number, dragOutMlPerDm2: number): number =>
  spentStrength({
    ...one,
    takenUpPerDm2: uptakePerDm2 * one.depth,
    dragOutLPerDm2: dragOutMlPerDm2 / 1000,
    evaporationLPerDm2: one.evaporatedL / one.areaDm2,
  });
