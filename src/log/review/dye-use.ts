import type { Handling } from "../../core/model/batch.js";
import type { ReviewDye, ReviewUse } from "../../core/quality/review/review-model.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import type { FollowedFilling } from "./followed-filling.js";

const per = (amount: number, count: number): number | null => (count > 0 ? amount / count : null);

/** What became of a dye: on parts of each kind by month, and of all that was poured. */
export function dyeUse(
  { name, dilution }: FollowedFilling["of"]["dye"],
  fillings: readonly FollowedFilling[],
  { rinses, rinseWaterL, rinseEvery }: Handling,
): { readonly dye: ReviewDye; readonly use: readonly ReviewUse[] } {
  const byPart = new Map<string, { -readonly [Key in keyof ReviewUse]: ReviewUse[Key] }>();
  let [added, takenUp, draggedOut, dumped, loads, parts, areaDm2] = [0, 0, 0, 0, 0, 0, 0];
  for (const { after, bath, filling, of, madeUpDye } of fillings) {
    added += madeUpDye;
    if (filling.dumped !== undefined) dumped += bath.dye;
    for (const { row, dip } of after) {
      if (row.event === "top-up") added += row.concentrateMl ?? row.concentrateG ?? 0;
      if (row.event !== "load" || dip === undefined) continue;
      loads += 1;
      parts += row.parts;
      takenUp += dip.takenUp;
      draggedOut += dip.draggedOut;
      areaDm2 += row.parts * dip.part.areaDm2;
      const month = row.time.text.slice(0, 7);
      const key = `${month} ${row.part}`;
      const one = byPart.get(key) ?? {
        dye: of.dye.name,
        month,
        part: row.part,
        parts: 0,
        areaDm2: 0,
        takenUp: 0,
        draggedOut: 0,
        perPart: 0,
        perDm2: 0,
      };
      one.parts += row.parts;
      one.areaDm2 += row.parts * dip.part.areaDm2;
      one.takenUp += dip.takenUp;
      one.draggedOut += dip.draggedOut;
      byPart.set(key, one);
    }
  }
  return {
    dye: {
      dye: name,
      unit: dyeKinds[dilution.kind].unit,
      added,
      takenUp,
      draggedOut,
      dumped,
      rinseL: Math.ceil(loads / rinseEvery) * rinses * rinseWaterL,
      addedPerPart: per(added, parts),
      addedPerDm2: per(added, areaDm2),
    },
    use: [...byPart.values()].map((one) => ({
      ...one,
      perPart: (one.takenUp + one.draggedOut) / one.parts,
      perDm2: (one.takenUp + one.draggedOut) / one.areaDm2,
    })),
  };
}
