import type { MakeUp } from "../../core/bath/make-up/make-up.js";
import type { Caution } from "../../core/plan/advice/cautions.js";
import { celsiusField, dilutionField, dyeField, litresField, mlField, textField } from "../fields.js";
import type { Report } from "../report.js";
import { rowTable } from "../row-table.js";
import { degrees, pour, volumeSaid } from "../words/amounts.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { dyeAmount, dyeName } from "../words/dye.js";
import { assumedBlocks } from "./assumed.js";
import { pourTable } from "./pours.js";

/** What a fresh bath was worked out from and what came out. */
export interface MakeUpFacts {
  readonly made: MakeUp;
  readonly celsius: number;
  readonly roomCelsius: number;
  /** The dilution in words. */
  readonly dilution: string;
  readonly cautions: readonly Caution[];
  readonly assumptions: readonly string[];
}

/** A fresh bath as a report. */
export function makeUpReport({
  made,
  celsius,
  roomCelsius,
  dilution,
  cautions,
  assumptions,
}: MakeUpFacts): Report {
  const fields = [
    textField("kind", "make-up"),
    textField("dilution", dilution),
    dilutionField(made),
    celsiusField("temperature", celsius),
    celsiusField("room", roomCelsius),
    litresField("volume_hot", made.volumeHotL),
    litresField("volume_cold", made.volumeColdL),
    dyeField(made),
    mlField("water", made.waterMl),
    textField("assumed", assumptions.join(" ") || null),
  ];
  const heated = celsius !== roomCelsius;
  return {
    name: "mix",
    data: {
      kind: "make-up",
      dilution,
      celsius,
      roomCelsius,
      makeUp: made,
      assumptions,
      cautions,
      warnings: [],
    },
    rows: withCautions(rowTable(fields), cautions),
    blocks: [
      {
        kind: "heading",
        level: 1,
        text: `Make-up of ${volumeSaid(made.volumeHotL)}${heated ? ` at ${degrees(celsius)}` : ""}`,
      },
      { kind: "paragraph", text: dilution },
      pourTable(
        [
          { what: "water", amount: pour(made.waterMl) },
          { what: dyeName(made), amount: dyeAmount(made) },
        ],
        `pour in, measured at ${degrees(roomCelsius)}`,
      ),
      {
        kind: "paragraph",
        text: heated
          ? `The cold fill is ${volumeSaid(made.volumeColdL)}; it grows to ${volumeSaid(made.volumeHotL)} at ${degrees(celsius)}.`
          : `The fill is ${volumeSaid(made.volumeColdL)}.`,
      },
      ...assumedBlocks(assumptions),
      cautionLine(),
    ],
  };
}
