import { type Assumption, assumption } from "../../model/assumption.js";
import type { Dye } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { dyeUnitInWords } from "../../quantity/dye/dye-figures.js";
import { rangeInWords } from "../../quantity/text/range-in-words.js";
import { assumedRateText } from "../../uptake/shade/dye-model.js";
import { type AssumedWork, costShareOf, dyesInBaths, ofDye } from "./assumed-work.js";
import { foundInWords } from "./found-in-words.js";

/** The uptakes that are assumed, each once with all its dyes. */
export function assumedUptakes(work: AssumedWork): Assumption[] {
  const found = new Map<string, Dye[]>();
  for (const dye of dyesInBaths(work.batch)) {
    if (dye.uptakeFound || !dye.uptakeAssumed) continue;
    const uptake = `${dye.uptakePerDm2} ${dyeUnitInWords(dye.dilution.kind)} per dm2`;
    found.set(uptake, [...(found.get(uptake) ?? []), dye]);
  }
  return [...found].map(([uptake, dyes]) => {
    const [only] = dyes.length === 1 ? dyes : [];
    return assumption(
      "assumed-uptake",
      only ? ["dyes", only.name, "uptake"] : ["dyes"],
      `${only ? "dye" : "dyes"} ${dyes.map(({ name }) => `"${name}"`).join(", ")}: an uptake of ${uptake} (${rangeInWords(defaults.dye.uptakeMlPerDm2.factor)}) is assumed: strength, top-ups and life of ${only ? "its bath" : "their baths"} rest on it`,
      costShareOf(work, "uptake"),
    );
  });
}

/** The uptakes that were estimated, the swatches read from a screen, and the dyes without swatches. */
export const dyeFigures = ({ batch, models }: AssumedWork): Assumption[] =>
  [...dyesInBaths(batch)].flatMap((dye): Assumption[] => {
    const model = models.get(dye)?.uptake;
    return [
      ...(dye.uptakeFound
        ? [
            ofDye(
              dye,
              dye.uptakeAssumed ? "partly-assumed-uptake" : "estimated-uptake",
              ["uptake"],
              `: ${dye.uptakePerDm2.toPrecision(2)} ${dyeUnitInWords(dye.dilution.kind)} per dm2 at depth 1 is ${foundInWords(dye.uptakeFound)}`,
            ),
          ]
        : []),
      ...(dye.swatches.some(({ colour }) => colour.kind === "hex")
        ? [
            ofDye(
              dye,
              "screen-colour",
              ["swatches"],
              `: swatches given as hex are taken for exact sRGB and carried over to D65/10 by their smoothest curve; a phone or screen is off by 0.5 to 2 CIEDE2000 and more`,
            ),
          ]
        : []),
      ...(model && dye.swatches.length === 0
        ? [
            ofDye(
              dye,
              "assumed-reference",
              [],
              ` has no swatches: depth 1 is ${model.referenceSeconds} s in a fresh bath, and its colours are not known`,
            ),
          ]
        : []),
    ];
  });

/** The rates that one swatch does not tell, and the laws that too few swatches check. */
export const ratesAndLaws = ({ batch, models }: AssumedWork): Assumption[] =>
  [...dyesInBaths(batch)].flatMap((dye): Assumption[] => {
    const model = models.get(dye);
    if (model?.rate === "assumed")
      return [
        ofDye(
          dye,
          "assumed-rate",
          ["rate"],
          ` has one swatch, which does not say how fast the dye goes in: ${assumedRateText} is assumed`,
        ),
      ];
    if (model?.chosen && dye.swatches.length < 3)
      return [
        ofDye(
          dye,
          "unchecked-law",
          ["law"],
          ` has ${dye.swatches.length === 1 ? "one swatch" : "two swatches"}: nothing checks its ${model.uptake.law} law; dip and read two more`,
        ),
      ];
    return [];
  });
