import type { Bath } from "../../model/batch.js";

/** Whether two baths are one in a week: that of a dye in a tank, whichever file it is written in. */
export const isSameBath = (a: Pick<Bath, "tank" | "dye">, b: Pick<Bath, "tank" | "dye">): boolean =>
  a.tank.name === b.tank.name && a.dye.name === b.dye.name;
