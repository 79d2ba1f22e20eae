import type { Influence } from "../../core/uptake/shade/sensitivity.js";
import type { ShadeTime } from "../../core/uptake/shade/shade-time.js";
import type { Block } from "../report.js";
import type { Cell } from "../table.js";
import { volumeSaid } from "../words/amounts.js";

/** Two significant digits, never more than the value: a hold that is kept to keeps the tolerance. */
function roundedDown(value: number): string {
  if (!(value > 0)) return "0";
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  const places = Math.max(0, -Math.floor(Math.log10(value)) + 1);
  return (Math.floor(value / step + 1e-9) * step).toFixed(places);
}

/** What moves the shade, by how much, and what each must be held to while the others are right. */
export function sensitivityBlocks({ sensitivity: found, tolerance }: ShadeTime): Block[] {
  if (found === null) return [];
  const row = (what: string, unit: string, { perUnit, hold }: Influence): Cell[] => [
    what,
    `${Math.abs(perUnit).toPrecision(2)} a${unit === "mL" ? "n" : ""} ${unit}`,
    hold.within === null ? "need not be held" : `±${roundedDown(hold.within)} ${unit}`,
  ];
  const { seconds, celsius, strengthPercent, makeUpDye } = found;
  return [
    {
      kind: "table",
      table: {
        columns: [
          { key: "what", title: "what may be off" },
          { key: "per", title: "CIEDE2000" },
          { key: "hold", title: `hold to, for ${tolerance}`, tone: "strong" },
        ],
        rows: [
          row("time", "s", seconds),
          row("temperature", "°C", celsius),
          row("strength of the bath", "%", strengthPercent),
          ...(makeUpDye
            ? [row(`dye made up to ${volumeSaid(makeUpDye.volumeL)}`, makeUpDye.unit, makeUpDye)]
            : []),
        ],
      },
    },
    { kind: "paragraph", text: "Each holds while the others are right: where two are off, halve both." },
  ];
}
