import { shortNumber } from "../text/short-number.js";

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

/** A volume fraction of dye as parts of dye and of water, and in per cent. */
export function ratioInWords(fraction: number): string {
  const percent = `${shortNumber(100 * fraction)} % by volume`;
  if (fraction >= 1) return `undiluted dye = ${percent}`;
  const whole = wholeParts(fraction);
  return whole === undefined
    ? `1 part dye + about ${parts(shortNumber((1 - fraction) / fraction), "water")} = ${percent}`
    : `${parts(String(whole.dye), "dye")} + ${parts(String(whole.water), "water")} = ${percent}`;
}
