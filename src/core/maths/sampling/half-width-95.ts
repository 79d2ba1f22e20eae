import { normalQuantile } from "./normal-quantile.js";

/** Half the width of the 95 % interval of a normal distribution, in standard deviations: 1.96. */
export const halfWidth95 = normalQuantile(0.975);
