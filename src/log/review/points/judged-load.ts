import type { Lab } from "../../../core/model/colour.js";
import type { LoadRow } from "../../row/log-row.js";

/** A load of a bath whose colour was read, and what its shade should look like. */
export interface JudgedLoad {
  readonly row: LoadRow;
  readonly lab: Lab;
  readonly target: Lab;
  readonly strength: number;
  /** Of the dip, over the time that the learned figures ask for. */
  readonly timeRatio: number;
}
