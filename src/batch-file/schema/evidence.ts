import * as z from "zod";
import { usualRelative, usualTimeRatioRelative } from "../../core/bath/evidence/forms.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import type { KindName } from "../../core/quantity/kinds.js";
import { check } from "./check.js";
import { leaf, type Meaning } from "./leaf.js";
import type { Forms } from "./one-of-forms.js";
import { count, number, text } from "./plain-values.js";
import {
  type LiquidOrPowder,
  liquidOrPowder,
  percent,
  quantity,
  readQuantity,
  share,
  written,
} from "./quantities.js";

/** Area [dm²] or mass [kg] of parts per mL of concentrate or g of powder. */
export interface Yield extends LiquidOrPowder {
  readonly per: "area" | "mass";
}

const yieldForms: readonly { kind: KindName; of: Yield["of"]; per: Yield["per"]; factor: number }[] = [
  { kind: "areaPerVolume", of: "liquid", per: "area", factor: 1 },
  { kind: "massPerVolume", of: "liquid", per: "mass", factor: 1e-6 },
  { kind: "areaPerMass", of: "powder", per: "area", factor: 1 },
  { kind: "massPerMass", of: "powder", per: "mass", factor: 1e-3 },
];

const yieldHelp =
  "write the area or mass that the dye colours: 12 m2/L or 40 kg/L of a liquid, 0.5 m2/g or 2 kg/g of a powder";

function readYield(input: unknown): Outcome<Yield> {
  for (const { kind, of, per, factor } of yieldForms) {
    const read = readQuantity(kind, { positive: true }, input);
    if (read.ok) return done({ value: read.value.value * factor, of, per });
  }
  return failed(error("yield-form", [], "this is not a yield", yieldHelp));
}

const uncertain = (without: Pick<Meaning, "default" | "otherwise">) =>
  share(
    { description: "one standard deviation of the figure, as a share of it", examples: ["20 %"], ...without },
    { positive: true, most: 5, limits: "above 0 % and up to 500 %" },
  ).optional();

const dyeAmount = (description: string, example: string) =>
  liquidOrPowder(
    { kind: "volume", limits: { unit: "mL" } },
    { kind: "mass", limits: {} },
    "write a volume of a liquid, such as 1 L, or a mass of a powder, such as 250 g",
    { description, examples: [example] },
  );

const kinds = ["yield", "bought", "slower"] as const;
/** Keys that each kind needs beside its own, and those it may have. */
const keysOf = {
  yield: { needs: [], may: ["used", "area"] },
  bought: { needs: ["dyed"], may: ["left", "dumped"] },
  slower: { needs: ["dyed", "volume"], may: ["evaporated", "refilled"] },
} as const;
const always = ["depth", "uncertain"];
const examples: { readonly [key: string]: string } = {
  dyed: "dyed: 9 m2",
  volume: "volume: 6 L",
  area: "area: 35 dm2/kg",
};

