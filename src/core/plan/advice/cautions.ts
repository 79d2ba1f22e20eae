import { scald } from "./scald.js";

/** Something to heed; `code` is stable and may be scripted against. */
export interface Caution {
  readonly code: string;
  readonly text: string;
}

/** What a plan does, as far as it decides which cautions apply. */
export interface CautionFacts {
  /** Of the hottest bath. */
  readonly celsius: number;
  readonly roomCelsius: number;
  /** Ultrasound or a pump runs in a tank. */
  readonly agitation: boolean;
  /** A dryer is used. */
  readonly drying: boolean;
  /** A powder dye is weighed. */
  readonly powder: boolean;
  /** A tank has a lid. */
  readonly lid: boolean;
  /** At which baths are emptied. */
  readonly coolToCelsius: number;
}

/** A batch may let its baths be emptied hotter; the caution does not go along. Common practice, no source. */
const safeCelsius = 50;

/** The sentence that comes before all amounts. */
const precedence: Caution = {
  code: "precedence",
  text: "Amounts only: local rules, the supplier's data sheet and licensed practice come before this tool.",
};

function hotLiquor(celsius: number): Caution[] {
  const row = scald(celsius);
  if (row === undefined) return [];
  const { secondDegreeSeconds, seriousSeconds } = row;
  const bath = Number(celsius.toFixed(1));
  const time =
    secondDegreeSeconds === undefined
      ? `water of ${row.celsius} °C burns seriously in about ${seriousSeconds} s`
      : `water of ${row.celsius} °C burns the skin in ${secondDegreeSeconds} s, seriously in ${seriousSeconds} s`;
  const lead =
    seriousSeconds <= 1
      ? `Liquor of ${bath} °C scalds at once`
      : seriousSeconds <= 30
        ? `Liquor of ${bath} °C scalds within seconds`
        : `Liquor of ${bath} °C scalds skin that stays in it`;
  return [
    {
      code: "hot-liquor",
      text: `${lead}: ${time}. Lower and lift parts slowly, never fill a hot tank to the brim, keep cold water at hand.`,
    },
  ];
}

/**
 * The cautions that apply, the most pressing first. Those on protection, data sheet, waste and use always do.
 * @source scaldPlumbing table, 45 to 60 °C
 * @example
 * cautions({ celsius: 20, roomCelsius: 20, agitation: false, drying: false, powder: false, lid: false, coolToCelsius: 45 }).map((c) => c.code) // => ["protection", "data-sheet", "jugs", "waste", "use", "precedence"]
 */
export function cautions(facts: CautionFacts): Caution[] {
  const heated = facts.celsius > facts.roomCelsius;
  const electric = heated || facts.agitation || facts.drying;
  const hot = facts.celsius > facts.coolToCelsius;
  return [
    ...hotLiquor(facts.celsius),
    ...(heated
      ? [
          {
            code: "vapour",
            text: `Vapour and smell: use extraction or work outdoors${facts.lid ? "; mind the steam under a lid" : ""}.`,
          },
        ]
      : []),
    ...(facts.powder
      ? [{ code: "dust", text: "Weigh powder dye without raising dust; do not breathe it in." }]
      : []),
    {
      code: "protection",
      text: "Wear gloves, goggles and an apron; use stainless steel tongs or a basket.",
    },
    ...(facts.agitation
      ? [{ code: "agitation", text: "Never put a hand into a tank while its ultrasound or pump runs." }]
      : []),
    ...(electric
      ? [
          {
            code: "electricity",
            text: "Run tanks and dryers behind residual-current protection; never heat unattended, nor with less liquor than the heater needs.",
          },
        ]
      : []),
    ...(hot
      ? [
          {
            code: "emptying",
            text: `Empty or move a bath only when its heater is off and it is under ${Number(Math.min(facts.coolToCelsius, safeCelsius).toFixed(1))} °C.`,
          },
        ]
      : []),
    {
      code: "data-sheet",
      text: "Read the dye's own safety data sheet first; some dyes sensitise the skin.",
    },
    {
      code: "jugs",
      text: "Label every jug; none that held or will hold food; no kit back to the kitchen.",
    },
    {
      code: "waste",
      text: "Spent liquor and rinse water go only where local rules and the water authority allow; amounts here are not a permission.",
    },
    {
      code: "use",
      text: "No fastness without a test; no part is claimed fit for food, skin or toys.",
    },
    precedence,
  ];
}
