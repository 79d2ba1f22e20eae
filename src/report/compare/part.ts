import type { PartDepth } from "../../core/quality/judge-part.js";
import type { Unevenness } from "../../core/quality/unevenness.js";
import { counted } from "../../core/quantity/text/counted.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { DippedIn } from "../../core/uptake/law/dip-time.js";
import { textField } from "../fields.js";
import type { Field } from "../row-table.js";
import { degrees, percent } from "../words/amounts.js";
import { decimals } from "../words/digits.js";

/** A dyed part beside its shade, and the bath of a second dip. */
export interface JudgedPart extends PartDepth {
  readonly dye: string;
  readonly bath: DippedIn;
  /** The shortest dip that can be kept by hand. */
  readonly shortestSeconds: number;
}

const two = (value: number): string => decimals(value, 2);

const bathSaid = ({ dye, bath: { strength, celsius } }: JudgedPart): string =>
  `${strength === 1 ? "a fresh bath" : `a bath of ${percent(strength)} strength`} of ${dye} at ${degrees(celsius)}`;

/** From this difference on it is worth saying that a part is beside the curve of its dye. */
const farBeside = 1;

function dipSaid(part: JudgedPart, tolerance: number | undefined): string {
  const { secondDip, shortestSeconds } = part;
  if (secondDip === null) return "Too light, but another dip would not bring it nearer.";
  const { seconds, deltaE00 } = secondDip;
  const within =
    tolerance === undefined
      ? ""
      : deltaE00 <= tolerance
        ? ", within the tolerance"
        : ", still over the tolerance";
  const short =
    seconds < shortestSeconds
      ? ` That is under the shortest dip of ${duration(shortestSeconds)}: do it in a weaker or cooler bath (--strength, --temperature give its time).`
      : "";
  return `Too light: dip it again for ${duration(seconds)} in ${bathSaid(part)}; about ${two(deltaE00)} is left then${within}. An estimate: read it again.${short}`;
}

/** What to do with a part, in sentences. */
export function partSaid(
  part: JudgedPart,
  verdict: { readonly pass: boolean; readonly tolerance: number } | undefined,
): string[] {
  const { depth, apartSeconds, besideCurve } = part;
  const apart = duration(Math.abs(apartSeconds));
  const next = (way: string): string => `Dip the next load ${apart} ${way} in such a bath.`;
  const beside =
    besideCurve >= farBeside
      ? [
          `${two(besideCurve)} of the difference lies beside the curve of ${part.dye}, where no dip mends it: another base, a new lot of powder or dye, or the reading.`,
        ]
      : [];
  if (verdict?.pass === true)
    return depth === "right" || Math.round(apartSeconds) === 0
      ? []
      : [`Dipped ${apart} too ${depth === "too light" ? "short" : "long"}, for ${bathSaid(part)}.`];
  if (depth === "right") return ["Its depth is right: another dip does not mend it.", ...beside];
  if (depth === "too dark")
    return [
      `Too dark, by ${apart} in ${bathSaid(part)}: no dip makes it lighter.`,
      next("shorter"),
      ...beside,
    ];
  return [dipSaid(part, verdict?.tolerance), next("longer"), ...beside];
}

/** How even a part is, in a sentence. */
export const unevenSaid = ({ readings, meanDeltaE00, largestDeltaE00 }: Unevenness): string =>
  `${counted(readings, "reading")} of the part: ${two(meanDeltaE00)} from their mean on average, ${two(largestDeltaE00)} between the two that differ most (CIEDE2000).`;

const four = (key: string, value: number | null): Field => [
  { key, title: key, digits: (number) => decimals(number, 4) },
  value,
];
const seconds = (key: string, value: number | null): Field => [
  { key, title: key, digits: (number) => decimals(number, 1) },
  value,
];

/** Columns of a part that is judged. */
export const partFields = (part: JudgedPart): Field[] => [
  textField("depth", part.depth),
  seconds("apart_s", part.apartSeconds),
  seconds("second_dip_s", part.secondDip?.seconds ?? null),
  four("second_dip_ciede2000", part.secondDip?.deltaE00 ?? null),
  four("beside_curve_ciede2000", part.besideCurve),
];

/** Columns of several readings of one part. */
export const unevenFields = ({ readings, meanDeltaE00, largestDeltaE00 }: Unevenness): Field[] => [
  [{ key: "readings", title: "readings", digits: String }, readings],
  four("uneven_mean_ciede2000", meanDeltaE00),
  four("uneven_largest_ciede2000", largestDeltaE00),
];
