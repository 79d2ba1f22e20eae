import { done, error, failed, type Outcome } from "../../fault.js";
import type { Lab, Reading, Xyz } from "../../model/colour.js";
import { labToXyz } from "../cielab.js";
import { curveGrid } from "./grid.js";
import { insideLimits } from "./optimal-limits.js";
import { type SmoothState, smoothNewton } from "./smooth-newton.js";
import { toTableGrid } from "./spline.js";
import { curveWeights, type Weights } from "./weights.js";

const fewestParts = 1 / 4096;
const mostSteps = 30;

const flat = (z: number): SmoothState => ({
  z: new Float64Array(curveGrid.count).fill(z),
  multipliers: new Float64Array(3),
});

/** The path from a grey of the same Y (at 0) to the target (at 1), as starting state and as goals on the way. */
function pathTo(
  target: Xyz,
  white: Xyz,
): { readonly start: SmoothState; readonly goal: (part: number) => Xyz } {
  const share = target[1] / white[1];
  return {
    start: flat(Math.atanh(2 * share - 1)),
    goal: (part) =>
      target.map((value, k) => {
        const grey = share * white[k]!;
        return grey + part * (value - grey);
      }) as unknown as Xyz,
  };
}

/** The whole way at once, which does for all but colours near the limits. */
function direct(target: Xyz, weights: Weights): Float64Array | undefined {
  const curve = new Float64Array(curveGrid.count);
  const { start } = pathTo(target, weights.white);
  return smoothNewton(start, target, weights, curve, mostSteps) ? curve : undefined;
}

/** The way in as many parts as it needs, halving a part that fails. */
function inParts(target: Xyz, weights: Weights): Float64Array | undefined {
  const curve = new Float64Array(curveGrid.count);
  const { start, goal } = pathTo(target, weights.white);
  let from = start;
  let reached = 0;
  let part = 0.5;
  while (part >= fewestParts) {
    const to = Math.min(1, reached + part);
    const trial = { z: Float64Array.from(from.z), multipliers: Float64Array.from(from.multipliers) };
    if (smoothNewton(trial, goal(to), weights, curve, mostSteps)) {
      if (to === 1) return curve;
      from = trial;
      reached = to;
      part *= 2;
    } else part /= 2;
  }
  return undefined;
}

const shown = (lab: Lab, { illuminant, observer }: Reading): string =>
  `L ${lab[0]}, a ${lab[1]}, b ${lab[2]} under ${illuminant}/${observer}`;

/** A curve that stays within 0..1 at 5 nm too proves that a surface can have its colour. */
const proves = (curve: Float64Array): boolean =>
  toTableGrid(curve, curveGrid.firstNm, curveGrid.stepNm).every((value) => value >= 0 && value <= 1);

/**
 * The smoothest reflectance that has a given colour: of all curves R = (tanh z + 1)/2 of 36 samples, 380 to 730 nm
 * by 10 nm, the one with the least Σ (z_{i+1} - z_i)². Its colour is the colour of its spline at 5 nm
 * (`curveWeights`), so it is reproduced by `curveLab` and by `spectrumLab` alike.
 *
 * lab [CIELAB units] read under `reading`; result [0..1]. A colour outside the optimal-colour limits, which no
 * surface can have, is a fault; so is one so near to them that no curve at 10 nm reaches it or the search does not
 * arrive (seen for 1 in 100 random colours under F11, 1 in 200 under the others, none of them
 * further than 0.35 in X, Y, Z from the limits).
 * @source burns2020 the method named after the least slope squared of the hyperbolic tangent
 */
export function smoothReflectance(lab: Lab, reading: Reading): Outcome<Float64Array> {
  const weights = curveWeights(reading);
  const target = labToXyz(lab, weights.white);
  const share = target[1] / weights.white[1];
  if (lab[1] === 0 && lab[2] === 0 && share >= 0 && share <= 1)
    return done(new Float64Array(curveGrid.count).fill(share));
  const found = share > 0 && share < 1 ? direct(target, weights) : undefined;
  if (found !== undefined && proves(found)) return done(found);
  if (!(insideLimits(target, reading) > 0))
    return failed(
      error(
        "colour-outside-limits",
        [],
        `${shown(lab, reading)} lies outside the optimal-colour limits: no surface can have this colour`,
        "Check the three values and what they were read under.",
      ),
    );
  const curve = found ?? inParts(target, weights);
  return curve !== undefined
    ? done(curve)
    : failed(
        error(
          "colour-no-curve",
          [],
          `no smooth reflectance curve was found for ${shown(lab, reading)}: the colour lies too near to the optimal-colour limits`,
          "Give the measured reflectance instead.",
        ),
      );
}
