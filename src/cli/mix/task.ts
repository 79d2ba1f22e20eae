import type { Dilution } from "../../core/model/batch.js";

/** Temperatures that turn hot volumes into what is measured cold. */
export interface Warmth {
  readonly celsius: number;
  readonly roomCelsius: number;
  /** No temperature was given: the room's is taken. */
  readonly celsiusAssumed: boolean;
}

/** What `mix` was asked for, checked. Strengths and shares are fractions. */
export type MixTask =
  | ({ readonly kind: "make-up"; readonly volumeL: number; readonly dilution: Dilution } & Warmth)
  | ({
      readonly kind: "top-up";
      readonly fromVolumeL: number;
      readonly fromStrength: number;
      readonly volumeL: number;
      readonly strength: number;
      readonly dilution: Dilution;
    } & Warmth)
  | ({
      readonly kind: "thinning";
      readonly fromVolumeL: number;
      readonly fromStrength: number;
      readonly strength: number;
    } & Warmth)
  | {
      readonly kind: "on-weight";
      readonly goodsG: number;
      readonly depth: number;
      readonly dyeStrength: number;
      readonly stockGPerL?: number;
      readonly ratioLPerKg?: number;
    };

export type MixKind = MixTask["kind"];
export type TaskOf<K extends MixKind> = Extract<MixTask, { kind: K }>;
