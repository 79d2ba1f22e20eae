import type { UptakeModel } from "../../uptake/law/uptake-model.js";

/** Figures of a dye that its log may teach. */
export interface Figures {
  /** On all times, beside the one that the batch file has. */
  readonly timeFactor: number;
  readonly uptakePerDm2: number;
  readonly dragOutMlPerDm2: number;
  /** Absent: as the law has it. */
  readonly strengthExponent?: number;
  readonly activationEnergyJPerMol: number;
  /** On what evaporates. */
  readonly evaporation: number;
}

/** A figure before the log says anything. */
export interface Prior {
  readonly value: number;
  /** Of its logarithm, as stated. */
  readonly deviation: number;
  /** Of its logarithm, as the fit starts from; absent: the stated one. */
  readonly startDeviation?: number;
  /** What is used where the log cannot tell, if that is not the value. */
  readonly held?: number;
}

export type FigureName = keyof Required<Figures>;
export type Priors = Readonly<Record<FigureName, Prior>>;

/** Those that `review` reports, in its order. */
export const learnable = [
  "timeFactor",
  "uptakePerDm2",
  "dragOutMlPerDm2",
  "strengthExponent",
  "activationEnergyJPerMol",
] as const satisfies readonly FigureName[];
export type Learnable = (typeof learnable)[number];

export const figureNames: readonly FigureName[] = [...learnable, "evaporation"];

/** A dye's uptake with other figures. */
export const withFigures = (uptake: UptakeModel, figures: Figures): UptakeModel => ({
  ...uptake,
  timeFactor: (uptake.timeFactor ?? 1) * figures.timeFactor,
  activationEnergyJPerMol: figures.activationEnergyJPerMol,
  ...(figures.strengthExponent === undefined ? {} : { strengthExponent: figures.strengthExponent }),
});
