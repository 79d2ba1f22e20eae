import type { Fault } from "../../fault.js";
import type { SurfaceSums } from "../sums.js";
import type { TriangleSource } from "../triangles.js";
import { nearPairs, overlapBounds, type Pair, relation } from "./overlap.js";
import { shellSums, shellTriangles } from "./shell-table.js";
import type { Topology } from "./topology.js";

/** What the shells of a closed surface are to each other; lengths in the unit of the file. */
export interface ShellFindings {
  /** Pairs that share space: what they share is counted twice. */
  readonly overlapping: readonly Pair[];
  /** Shells that face inwards without standing in a solid. */
  readonly inverted: readonly number[];
  /** Hollows closed all round: no liquor reaches them. */
  readonly cavities: readonly SurfaceSums[];
  /** Whether some boxes overlap that were too many or too large to compare. */
  readonly undecided: boolean;
}

const none: ShellFindings = { overlapping: [], inverted: [], cavities: [], undecided: false };

/** Compares the shells of a closed surface whose boxes overlap. `outwards` is 1, or -1 if the whole surface is inverted. */
export function shellFindings(
  source: TriangleSource,
  topology: Topology,
  outwards: 1 | -1,
): ShellFindings | Fault {
  if (topology.shells < 2) return none;
  const shells = shellSums(source, topology);
  if (!Array.isArray(shells)) return shells;
  const faces = shells.map((shell) => Math.sign(shell.volume) * outwards);
  const inwards = faces.flatMap((face, n) => (face < 0 ? [n] : []));
  const pairs = nearPairs(shells);
  const work = pairs?.reduce((sum, [a, b]) => sum + shells[a]!.triangles + shells[b]!.triangles, 0);
  if (pairs === undefined || work === undefined || work > overlapBounds.triangles)
    return { ...none, undecided: true };
  const triangles = shellTriangles(source, topology, shells, new Set(pairs.flat()));
  if (!Array.isArray(triangles)) return triangles;

  // How many solids, less hollows, each shell stands in.
  const depth = shells.map(() => 0);
  const holders = shells.map((): number[] => []);
  const overlapping: Pair[] = [];
  let undecided = false;
  for (const pair of pairs) {
    const [a, b] = pair;
    const most = overlapBounds.comparisons / pairs.length;
    const found = relation(triangles[a]!, triangles[b]!, shells[a]!, shells[b]!, most);
    const [inner, outer] = found === "a-in-b" ? [a, b] : [b, a];
    if (found === "undecided") undecided = true;
    else if (found === "crossing") overlapping.push(pair);
    else if (found !== "apart") {
      depth[inner]! += faces[outer]!;
      if (faces[outer]! > 0) holders[inner]!.push(outer);
    }
  }
  faces.forEach((face, n) => {
    if (face > 0 && depth[n]! > 0) for (const outer of holders[n]!) overlapping.push([outer, n]);
  });
  const cavities = inwards.filter((n) => depth[n]! > 0);
  const inverted = undecided ? [] : inwards.filter((n) => depth[n]! <= 0);
  return { overlapping, inverted, cavities: cavities.map((n) => shells[n]!), undecided };
}
