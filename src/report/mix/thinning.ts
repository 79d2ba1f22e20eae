import type { Caution } from "../../core/plan/advice/cautions.js";
import { celsiusField, litresField, mlField, percentField, textField } from "../fields.js";
import type { Report } from "../report.js";
import { rowTable } from "../row-table.js";
import { degrees, isNothing, percent, pour, volumeSaid } from "../words/amounts.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { assumedBlocks } from "./assumed.js";
import { pourTable } from "./pours.js";

/** Water that brings a bath down to a strength. Volumes hot, water measured cold. */
export interface ThinningFacts {
  readonly fromVolumeL: number;
  readonly fromStrength: number;
  readonly strength: number;
  readonly volumeL: number;
  readonly waterMl: number;
  readonly celsius: number;
  readonly roomCelsius: number;
  readonly cautions: readonly Caution[];
  readonly assumptions: readonly string[];
}

/** Thinning as a report. */
export function thinningReport({ cautions, assumptions, ...facts }: ThinningFacts): Report {
  const { fromVolumeL, fromStrength, strength, volumeL, waterMl, celsius, roomCelsius } = facts;
  return {
    name: "mix",
    data: { kind: "thinning", ...facts, assumptions, cautions, warnings: [] },
    rows: withCautions(
      rowTable([
        textField("kind", "thinning"),
        celsiusField("temperature", celsius),
        celsiusField("room", roomCelsius),
        litresField("from_volume_hot", fromVolumeL),
        percentField("from_strength", fromStrength),
        litresField("volume_hot", volumeL),
        mlField("water", waterMl),
        percentField("strength", strength),
        textField("assumed", assumptions.join(" ") || null),
      ]),
      cautions,
    ),
    blocks: [
      {
        kind: "heading",
        level: 1,
        text: `Thinning of ${volumeSaid(fromVolumeL)} from ${percent(fromStrength)} to ${percent(strength)} strength`,
      },
      isNothing(pour(waterMl))
        ? { kind: "paragraph", text: "Nothing to add: the bath is as asked for." }
        : pourTable(
            [{ what: "water", amount: pour(waterMl) }],
            `pour in, measured at ${degrees(roomCelsius)}`,
          ),
      {
        kind: "paragraph",
        text: `Then there are ${volumeSaid(volumeL)} at ${degrees(celsius)}; see that the tank holds them.`,
      },
      ...assumedBlocks(assumptions),
      cautionLine(),
    ],
  };
}
