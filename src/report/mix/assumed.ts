import type { Block } from "../report.js";
import { degrees } from "../words/amounts.js";

/** What is taken for granted where the bath's temperature is not given; empty where it is. */
export const assumedWarmth = (assumed: boolean, roomCelsius: number): string[] =>
  assumed
    ? [
        `volumes are measured at the room's ${degrees(roomCelsius)}, as no --temperature is given; a bath measured hot takes less.`,
      ]
    : [];

/** The same as a line of the sheet. */
export const assumedBlocks = (assumptions: readonly string[]): Block[] =>
  assumptions.map((text) => ({ kind: "paragraph", text: `Assumed: ${text}` }));
