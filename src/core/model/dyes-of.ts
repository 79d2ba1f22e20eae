import type { Dye } from "./batch.js";

/** What is on the shelf for a bath: the dye, or the dyes of a mix. */
export const dyesOf = (dye: Dye): readonly Dye[] => dye.mix?.parts.map((part) => part.dye) ?? [dye];
