import { type LogNormal, logNormalQuantile } from "../../maths/sampling/log-normal.js";
import { type TruncatedNormal, truncatedNormalQuantile } from "../../maths/sampling/truncated-normal.js";

/** How a figure may be off: normal as a ± says, or by a factor. */
type Distribution = TruncatedNormal | LogNormal;

/** A figure of the batch that is not exactly known. */
export type UncertainInput = Distribution & {
  /** Its path in the batch: `["handling", "dragOut"]`. */
  readonly path: readonly (string | number)[];
  /** True where nobody gave it. */
  readonly assumed: boolean;
};

/** The value that a share u of all its values lies below. */
export const quantileOf = (of: Distribution, u: number): number =>
  "factor" in of ? logNormalQuantile(of, u) : truncatedNormalQuantile(of, u);
