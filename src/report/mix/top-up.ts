import type { Topping, ToppingAsked } from "../../core/bath/make-up/top-up.js";
import type { Fault } from "../../core/fault.js";
import type { Caution } from "../../core/plan/advice/cautions.js";
import { celsiusField, dyeField, litresField, mlField, percentField, textField } from "../fields.js";
import type { Report } from "../report.js";
import { rowTable } from "../row-table.js";
import { degrees, isNothing, percent, pour, volumeSaid } from "../words/amounts.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { dyeAmount, dyeName } from "../words/dye.js";
import { assumedBlocks } from "./assumed.js";
import { pourTable } from "./pours.js";

/** What a top-up was worked out from and what came out. */
export interface TopUpFacts {
  readonly asked: ToppingAsked;
  readonly topping: Topping;
  /** Where the bath is too strong: what would bring it to the strength asked for. */
  readonly reached?: { readonly takeOutHotL: number; readonly waterMl: number };
  /** The dilution in words. */
  readonly dilution: string;
  readonly cautions: readonly Caution[];
  readonly assumptions: readonly string[];
  readonly warnings: readonly Fault[];
}

/** A top-up as a report. */
export function topUpReport({ asked, topping, reached, dilution, ...said }: TopUpFacts): Report {
  const { cautions, warnings, assumptions } = said;
  const { celsius, roomCelsius } = asked;
  const takeOut = pour(topping.takeOutHotL * 1000);
  const dye = dyeAmount(topping);
  const water = pour(topping.waterMl);
  const steps = [
    ...(isNothing(takeOut) ? [] : [{ what: `take out, measured at ${degrees(celsius)}`, amount: takeOut }]),
    ...(isNothing(dye)
      ? []
      : [{ what: `${dyeName(topping)}, measured at ${degrees(roomCelsius)}`, amount: dye }]),
    ...(isNothing(water) ? [] : [{ what: `water, measured at ${degrees(roomCelsius)}`, amount: water }]),
  ];
  return {
    name: "mix",
    data: {
      kind: "top-up",
      dilution,
      celsius,
      roomCelsius,
      fromVolumeL: asked.volumeL,
      fromStrength: asked.strength,
      volumeL: asked.toVolumeL,
      strengthAsked: asked.toStrength,
      topUp: topping,
      ...(reached === undefined ? {} : { toReachStrength: reached }),
      assumptions,
      cautions,
      warnings: warnings.map(({ code, message }) => ({ code, message })),
    },
    rows: withCautions(
      rowTable([
        textField("kind", "top-up"),
        textField("dilution", dilution),
        celsiusField("temperature", celsius),
        celsiusField("room", roomCelsius),
        litresField("from_volume_hot", asked.volumeL),
        percentField("from_strength", asked.strength),
        litresField("volume_hot", asked.toVolumeL),
        litresField("take_out_hot", topping.takeOutHotL),
        dyeField(topping),
        mlField("water", topping.waterMl),
        percentField("strength", topping.strength),
        textField("assumed", assumptions.join(" ") || null),
        textField("warnings", warnings.map(({ message }) => message).join(" ") || null),
      ]),
      cautions,
    ),
    blocks: [
      {
        kind: "heading",
        level: 1,
        text: `Top-up of ${volumeSaid(asked.volumeL)} at ${percent(asked.strength)} strength to ${volumeSaid(asked.toVolumeL)}`,
      },
      { kind: "paragraph", text: dilution },
      ...(steps.length === 0
        ? [{ kind: "paragraph", text: "Nothing to add: the bath is as asked for." } as const]
        : [pourTable(steps, "in this order")]),
      {
        kind: "paragraph",
        text: `Then the bath holds ${volumeSaid(asked.toVolumeL)} at ${degrees(celsius)} and ${percent(topping.strength)} strength (a fresh bath has 100 %).`,
      },
      ...warnings.map(({ message }) => ({ kind: "paragraph", text: `Note: ${message}.` }) as const),
      ...assumedBlocks(assumptions),
      cautionLine(),
    ],
  };
}
