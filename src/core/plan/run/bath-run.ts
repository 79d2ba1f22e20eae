import type { BathSetting } from "../../bath/load/bath-setting.js";
import type { BathState } from "../../bath/load/bath-state.js";
import type { LoadLimit } from "../../bath/load/load-size.js";
import type { TopUp, WorkedBath } from "../../bath/load/worked-bath.js";
import type { MakeUp } from "../../bath/make-up/make-up.js";
import type { Fault } from "../../fault.js";
import type { Bath } from "../../model/batch.js";
import type { UptakeModel } from "../../uptake/law/uptake-model.js";
import type { Portion } from "../assign/assign.js";
import type { PlanHeating } from "../plan-model.js";

/** Parts of one order that go into one bath together. */
export interface LoadPlan extends Portion {
  readonly areaDm2: number;
  readonly boundBy: LoadLimit;
}

/** What one load was; dye is mL of concentrate or g of powder. */
export interface LoadResult
  extends Pick<
    WorkedBath,
    | "dipSeconds"
    | "setSeconds"
    | "waitSeconds"
    | "cycleSeconds"
    | "celsiusBefore"
    | "celsiusAfter"
    | "takenUp"
    | "draggedOut"
    | "draggedOutL"
    | "strengthBefore"
    | "strengthDuring"
    | "volumeBeforeL"
    | "topUpShort"
    | "takenUpEach"
    | "draggedOutEach"
    | "mixedDip"
  > {
  readonly evaporatedL: number;
  /** Of each dye of a mix. */
  readonly strengthBeforeEach: readonly number[];
  readonly strengthAfterEach: readonly number[];
  /** After the top-up, as `volumeAfterL`. */
  readonly strengthAfter: number;
  readonly volumeAfterL: number;
  readonly topUp: TopUp | null;
  /** Dye in a litre of what is on the parts as they come out. */
  readonly dyePerLOut: number;
  /** What the clock shows when the dip has done what so many seconds do at the bath's own temperature. */
  readonly clock: (setSeconds: number) => number;
}

export interface WorkedLoad {
  readonly plan: LoadPlan;
  readonly result: LoadResult;
}

/** Heat of a bath from the room's temperature to its last cycle [kWh]; heaterKwh is from the mains. */
export type BathEnergy = Pick<
  WorkedBath,
  "heaterKwh" | "agitationKwh" | "lostKwh" | "bathKwh" | "partsKwh" | "topUpKwh"
>;

/** One bath worked through its loads. */
export interface BathRun {
  readonly bath: Bath;
  readonly setting: BathSetting;
  /** The dye's uptake without what a trial dip in this bath corrects. */
  readonly untried: UptakeModel;
  readonly makeUp: MakeUp;
  /** Of a fresh bath of the working volume, whatever this one starts as. */
  readonly freshWaterMl: number;
  readonly heating: PlanHeating;
  readonly portions: readonly Portion[];
  readonly loads: readonly WorkedLoad[];
  /** Before anything is added. */
  readonly start: BathState;
  /** What a kept bath gets before it is heated; measured cold. */
  readonly startTopUp: TopUp | null;
  /** After the last load and its top-up, hot. */
  readonly end: BathState;
  /** When it has cooled enough to be emptied. */
  readonly cooled: BathState;
  /** Null where the room is too warm for it. */
  readonly coolMinutes: number | null;
  readonly energy: BathEnergy;
  readonly faults: readonly Fault[];
}
