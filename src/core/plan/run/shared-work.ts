import { TankHeats } from "../../bath/heat/tank-heats.js";
import { FittedMixes } from "../../recipe/mixed-bath/mixed-dye.js";
import { FittedDyes } from "../../uptake/shade/fitted-dyes.js";

/** What follows from dyes, shades and tanks alone: found once for all batches and draws that are worked with it. */
export class SharedWork {
  readonly dyes = new FittedDyes();
  readonly mixes = new FittedMixes();
  readonly heats = new TankHeats();
}
