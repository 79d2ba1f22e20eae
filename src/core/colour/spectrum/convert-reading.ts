import { done, type Outcome } from "../../fault.js";
import { type Lab, type Reading, sameReading } from "../../model/colour.js";
import { smoothReflectance } from "./smooth-reflectance.js";
import { curveLab } from "./spectrum.js";

/**
 * A colour read under one illuminant and observer as it would read under another: the colour there of its
 * smoothest reflectance curve. An estimate, as many curves have the same colour; exact for a flat grey.
 *
 * lab [CIELAB units]; a fault where the colour lies outside the optimal-colour limits.
 * @source burns2020 one use of the smoothest curve
 */
export function carryOver(lab: Lab, from: Reading, to: Reading): Outcome<Lab> {
  if (sameReading(from, to)) return done(lab);
  const curve = smoothReflectance(lab, from);
  return curve.ok ? done(curveLab(curve.value, to), curve.faults) : curve;
}
