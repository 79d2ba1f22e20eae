import type { Dye, Handling } from "./batch.js";

/** What a figure rests on that nobody gave or measured: the dye's uptake, the drag-out. */
export type RestsOn = readonly ("uptake" | "dragOut")[];

/** What every figure of a dye's bath that follows from its strength or volume rests on. */
export const bathRestsOn = (
  dye: Pick<Dye, "uptakeAssumed">,
  handling: Pick<Handling, "dragOutAssumed">,
): RestsOn => restsOnAny([dye], handling);

/** The same for figures that follow from several baths; empty without any bath. */
export const restsOnAny = (
  dyes: readonly Pick<Dye, "uptakeAssumed">[],
  { dragOutAssumed }: Pick<Handling, "dragOutAssumed">,
): RestsOn => [
  ...(dyes.some(({ uptakeAssumed }) => uptakeAssumed) ? (["uptake"] as const) : []),
  ...(dyes.length > 0 && dragOutAssumed ? (["dragOut"] as const) : []),
];
