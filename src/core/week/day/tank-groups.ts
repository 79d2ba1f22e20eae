import type { Batch } from "../../model/batch.js";
import type { Piece } from "../week-model.js";

/** Pieces by tanks that one person must have: those that share a tank or a dye, directly or through others. */
export function tankGroups({ baths }: Pick<Batch, "baths">, pieces: readonly Piece[]): Piece[][] {
  const groups: { tanks: Set<string>; pieces: Piece[] }[] = [];
  for (const piece of pieces) {
    const dye = piece.order.order.shade.dye;
    const tanks = baths.filter((bath) => bath.dye === dye).map(({ tank }) => tank.name);
    const joined = groups.filter((group) => tanks.some((tank) => group.tanks.has(tank)));
    const whole = {
      tanks: new Set([...tanks, ...joined.flatMap((group) => [...group.tanks])]),
      pieces: [...joined.flatMap((group) => group.pieces), piece],
    };
    for (const group of joined) groups.splice(groups.indexOf(group), 1);
    groups.push(whole);
  }
  return groups.map((group) => group.pieces);
}
