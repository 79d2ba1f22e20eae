import { type Fault, warning } from "../../fault.js";
import type { Lab, Reading } from "../../model/colour.js";
import { carryOver } from "../spectrum/convert-reading.js";
import { inGamut, labToSrgb, srgbReading, srgbToHex } from "./srgb.js";

/** A colour as a screen shows it; `inGamut` false says that the hex was clipped. */
export interface ScreenColour {
  readonly hex: string;
  readonly inGamut: boolean;
  readonly faults: readonly Fault[];
}

/**
 * The screen colour of a CIELAB colour. One read under anything but D65 and the 2° observer is carried over
 * through its smoothest reflectance; where that fails its values are shown unchanged, with a warning.
 * @example screenColour([53.2408, 80.0925, 67.2032], { illuminant: "D65", observer: 2 }).hex // => "#ff0000"
 * @example screenColour([50, 100, -100], { illuminant: "D65", observer: 2 }).inGamut // => false
 */
export function screenColour(lab: Lab, reading: Reading): ScreenColour {
  const carried = carryOver(lab, reading, srgbReading);
  const srgb = labToSrgb(carried.ok ? carried.value : lab);
  const faults = carried.ok
    ? carried.faults
    : carried.faults.map((fault) =>
        warning(fault.code, fault.path, `${fault.message}; its screen colour is only a likeness`, fault.help),
      );
  return { hex: srgbToHex(srgb), inGamut: carried.ok && inGamut(srgb), faults };
}
