import { inYaml } from "../../core/quantity/text/in-yaml.js";
import type { Week, WeekBath } from "../../core/week/week-model.js";
import { type Block, paragraph } from "../report.js";
import { shortDay } from "./words.js";

/** What is in each jug after the week, for the batch files of the next one. */
export function jugBlocks({ baths }: Week): Block[] {
  const last = new Map<string, WeekBath>();
  for (const bath of baths) last.set(JSON.stringify([bath.tank, bath.dye]), bath);
  const kept = [...last.values()].filter(({ startAfter }) => startAfter !== null);
  if (kept.length === 0) return [];
  return [
    { kind: "heading", level: 2, text: "In the jugs after the week" },
    {
      kind: "code",
      lines: kept.map(
        ({ tank, dye, date, startAfter }) =>
          `- { tank: ${inYaml(tank)}, dye: ${inYaml(dye)}, start: ${startAfter} } # ${shortDay(date)}`,
      ),
    },
    paragraph("For baths: in the files of the next week; add the days until then to the age."),
  ];
}
