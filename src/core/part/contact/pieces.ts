import { enterCorners, join, newForest, numberTrees } from "../surface/forest.js";
import type { Groups } from "../surface/groups.js";

/** The places of every corner in a list of corners: for corner c, in `places` from starts[c] to starts[c + 1]. */
function placesOf(corners: Int32Array, cornerCount: number) {
  const starts = new Int32Array(cornerCount + 1);
  for (const corner of corners) starts[corner + 1]!++;
  for (let c = 0; c < cornerCount; c++) starts[c + 1]! += starts[c]!;
  const next = starts.slice();
  const places = new Int32Array(corners.length);
  corners.forEach((corner, place) => {
    places[next[corner]!++] = place;
  });
  return { starts, places };
}

/**
 * The pieces of a closed surface: triangles that hang together across edges with exactly two triangles. Bodies that
 * share corners or edges in a file are pieces of their own. Three corners a triangle, by number.
 */
export function piecesOf(corners: Int32Array, cornerCount: number): Groups {
  const { starts, places } = placesOf(corners, cornerCount);
  const forest = newForest(corners.length / 3);
  enterCorners(forest, corners.length / 3);
  // Of the corner in hand: who runs from it to another corner, if only one triangle does.
  const several = -1;
  const seenFrom = new Int32Array(cornerCount).fill(-1);
  const runner = new Int32Array(cornerCount);
  for (let corner = 0; corner < cornerCount; corner++) {
    const [from, to] = [starts[corner]!, starts[corner + 1]!];
    for (let n = from; n < to; n++) {
      const place = places[n]!;
      const other = corners[place % 3 === 2 ? place - 2 : place + 1]!;
      runner[other] = seenFrom[other] === corner ? several : Math.floor(place / 3);
      seenFrom[other] = corner;
    }
    for (let n = from; n < to; n++) {
      const place = places[n]!;
      const other = corners[place % 3 === 0 ? place + 2 : place - 1]!;
      if (seenFrom[other] === corner && runner[other] !== several)
        join(forest.parent, runner[other]!, Math.floor(place / 3));
    }
  }
  const { treeOf, trees } = numberTrees(forest);
  return { groupOf: treeOf, groups: trees };
}
