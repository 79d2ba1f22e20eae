import { tintLimits } from "../../core/colour/whiteness.js";

/** Within what CIE whiteness and tint mean anything, in a sentence. */
export const whitenessLimits = `CIE whiteness W and tint T hold for 40 < W < 5 Y - 280 and ${tintLimits.from} ≤ T ≤ ${tintLimits.to} (limits of CIE 15:2004).`;
