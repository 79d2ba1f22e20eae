import { duration } from "../../core/quantity/text/duration.js";
import type { BlendRecipe } from "../../core/recipe/blend/described.js";
import { decimals } from "../words/digits.js";
import { fineMl } from "../words/fine-amount.js";
import { fineMoney } from "../words/money.js";
import type { BlendFacts } from "./facts.js";
import { recipeText, thinFirst } from "./pours.js";

/** How near a recipe comes, as the arithmetic has it. */
function reach({ blend, tolerance }: BlendFacts, { deltaE00, seconds }: BlendRecipe): string {
  const nearest = blend.nearest ?? deltaE00;
  if (nearest > tolerance)
    return `Nearest ${decimals(nearest, 1)} away, ${blend.nearestBecause}: these dyes do not reach the colour in ${duration(seconds)}.`;
  return `By the arithmetic the colour is ${metOrOff(deltaE00)}.`;
}

const metOrOff = (deltaE00: number): string =>
  deltaE00 < 0.05 ? "met" : `${decimals(deltaE00, 1)} CIEDE2000 off`;

/** What is known of the match under other light. */
function otherLight({ deltaE00ByIlluminant: by }: BlendRecipe): string {
  return by === null
    ? "How it matches under a filament lamp (A) or shop tubes (F11) is not known: target and swatches would have to be measured as reflectances."
    : `Under a filament lamp (A) it is ${decimals(by.A, 1)} off, under shop tubes (F11) ${decimals(by.F11, 1)}.`;
}

/** What must be said of the first recipe. */
export function recipeSentences(facts: BlendFacts, recipe: BlendRecipe): readonly string[] {
  const { currency, trials, fileTrials, name } = facts;
  const first = trials.length === 0;
  return [
    reach(facts, recipe),
    `${first ? "A first dip" : "The next dip"} lies within ${decimals(recipe.doubt95, 1)} CIEDE2000 of that in 95 of 100 cases${first ? ": a trial tells" : ""}.`,
    `2 % too much moves the colour by: ${recipe.dyes.map(({ dye }, i) => `${dye} ${decimals(recipe.changePer2Percent[i]!, 2)}`).join(", ")}.`,
    otherLight(recipe),
    ...thinFirst(recipe),
    ...(recipe.costPerL === null
      ? []
      : [
          `Dye and water cost ${fineMoney(recipe.costPerL, currency)} ${currency ?? ""}`
            .trimEnd()
            .concat(" a litre of bath."),
        ]),
    ...(fileTrials === null
      ? [
          `The trials of ${name} in the batch file are not used: they have another base, or a dye that is not mixed here.`,
        ]
      : []),
    ...(fileTrials
      ? [
          `It goes on from ${fileTrials === 1 ? "the trial" : `the ${fileTrials} trials`} of ${name} in the batch file.`,
        ]
      : []),
  ];
}

/** What to add to the bath of the last trial, or that it is better made afresh. */
export function additionSentences({ blend, trials }: BlendFacts): readonly string[] {
  const { addition, recipes } = blend;
  const last = trials.at(-1);
  if (addition === null || last === undefined) return [];
  const bath = `the ${fineMl(last.poured.coldMl)} of the last trial`;
  if (addition.makeAfresh)
    return [
      `Mix it afresh: whatever is added to ${bath}, the colour stays ${decimals(addition.deltaE00, 1)} CIEDE2000 off; afresh it is ${decimals(recipes[0]!.deltaE00, 1)} off.`,
    ];
  const dyes = addition.dyes.filter(
    (dye) => ("concentrateMl" in dye ? dye.concentrateMl : dye.powderG) >= 0.05,
  );
  const parts = [
    ...(dyes.length === 0 ? [] : [recipeText(dyes)]),
    ...(addition.waterMl >= 0.05 ? [`water ${fineMl(addition.waterMl)}`] : []),
  ];
  return [
    parts.length === 0
      ? `Nothing needs to be added to ${bath}.`
      : `Or add to ${bath}: ${parts.join(", ")}; that makes ${fineMl(addition.bathColdMl)}. By the arithmetic the colour is then ${metOrOff(addition.deltaE00)}. Dye that the trial part took up is not counted.`,
  ];
}

/** Two dips for a dark colour, in their order. */
export function twoDipSentences({ blend }: BlendFacts): readonly string[] {
  const two = blend.twoDips;
  if (two === null) return [];
  const [first, second] = two.dips;
  return [
    `First ${duration(first!.seconds)} in ${first!.dye.name}, rinse, then ${duration(second!.seconds)} in ${second!.dye.name}, each in its own fresh bath: ${decimals(two.deltaE00, 1)} from the colour by the arithmetic.`,
    `In this order what the part brings along shifts the second bath ${decimals(two.shiftOtherwise / Math.max(two.shift, 1e-9), 1)} times less than in the other.`,
  ];
}

/** Baths that share a tank with the recipe. */
export function carryOverSentences({ carryOver }: BlendFacts): readonly string[] {
  if (carryOver === null) return [];
  const { carried, order, worst, steps } = carryOver;
  const rinses = (n: number): string =>
    n === 0
      ? "too little to be seen"
      : `rinse it ${n === 1 ? "once" : `${n} times`} with ${fineMl(carried.rinseMl)} of water`;
  return [
    `Order that does least harm: ${order.join(", ")}.`,
    ...[...steps, ...(steps.includes(worst) ? [] : [worst])].map(
      ({ after, into, shift, rinses: n }) =>
        `After ${after}, ${fineMl(carried.carriedMl)} of it left in the tank (assumed) shift ${into} by ${decimals(shift, 2)}: ${rinses(n)}.`,
    ),
  ];
}
