import { TankHeats } from "../../bath/heat/tank-heats.js";
import { FittedDyes } from "../../uptake/shade/fitted-dyes.js";

/** What follows from dyes, shades and tanks alone: found once for all batches and draws that are worked with it. */
export class SharedWork {
  readonly dyes = new FittedDyes();
  readonly heats = new TankHeats();
}
