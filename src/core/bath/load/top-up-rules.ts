import type { TopUpRule } from "../../model/batch.js";
import type { BathState } from "./bath-state.js";

/** What a rule of topping up asks for after a load. All that is poured in fills the bath up to its mark. */
export interface TopUpRecord {
  /** Topped up where the bath has fallen below its mark. */
  readonly keepsLevel: boolean;
  /** Topped up where the bath has become weaker than it was made up. */
  readonly keepsStrength: boolean;
  /** Dye to add [mL or g], where the bath is to be filled up by so many litres to what it was when fresh. */
  readonly dye: (bath: BathState, fresh: BathState, byL: number) => number;
  /** In the batch file's description, behind the name; empty where the name says it. */
  readonly described: string;
}

/** The rules of topping up, in the order in which they are compared. */
export const topUpRecords: Readonly<Record<TopUpRule, TopUpRecord>> = {
  none: {
    keepsLevel: false,
    keepsStrength: false,
    dye: () => 0,
    described: "",
  },
  level: {
    keepsLevel: true,
    keepsStrength: false,
    dye: (_bath, fresh, byL) => (byL / fresh.volumeL) * fresh.dye,
    described: "liquor at the make-up ratio back to the mark",
  },
  strength: {
    keepsLevel: true,
    keepsStrength: true,
    dye: (bath, fresh) => Math.max(0, fresh.dye - bath.dye),
    described: "also back to full strength",
  },
};

export const topUpRules = Object.keys(topUpRecords) as readonly TopUpRule[];

const written = (asked: "keepsLevel" | "keepsStrength"): string =>
  topUpRules
    .filter((rule) => topUpRecords[rule][asked])
    .map((rule) => `topUp: ${rule}`)
    .join(" or ");

/** What to write for a bath that is to stay full: "topUp: level or topUp: strength". */
export const toKeepLevel = written("keepsLevel");

/** What to write for one that is to stay strong. */
export const toKeepStrength = written("keepsStrength");
