import type { CoverHeat, WearHeat } from "../../core/plan/wear-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import { type Block, paragraph } from "../report.js";
import type { Cell } from "../table.js";
import { decimals, digitsMl } from "../words/digits.js";

const whole = (value: number): string => decimals(value, 0);

/** Whether the heater holds the bath at its temperature while parts are dipped; null where no heater is known. */
function holdingText({ lidOff, lidOn, cover }: WearHeat): string | null {
  if (lidOff.holds === null) return null;
  if (lidOff.holds) return "The heater holds the bath at its temperature while parts are dipped.";
  const lost = Math.abs(lidOff.kelvinPerMinute ?? 0).toFixed(1);
  const covered =
    cover !== "lid" ? "" : lidOn.holds ? "; with the lid on it does" : ", nor does it with the lid on";
  return `The heater does not hold the bath at its temperature while parts are dipped (${lost} °C a minute are lost)${covered}.`;
}

const upIn = ({ minutes }: CoverHeat): string =>
  minutes === null ? "never" : duration(60 * Math.ceil(minutes));

/** What each cover changes: the way up from the room's temperature, holding, evaporation. */
export function coverBlocks(heat: WearHeat): Block[] {
  const holding = holdingText(heat);
  const known = holding !== null;
  const row = (under: CoverHeat): Cell[] => [
    under === heat ? `${under.cover} (now)` : under.cover,
    ...(known ? [upIn(under), under.kWh] : []),
    under.lidOff.powerW,
    under.lidOn.powerW,
    1000 * under.lidOff.evaporationKgPerH,
    1000 * under.lidOn.evaporationKgPerH,
  ];
  return [
    paragraph(
      `${holding === null ? "" : `${holding} `}A lid is on while the bath heats and waits, off while parts are dipped; balls stay on.`,
    ),
    {
      kind: "table",
      table: {
        columns: [
          { key: "cover", title: "cover" },
          ...(known
            ? [
                { key: "minutes", title: "heats up in", align: "right" as const },
                { key: "kWh", title: "kWh", digits: (value: number) => decimals(value, 2) },
              ]
            : []),
          { key: "dipping_W", title: "W to hold, dipping", digits: whole },
          { key: "covered_W", title: "W to hold, waiting", digits: whole },
          { key: "dipping_mL", title: "mL/h lost, dipping", digits: digitsMl },
          { key: "covered_mL", title: "mL/h lost, waiting", digits: digitsMl },
        ],
        rows: [row(heat), ...heat.otherCovers.map(row)],
      },
    },
  ];
}
