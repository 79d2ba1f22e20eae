import type { Dye } from "../../model/batch.js";

/** Whether a dye's curve rests on measured reflectance alone, the bare part included. */
export const isMeasured = ({ swatches }: Pick<Dye, "swatches">): boolean =>
  swatches.some(({ seconds }) => seconds === 0) &&
  swatches.every(({ colour }) => colour.kind === "reflectance");
