import type * as model from "../../core/model/batch.js";
import type { Amount } from "../schema/quantities.js";

/** How sure an amount from evidence is; undefined for an amount from none. */
export const found = ({ assumedShare, interval95 }: Amount): model.Found | undefined =>
  assumedShare === undefined || interval95 === undefined ? undefined : { assumedShare, interval95 };
