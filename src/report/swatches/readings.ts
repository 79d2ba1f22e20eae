import type { ReadSwatch } from "../../core/uptake/swatches/swatch-readings.js";
import type { Report } from "../report.js";
import { trimmed } from "../words/digits.js";

/** A swatch as a line of the batch file. */
export function swatchLine({ seconds, strength, celsius, lab }: ReadSwatch): string {
  const keys = [
    `time: ${trimmed(seconds, 1)} s`,
    ...(strength === undefined ? [] : [`strength: ${trimmed(100 * strength, 1)} %`]),
    ...(celsius === undefined ? [] : [`temperature: ${trimmed(celsius, 1)} °C`]),
    `lab: [${lab.map((value) => trimmed(value, 2)).join(", ")}]`,
  ];
  return `- { ${keys.join(", ")} }`;
}

/** What was read, as lines to paste under the dye. */
export function readingsReport(dye: string, swatches: readonly ReadSwatch[]): Report {
  const lines = ["swatches:", ...swatches.map((swatch) => `  ${swatchLine(swatch)}`)];
  return {
    name: "swatches",
    data: { dye, swatches, yaml: `${lines.join("\n")}\n` },
    rows: {
      columns: [
        { key: "time_s", title: "time", digits: (value) => trimmed(value, 1) },
        { key: "strength_pct", title: "strength", digits: (value) => trimmed(value, 1) },
        { key: "bath_C", title: "bath", digits: (value) => trimmed(value, 1) },
        ...["L", "a", "b"].map((key) => ({ key, title: key, digits: (value: number) => trimmed(value, 2) })),
        { key: "readings", title: "readings" },
      ],
      rows: swatches.map(({ seconds, strength, celsius, lab, readings }) => [
        seconds,
        strength === undefined ? null : 100 * strength,
        celsius ?? null,
        ...lab,
        readings,
      ]),
    },
    blocks: [
      { kind: "heading", level: 1, text: `To paste under dyes: ${dye}:` },
      { kind: "code", lines },
    ],
  };
}
