import type { LifeEnd } from "../../core/bath/life/bath-life.js";

/** What ends the life of a bath: in a cell of a table, and behind "then". */
export const lifeEnds: Readonly<Record<LifeEnd, { readonly short: string; readonly sentence: string }>> = {
  "longest-dip": {
    short: "longest dip",
    sentence: "a dip takes longer than the longest (handling.longest)",
  },
  "too-little-dye": { short: "too little dye", sentence: "it holds less dye than a load takes up" },
  "shelf-life": { short: "shelf life", sentence: "its shelf life is over" },
  "too-little-liquor": {
    short: "too little liquor",
    sentence: "too little liquor is left for the heater or for one part",
  },
  "heater-too-weak": {
    short: "weak heater",
    sentence: "the heater does not bring it back to its temperature",
  },
  "off-shade": { short: "off shade", sentence: "its dyes have worn too unequally to give the shade" },
  "load-limit": { short: "not by dye alone", sentence: "dirt, hardness and breakdown end it, not dye alone" },
};
