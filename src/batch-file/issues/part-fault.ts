import type { Fault } from "../../core/fault.js";
import type { Part } from "../source/source.js";

/** A fault, and whether it lies with the key or with the value. */
export interface PartFault {
  readonly fault: Fault;
  readonly part: Part;
  /** The known key that the user probably meant. */
  readonly meant?: string;
}