/** Evidence of how fast dye is used up. */
export const uptakeEvidence = () =>
  z
    .strictObject({
      yield: leaf<Yield>(
        {
          type: "string",
          reads: yieldForms.map(({ kind }) => ({ kind, limits: { positive: true } })),
          errorMessage: yieldHelp,
        },
        {
          description: "area or mass of parts per amount of dye, a supplier's figure or your own",
          examples: ["12 m2/L", "40 kg/L"],
        },
        readYield,
      ).optional(),
      used: share(
        {
          description: "of a yield: share of the dye that ends up on parts or in the rinse",
          examples: ["80 %"],
          default: percent(defaults.evidence.usedShare),
        },
        { positive: true, limits: "above 0 % and up to 100 %" },
      ).optional(),
      area: quantity(
        "areaPerMass",
        { description: "of a yield by mass: area per mass of the parts", examples: ["35 dm2/kg"] },
        { positive: true, unit: "dm2/kg", suggest: ["dm2/kg"] },
      ).optional(),
      bought: dyeAmount("dye bought", "1 L").optional(),
      left: dyeAmount("what is left of it, on the shelf and in the tanks", "200 mL").optional(),
      dumped: dyeAmount("what was thrown out of it with baths", "50 mL").optional(),
      slower: number(
        { description: "how many times as long the same shade takes as in the fresh bath", examples: [2] },
        { above: 0 },
      ).optional(),
      dyed: quantity(
        "area",
        { description: "area dyed meanwhile", examples: ["9 m2"] },
        { positive: true, suggest: ["m2", "dm2"] },
      ).optional(),
      volume: quantity(
        "volume",
        { description: "of a slower bath: its working volume", examples: ["6 L"] },
        { positive: true },
      ).optional(),
      evaporated: quantity("volume", {
        description: "of a slower bath: water that evaporated meanwhile",
        examples: ["2.5 L"],
        default: written("volume", defaults.evidence.evaporatedL),
      }).optional(),
      refilled: z
        .enum(["none", "water", "fresh"])
        .meta({
          description: "of a slower bath: what refilled it to its mark",
          default: defaults.evidence.refilled,
        })
        .optional(),
      depth: number(
        {
          description: "mean depth of what was dyed; 1 is the longest swatch",
          examples: [0.6],
          default: defaults.evidence.depth,
        },
        { above: 0, to: 10 },
      ).optional(),
      uncertain: uncertain({
        otherwise: `${percent(usualRelative.yield)} of a yield, ${percent(usualRelative.purchases)} of purchases, ${percent(usualTimeRatioRelative)} of a ratio of times`,
      }),
    })
    .check(
      check((evidence, report) => {
        const given = kinds.filter((key) => key in evidence);
        const [kind, other] = given;
        if (kind === undefined || other !== undefined)
          return report(
            "evidence-kind",
            other === undefined ? [] : [other],
            kind === undefined
              ? "this evidence has no yield, bought or slower"
              : "this item has two kinds of evidence",
            kind === undefined
              ? "add yield: 12 m2/L, or bought: 1 L with dyed: 10 m2, or slower: 2 with dyed: 9 m2 and volume: 6 L"
              : "begin another item with a dash",
          );
        const { needs, may } = keysOf[kind];
        for (const key of needs)
          if (!(key in evidence))
            report("missing-key", [key], `evidence by ${kind} has no ${key}`, `add ${examples[key]}`, "key");
        if (evidence.yield?.per === "mass" && !("area" in evidence))
          report(
            "missing-key",
            ["area"],
            "a yield by mass needs the area of that mass",
            `add ${examples.area}`,
            "key",
          );
        for (const key of Object.keys(evidence))
          if (![kind, ...needs, ...may, ...always].includes(key))
            report(
              "evidence-key",
              [key],
              `${key} does not belong to evidence by ${kind}`,
              `it takes ${[...needs, ...may, ...always].join(", ")}`,
              "key",
            );
      }),
    )
    .meta({
      forms: kinds.map((kind) => {
        const { needs, may } = keysOf[kind];
        return { needs: [kind, ...needs], keys: [kind, ...needs, ...may] };
      }) satisfies Forms,
    });

/** Parts weighed dry, and wet after draining as usual. */
export const dragOutEvidence = () =>
  z
    .strictObject({
      part: text({ description: "kind of part on the balance", examples: ["hook"] }),
      count: count({
        description: "how many of them",
        examples: [10],
        default: defaults.evidence.weighedParts,
      }).optional(),
      dry: quantity("mass", { description: "all of them dry", examples: ["64.0 g"] }, { positive: true }),
      wet: quantity(
        "mass",
        { description: "all of them wet, drained as usual", examples: ["67.1 g"] },
        { positive: true },
      ),
      uncertain: uncertain({ default: percent(usualRelative.weighing) }),
    })
    .check(
      check((weighing, report) => {
        const { dry, wet } = weighing;
        if (dry !== undefined && wet !== undefined && wet.value <= dry.value)
          report("evidence-weighing", ["wet"], "wet parts must weigh more than dry ones", "weigh them again");
      }),
    );

/** A quantity, or evidence of it. */
export const orEvidence = <Given extends z.ZodType, Item extends z.ZodType>(
  given: Given,
  item: Item,
  description: string,
) =>
  z
    .union([
      given,
      z.strictObject({
        evidence: z.array(item).meta({ description: "what is known; all of it is reconciled" }),
      }),
    ])
    .meta({ description });
