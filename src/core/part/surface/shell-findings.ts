import type { Fault } from "../../fault.js";
import { contactOfGroups, noticedShare } from "../contact/contact.js";
import type { SurfaceSums } from "../sums.js";
import type { TriangleSource } from "../triangles.js";
import { sortedByGroup, sumsOfGroups } from "./groups.js";
import { nearPairs, overlapBounds, type Pair, relation } from "./overlap.js";
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

/**
 * Compares the shells of a closed surface whose boxes overlap. `outwards` is 1, or -1 if the whole surface is inverted.
 * Shells that lie exactly on each other, within a tolerance [unit of the file], do not count as overlapping.
 */
export function shellFindings(
  source: TriangleSource,
  topology: Topology,
  outwards: 1 | -1,
  tolerance: number,
): ShellFindings | Fault {
  if (topology.shells.groups < 2) return none;
  const shells = sumsOfGroups(source, topology.shells);
  if (!Array.isArray(shells)) return shells;
  const faces = shells.map((shell) => Math.sign(shell.volume) * outwards);
  const inwards = faces.flatMap((face, n) => (face < 0 ? [n] : []));
  const pairs = nearPairs(shells);
  const work = pairs?.reduce((sum, [a, b]) => sum + shells[a]!.triangles + shells[b]!.triangles, 0);
  if (pairs === undefined || work === undefined || work > overlapBounds.triangles)
    return { ...none, undecided: true };
  const near = new Set(pairs.flat());
  const sorted = sortedByGroup(source, topology.shells, (shell) => near.has(shell));
  if ("code" in sorted) return sorted;
  const { triangles, starts } = sorted;
  const trianglesOf = (shell: number): Float64Array =>
    triangles.subarray(9 * starts[shell]!, 9 * starts[shell + 1]!);

  // How many solids, less hollows, contain each shell.
  const depth = shells.map(() => 0);
  const holders = shells.map((): number[] => []);
  const overlapping: Pair[] = [];
  const filled = new Set<number>();
  let undecided = false;
  for (const pair of pairs) {
    const [a, b] = pair;
    if (coincide(shells[a]!, shells[b]!, trianglesOf, pair, tolerance)) {
      if (faces[a] !== faces[b]) {
        const [hollow, core] = faces[a]! < 0 ? [a, b] : [b, a];
        filled.add(hollow);
        depth[core]!--;
      }
      continue;
    }
    const most = overlapBounds.comparisons / pairs.length;
    const found = relation(trianglesOf(a), trianglesOf(b), shells[a]!, shells[b]!, most);
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
  const cavities = inwards.filter((n) => depth[n]! > 0 && !filled.has(n));
  const inverted = undecided ? [] : inwards.filter((n) => depth[n]! <= 0);
  return { overlapping, inverted, cavities: cavities.map((n) => shells[n]!), undecided };
}

/** Whether two shells lie exactly on each other, whatever the order of their triangles and whichever way they face. */
function coincide(
  a: SurfaceSums,
  b: SurfaceSums,
  trianglesOf: (shell: number) => Float64Array,
  pair: Pair,
  tolerance: number,
): boolean {
  const near = (x: number, y: number): boolean => Math.abs(x - y) <= tolerance;
  const sameBox = [0, 1, 2].every((k) => near(a.low[k]!, b.low[k]!) && near(a.high[k]!, b.high[k]!));
  if (!sameBox) return false;
  const [first, second] = [trianglesOf(pair[0]), trianglesOf(pair[1])];
  const triangles = new Float64Array(first.length + second.length);
  triangles.set(first);
  triangles.set(second, first.length);
  const starts = Int32Array.of(0, first.length / 9, triangles.length / 9);
  const { doubledArea, sharedArea } = contactOfGroups({ triangles, starts }, tolerance);
  return doubledArea + sharedArea > (1 - noticedShare) * (a.area + b.area);
}
