import type { Xyz } from "../../model/colour.js";
import { curveGrid } from "./grid.js";
import { solveTridiagonal } from "./tridiagonal.js";
import type { Weights } from "./weights.js";

const n = curveGrid.count;
/** The largest change of z in one step; further steps leave the range where the curvature says anything. */
const longestStep = 2;
const tolerance = 1e-12;

/** A point of the search: z with R = (tanh z + 1)/2, and the three multipliers. */
export interface SmoothState {
  readonly z: Float64Array;
  readonly multipliers: Float64Array;
}

/** R = (tanh z + 1)/2 and its derivative (1 - tanh² z)/2, both exact to the last digits far from z = 0. */
function reflect(z: Float64Array, reflectance: Float64Array, slope: Float64Array): void {
  for (let i = 0; i < n; i++) {
    const u = Math.exp(-2 * Math.abs(z[i]!));
    const low = u / (1 + u);
    reflectance[i] = z[i]! > 0 ? 1 / (1 + u) : low;
    slope[i] = (2 * low) / (1 + u);
  }
}

/** Solves the 4 by 4 system that is left when all but z₀ and the multipliers are eliminated. */
function solveSmall(m: Float64Array, v: Float64Array): void {
  for (let i = 0; i < 4; i++) {
    let best = i;
    for (let r = i + 1; r < 4; r++) if (Math.abs(m[r * 4 + i]!) > Math.abs(m[best * 4 + i]!)) best = r;
    if (best !== i) {
      for (let k = 0; k < 4; k++) {
        const kept = m[i * 4 + k]!;
        m[i * 4 + k] = m[best * 4 + k]!;
        m[best * 4 + k] = kept;
      }
      const kept = v[i]!;
      v[i] = v[best]!;
      v[best] = kept;
    }
    for (let r = i + 1; r < 4; r++) {
      const f = m[r * 4 + i]! / m[i * 4 + i]!;
      for (let k = i; k < 4; k++) m[r * 4 + k] = m[r * 4 + k]! - f * m[i * 4 + k]!;
      v[r] = v[r]! - f * v[i]!;
    }
  }
  for (let i = 3; i >= 0; i--) {
    let value = v[i]!;
    for (let k = i + 1; k < 4; k++) value -= m[i * 4 + k]! * v[k]!;
    v[i] = value / m[i * 4 + i]!;
  }
}

/**
 * Newton's method for the least Σ (z_{i+1} - z_i)² whose curve R = (tanh z + 1)/2 has the tristimulus values
 * `target`, from `state`, which it moves. True where it converged; the curve is then in `reflectance`.
 *
 * target with Y = 100 for white; at most `steps` steps.
 * @source burns2020 the method named after the least slope squared of the hyperbolic tangent
 */
export function smoothNewton(
  state: SmoothState,
  target: Xyz,
  { x, y, z: zBar }: Weights,
  reflectance: Float64Array,
  steps: number,
): boolean {
  const { z, multipliers } = state;
  const w = [x, y, zBar] as const;
  const slope = new Float64Array(n);
  const diagonal = new Float64Array(n - 1);
  const right = new Float64Array(5 * (n - 1));
  const small = new Float64Array(16);
  const v = new Float64Array(4);
  for (let step = 0; step <= steps; step++) {
    reflect(z, reflectance, slope);
    small.fill(0);
    const missing = [target[0], target[1], target[2]];
    let worst = 0;
    let head = 0;
    for (let i = 0; i < n; i++) {
      const r = reflectance[i]!;
      const d = slope[i]!;
      missing[0]! -= x[i]! * r;
      missing[1]! -= y[i]! * r;
      missing[2]! -= zBar[i]! * r;
      const pull = multipliers[0]! * x[i]! + multipliers[1]! * y[i]! + multipliers[2]! * zBar[i]!;
      const before = i > 0 ? z[i]! - z[i - 1]! : 0;
      const after = i < n - 1 ? z[i]! - z[i + 1]! : 0;
      const residual = before + after + d * pull;
      worst = Math.max(worst, Math.abs(residual));
      const curvature = (i === 0 || i === n - 1 ? 1 : 2) + 2 * d * (1 - 2 * r) * pull;
      if (i === 0) {
        head = curvature;
        v[0] = -residual;
      } else {
        const row = (i - 1) * 5;
        diagonal[i - 1] = curvature;
        right[row] = -residual;
        right[row + 1] = i === 1 ? 1 : 0;
        right[row + 2] = -d * x[i]!;
        right[row + 3] = -d * y[i]!;
        right[row + 4] = -d * zBar[i]!;
      }
    }
    const off = Math.max(Math.abs(missing[0]!), Math.abs(missing[1]!), Math.abs(missing[2]!));
    if (off < 100 * tolerance && worst < 1e-6) return true;
    if (step === steps || !Number.isFinite(off + worst)) return false;

    // z_i = right[0] + right[1] z₀ + right[2..4] · multipliers, each as a change.
    solveTridiagonal(diagonal, right, 5);
    small[0] = head - right[1]!;
    v[0] = v[0]! + right[0]!;
    for (let k = 0; k < 3; k++) {
      const d0 = slope[0]! * w[k]![0]!;
      small[1 + k] = d0 - right[2 + k]!;
      const row = 4 * (k + 1);
      small[row] = d0;
      v[k + 1] = missing[k]!;
      for (let i = 1; i < n; i++) {
        const at = (i - 1) * 5;
        const b = slope[i]! * w[k]![i]!;
        v[k + 1] = v[k + 1]! - b * right[at]!;
        for (let c = 0; c < 4; c++) small[row + c] = small[row + c]! + b * right[at + 1 + c]!;
      }
    }
    solveSmall(small, v);
    let longest = Math.abs(v[0]!);
    for (let i = 1; i < n; i++) {
      const at = (i - 1) * 5;
      const change =
        right[at]! +
        right[at + 1]! * v[0]! +
        right[at + 2]! * v[1]! +
        right[at + 3]! * v[2]! +
        right[at + 4]! * v[3]!;
      right[at] = change;
      longest = Math.max(longest, Math.abs(change));
    }
    const share = longest > longestStep ? longestStep / longest : 1;
    z[0] = z[0]! + share * v[0]!;
    for (let i = 1; i < n; i++) z[i] = z[i]! + share * right[(i - 1) * 5]!;
    for (let k = 0; k < 3; k++) multipliers[k] = multipliers[k]! + share * v[k + 1]!;
  }
  return false;
}
