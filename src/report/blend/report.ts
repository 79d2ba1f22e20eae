import { duration } from "../../core/quantity/text/duration.js";
import type { BlendRecipe } from "../../core/recipe/blend/described.js";
import { type Block, paragraph, type Report } from "../report.js";
import type { Column } from "../table.js";
import { degrees } from "../words/amounts.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { decimals } from "../words/digits.js";
import { assumptions, type BlendFacts, hexOf } from "./facts.js";
import { leftOutText, pasteLines } from "./paste.js";
import { pourBlock, recipeText, trialLines } from "./pours.js";
import { blendRows } from "./rows.js";
import { additionSentences, carryOverSentences, recipeSentences, twoDipSentences } from "./sentences.js";

const places = (count: number) => (value: number) => decimals(value, count);
const labColumns: readonly Column[] = ["L", "a", "b"].map((key) => ({ key, title: key, digits: places(1) }));

function coloursBlock({ blend, reading }: BlendFacts): Block {
  const [recipe] = blend.recipes;
  return {
    kind: "table",
    table: {
      columns: [{ key: "which", title: "" }, { key: "hex", title: "colour", swatch: true }, ...labColumns],
      rows: [
        ["target", hexOf(blend.target, reading), ...blend.target],
        ...(recipe === undefined ? [] : [["to expect", hexOf(recipe.lab, reading), ...recipe.lab]]),
      ],
    },
  };
}

function othersBlock({ blend, vessel }: BlendFacts): Block[] {
  const [first, ...others] = blend.recipes;
  if (others.length === 0) return [];
  return [
    { kind: "heading", level: 2, text: "Other recipes" },
    paragraph(
      `For ${vessel ?? "a jar"}, filled up with water; those marked "as good" differ from the first by less than a first dip misses.`,
    ),
    {
      kind: "table",
      table: {
        columns: [
          { key: "recipe", title: "recipe" },
          { key: "as_good", title: "" },
          { key: "off", title: "off by", digits: places(1) },
          { key: "doubt", title: "doubt", digits: places(1) },
          { key: "light_A", title: "under A", digits: places(1) },
          { key: "light_F11", title: "F11", digits: places(1) },
          { key: "cost", title: "cost a litre", digits: places(2) },
        ],
        rows: others.map((recipe) => [
          recipeText(recipe.dyes),
          recipe.group === first!.group ? "as good" : "",
          recipe.deltaE00,
          recipe.doubt95,
          recipe.deltaE00ByIlluminant?.A ?? "?",
          recipe.deltaE00ByIlluminant?.F11 ?? "?",
          recipe.costPerL,
        ]),
      },
    },
  ];
}

function basesBlock({ blend, base }: BlendFacts): Block[] {
  const { onBases } = blend;
  if (!onBases.some((one) => one.base !== base)) return [];
  return [
    { kind: "heading", level: 2, text: "The same bath on each base" },
    {
      kind: "table",
      table: {
        columns: [
          { key: "base", title: "base" },
          ...labColumns,
          { key: "off", title: "off by", digits: places(1) },
          { key: "estimated", title: "" },
        ],
        rows: onBases.map(({ base: name, lab, deltaE00, estimated }) => [
          name,
          ...lab,
          deltaE00,
          estimated ? "estimate" : "",
        ]),
      },
    },
  ];
}

const section = (text: string, items: readonly string[]): Block[] =>
  items.length === 0
    ? []
    : [
        { kind: "heading", level: 2, text },
        { kind: "list", items },
      ];

/** What to put into the batch file, so that baths of the recipe are planned, priced and topped up. */
function pasteBlocks(facts: BlendFacts, recipe: BlendRecipe): Block[] {
  const lines = pasteLines(facts, recipe);
  if (lines.length === 0) return [];
  return [
    paragraph(
      `To paste into the batch file: plan, cost and bath then work with a bath of this mix. Where the file already has dyes: or shades:, paste only the indented lines below them, in place of any of the same name.${leftOutText(facts, recipe)}`,
    ),
    { kind: "code", lines },
  ];
}

/** Recipes as data: dyes of the two dips by name. */
function dataOf(facts: BlendFacts): Report["data"] {
  const { blend, name, tolerance, base, carryOver, cautions } = facts;
  const { first: _first, twoDips, ...rest } = blend;
  return {
    ...rest,
    name,
    base,
    tolerance,
    reachable: blend.nearest !== null && blend.nearest <= tolerance,
    twoDips: twoDips && {
      ...twoDips,
      dips: twoDips.dips.map(({ dye, seconds }) => ({ dye: dye.name, seconds })),
    },
    carryOver,
    assumptions,
    cautions,
  };
}

function titleOf({ blend, trials }: BlendFacts): string {
  if (blend.recipes.length === 0) return "No recipe";
  if (trials.length === 0) return "First recipe";
  return `Recipe after ${trials.length === 1 ? "1 trial" : `${trials.length} trials`}`;
}

/** Recipes for a colour, in every format. */
export function blendReport(facts: BlendFacts): Report {
  const { blend, name, base, vessel, cautions } = facts;
  const [recipe] = blend.recipes;
  const on = base === null ? "" : ` on ${base}`;
  const dip = recipe === undefined ? "" : `: ${duration(recipe.seconds)} at ${degrees(recipe.celsius)}`;
  return {
    name: "blend",
    data: dataOf(facts),
    rows: withCautions(blendRows(facts), cautions),
    blocks: [
      {
        kind: "heading",
        level: 1,
        text: `${titleOf(facts)} for ${name}${on}${dip}`,
      },
      coloursBlock(facts),
      ...(recipe === undefined
        ? []
        : [
            pourBlock(recipe, vessel),
            { kind: "list" as const, items: recipeSentences(facts, recipe) },
            ...additionSentences(facts).map(paragraph),
            paragraph(
              "Mix the jar first, dip one part in it, rinse, dry and read it. Then run the command again. Its trials are then these, with your reading in place of L,a,b:",
            ),
            { kind: "code" as const, lines: trialLines(recipe, facts.typedTrials), language: "sh" as const },
          ]),
      ...(recipe === undefined ? [] : pasteBlocks(facts, recipe)),
      ...othersBlock(facts),
      ...section("Two dips", twoDipSentences(facts)),
      ...basesBlock(facts),
      ...section("Baths that share the tank", carryOverSentences(facts)),
      paragraph(`Assumed: ${assumptions.join(" ")}`),
      cautionLine(),
    ],
  };
}
