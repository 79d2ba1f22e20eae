import type { Solid, Vector } from "./solids.js";

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Cuts a convex solid by the plane normal . p = offset; both halves are capped. No corner may lie in the plane. */
export function cutConvex(
  solid: Solid,
  normal: Vector,
  offset: number,
): { above: Solid; below: Solid; areaMm2: number } {
  const points = solid.points.map((p): Vector => [...p]);
  const height = points.map((p) => dot(p, normal) - offset);
  const cuts = new Map<string, number>();
  const cutEdge = (a: number, b: number): number => {
    const [i, j] = a < b ? [a, b] : [b, a];
    const known = cuts.get(`${i}-${j}`);
    if (known !== undefined) return known;
    const t = height[i]! / (height[i]! - height[j]!);
    const [p, q] = [points[i]!, points[j]!];
    points.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
    cuts.set(`${i}-${j}`, points.length - 1);
    return points.length - 1;
  };
  const halves: [Vector[], Vector[]] = [[], []];
  for (const face of solid.faces) {
    for (const [half, sign] of [
      [halves[0], 1],
      [halves[1], -1],
    ] as const) {
      const polygon: number[] = [];
      face.forEach((a, n) => {
        const b = face[(n + 1) % 3]!;
        const [up, next] = [height[a]! * sign > 0, height[b]! * sign > 0];
        if (up) polygon.push(a);
        if (up !== next) polygon.push(cutEdge(a, b));
      });
      for (let n = 2; n < polygon.length; n++) half.push([polygon[0]!, polygon[n - 1]!, polygon[n]!]);
    }
  }
  const rim = [...cuts.values()];
  const middle = rim
    .reduce<Vector>((s, i) => [s[0] + points[i]![0], s[1] + points[i]![1], s[2] + points[i]![2]], [0, 0, 0])
    .map((x) => x / rim.length) as Vector;
  const right = minus(points[rim[0]!]!, middle);
  const ahead = cross(normal, right);
  const angle = (i: number): number =>
    Math.atan2(
      dot(minus(points[i]!, middle), ahead) / Math.hypot(...normal),
      dot(minus(points[i]!, middle), right),
    );
  rim.sort((a, b) => angle(a) - angle(b));
  let areaMm2 = 0;
  for (let n = 2; n < rim.length; n++) {
    const [a, b, c] = [rim[0]!, rim[n - 1]!, rim[n]!];
    halves[0].push([a, c, b]);
    halves[1].push([a, b, c]);
    areaMm2 += Math.hypot(...cross(minus(points[b]!, points[a]!), minus(points[c]!, points[a]!))) / 2;
  }
  return { above: { points, faces: halves[0] }, below: { points, faces: halves[1] }, areaMm2 };
}
