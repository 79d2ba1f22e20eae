import type { Dye, Handling, Room, Tank, TopUpRule } from "../../model/batch.js";
import type { DipTimer } from "../../uptake/law/dip-time.js";
import type { BathHeat } from "../heat/working/bath-heat.js";
import type { CelsiusTable } from "../heat/working/celsius-table.js";
import type { Pace } from "../heat/working/flow.js";
import type { BathState } from "./bath-state.js";
import type { SizingTank } from "./load-size.js";

/** What stays the same while a bath works. Dye is mL of concentrate or g of powder throughout. */
export interface BathSetting {
  readonly dye: Pick<Dye, "uptakePerDm2" | "dilution">;
  /** Of a mix, what each dye has taken up per area at its depth 1. */
  readonly uptakeEachPerDm2?: readonly number[];
  readonly handling: Handling;
  readonly tank: SizingTank;
  readonly rule: TopUpRule;
  /** Of the dye, at the bath's own temperature. */
  readonly timer: DipTimer;
  /** How the dye's speed answers to the bath's temperature. */
  readonly pace: Pace;
  readonly heat: BathHeat;
  /** Share of its volume that the bath keeps when it cools for emptying; undefined where the room is too warm for it. */
  readonly cooled: CelsiusTable | undefined;
  /** The bath as made up: working volume and its dye. */
  readonly fresh: BathState;
  /** Cold volume of a hot one: density of water at the bath's temperature over that at the room's. */
  readonly coldPerHot: number;
  /** What goes into the bath: parts, and what is topped up. */
  readonly partsCelsius: number;
  readonly topUpCelsius: number;
}

/** What is topped up is as warm as the handling says, or as the room. */
export const topUpCelsiusOf = (handling: Pick<Handling, "topUpCelsius">, room: Room): number =>
  handling.topUpCelsius ?? room.celsius;

/** Dye content per volume relative to the bath as made up. */
export const strengthOf = (state: BathState, fresh: BathState): number =>
  state.volumeL > 0 ? state.dye / state.volumeL / (fresh.dye / fresh.volumeL) : 0;

/** What a tank must be for its loads to be sized. */
export const sizingTank = ({ volumeL, capacityL, leastL }: Tank): SizingTank =>
  leastL === undefined ? { volumeL, capacityL } : { volumeL, capacityL, leastL };
