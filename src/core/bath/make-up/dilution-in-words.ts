import type { Dilution } from "../../model/batch.js";

/** A number of at most that many significant digits, without trailing zeros. */
const short = (value: number, digits: number): string => Number(value.toPrecision(digits)).toString();

const parts = (count: string, what: string): string => `${count} ${count === "1" ? "part" : "parts"} ${what}`;

/** The smallest whole parts of dye, up to 20, that make the parts of water whole too. */
function wholeParts(fraction: number): { dye: number; water: number } | undefined {
  for (let dye = 1; dye <= 20; dye++) {
    const water = (dye * (1 - fraction)) / fraction;
    const whole = Math.round(water);
    if (Math.abs(water - whole) <= 1e-9 * Math.max(1, water)) return { dye, water: whole };
  }
  return undefined;
}

/**
 * A dilution said so that 1:9 cannot be taken for one ninth.
 *
 * Common practice, no source: `d:w` is d volumes of dye with w of water, a fraction of d/(d + w).
 * @example
 * dilutionInWords({ kind: "liquid", fraction: 0.1 }) // => "1 part dye + 9 parts water = 10 % by volume"
 * dilutionInWords({ kind: "liquid", fraction: 2 / 7 }) // => "2 parts dye + 5 parts water = 28.57 % by volume"
 * dilutionInWords({ kind: "liquid", fraction: 0.1234 }) // => "1 part dye + about 7.104 parts water = 12.34 % by volume"
 * dilutionInWords({ kind: "liquid", fraction: 1 }) // => "undiluted dye = 100 % by volume"
 * dilutionInWords({ kind: "powder", gramsPerL: 20 }) // => "20 g of dye in each litre of water, measured cold"
 */
export function dilutionInWords(dilution: Dilution): string {
  if (dilution.kind === "powder")
    return `${short(dilution.gramsPerL, 4)} g of dye in each litre of water, measured cold`;
  const { fraction } = dilution;
  const percent = `${short(100 * fraction, 4)} % by volume`;
  if (fraction >= 1) return `undiluted dye = ${percent}`;
  const whole = wholeParts(fraction);
  return whole === undefined
    ? `1 part dye + about ${parts(short((1 - fraction) / fraction, 4), "water")} = ${percent}`
    : `${parts(String(whole.dye), "dye")} + ${parts(String(whole.water), "water")} = ${percent}`;
}
