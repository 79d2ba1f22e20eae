import type { RealBath } from "../../core/bath/replay/real-bath.js";
import type { Bath } from "../../core/model/batch.js";
import type { Filling } from "../replay/filling.js";
import type { ReplayedFilling } from "../replay/replay-filling.js";

/** A filling as it was followed. */
export interface FollowedFilling extends ReplayedFilling {
  readonly of: Bath;
  readonly filling: Filling;
  /** With the figures that it was followed with. */
  readonly real: RealBath;
}
