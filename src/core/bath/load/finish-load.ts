import { liftParts } from "../heat/working/heat-state.js";
import { hold } from "../heat/working/hold.js";
import type { BathSetting } from "./bath-setting.js";
import { cycleSeconds, openSeconds } from "./handling-seconds.js";
import type { LoadWork } from "./load-work.js";
import { carryOutEach, isMixed } from "./mixed-load.js";
import type { WorkedBath } from "./worked-bath.js";

/** A dip whose parts are still in the bath. */
export type Dipped = Pick<
  WorkedBath,
  | "takenUp"
  | "dipSeconds"
  | "setSeconds"
  | "waitSeconds"
  | "celsiusBefore"
  | "strengthBefore"
  | "strengthDuring"
  | "volumeBeforeL"
>;

/** The parts come out, carry out liquor, are drained, rinsed and unloaded, lid off; dye and volume are what is left. */
export function finishLoad(
  bath: WorkedBath,
  setting: BathSetting,
  { part, parts }: Pick<LoadWork, "part" | "parts">,
  dipped: Dipped,
): void {
  const { handling, heat } = setting;
  const celsiusAfter = bath.celsius;
  liftParts(bath);
  const dippedDye = bath.dye - dipped.takenUp;
  const areaDm2 = parts * part.areaDm2;
  const carriedL = ((part.dragOutMlPerDm2 ?? handling.dragOutMlPerDm2) * areaDm2) / 1000;
  const draggedOutL = Math.min(bath.volumeL, carriedL);
  const draggedOut = dippedDye * (draggedOutL / dipped.volumeBeforeL);
  bath.volumeL -= draggedOutL;
  hold(heat, heat.open, bath, openSeconds(setting, parts));
  if (isMixed(bath)) carryOutEach(bath, draggedOutL / dipped.volumeBeforeL);
  else bath.dye = dippedDye - draggedOut;
  bath.dipSeconds = dipped.dipSeconds;
  bath.setSeconds = dipped.setSeconds;
  bath.waitSeconds = dipped.waitSeconds;
  bath.cycleSeconds = cycleSeconds(setting, parts, dipped.dipSeconds);
  bath.celsiusBefore = dipped.celsiusBefore;
  bath.celsiusAfter = celsiusAfter;
  bath.takenUp = dipped.takenUp;
  bath.draggedOut = draggedOut;
  bath.draggedOutL = draggedOutL;
  bath.strengthBefore = dipped.strengthBefore;
  bath.strengthDuring = dipped.strengthDuring;
  bath.volumeBeforeL = dipped.volumeBeforeL;
}
