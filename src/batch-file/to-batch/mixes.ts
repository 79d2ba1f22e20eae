import { exactSum } from "../../core/maths/exact-sum.js";
import { smallest } from "../../core/maths/extent.js";
import type * as model from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import { dilutionOf, figureOf } from "../../core/quantity/dye/dilution.js";
import { measuredCelsius, measuredDilution } from "../../core/uptake/law/measured-at.js";
import { own } from "../checks/report.js";
import { isAmount } from "./amounts.js";
import type { Bases } from "./bases.js";
import type { Spec } from "./complete.js";
import type { Entries } from "./entries.js";
import { present } from "./present.js";

type Mix = Spec["mixes"][string];
type Amounts = Mix["mix"];

const dilution = ({ kind, value }: Amounts[string]): model.Dilution => dilutionOf(kind, value);
const strengthOf = (dye: model.Dye, of: model.Dilution): number =>
  figureOf(of) / figureOf(measuredDilution(dye));

const trialColour = ({ lab, hex }: NonNullable<Mix["trials"]>[number]): model.Colour =>
  lab === undefined ? { kind: "hex", hex: hex ?? "" } : { kind: "lab", lab };

/** One dye alone in a bath of its own dilution. */
const alone = (of: Mix, name: string, { dye, dilution: own }: model.MixPart): model.Dye =>
  present({
    ...dye,
    name,
    dilution: own,
    celsius: of.temperature?.value ?? dye.celsius,
    measuredAt: { dilution: measuredDilution(dye), celsius: measuredCelsius(dye) },
    shelfLifeDays: of.shelfLife?.value ?? dye.shelfLifeDays,
    notes: of.notes ?? dye.notes,
  });

/**
 * A mix as a dye: what a bath needs to know of it follows from its dyes. One of a single dye is that dye, diluted as the
 * mix says.
 */
export function mixedDye(of: Mix, name: string, dyes: Entries<model.Dye>, bases: Bases): model.Dye {
  const parts = Object.entries(of.mix).map(([part, amount]): model.MixPart => {
    const dye = dyes[part]!;
    return { dye, dilution: dilution(amount), strength: strengthOf(dye, dilution(amount)) };
  });
  const [first, ...others] = parts;
  if (others.length === 0) return alone(of, name, first!);
  const weighed = (figure: (part: model.MixPart) => number): number =>
    exactSum(parts.map((part) => part.strength * figure(part)));
  const { reading } = first!.dye;
  const lives = parts.flatMap(({ dye }) => dye.shelfLifeDays ?? []);
  return present({
    name,
    dilution: dilutionOf(first!.dilution.kind, exactSum(parts.map((part) => figureOf(part.dilution)))),
    celsius: of.temperature?.value ?? smallest(parts.map(({ dye }) => dye.celsius)),
    base: of.base === undefined ? first!.dye.base : bases.under(of.base, reading),
    reading,
    swatches: [],
    law: defaults.dye.law,
    activationEnergyJPerMol: weighed(({ dye }) => dye.activationEnergyJPerMol) / weighed(() => 1),
    activationEnergyAssumed: parts.some(({ dye }) => dye.activationEnergyAssumed),
    uptakePerDm2: weighed(({ dye }) => dye.uptakePerDm2),
    uptakeAssumed: parts.some(({ dye }) => dye.uptakeAssumed),
    shelfLifeDays: of.shelfLife?.value ?? (lives.length === 0 ? undefined : smallest(lives)),
    notes: of.notes,
    mix: {
      parts,
      trials: (of.trials ?? []).map((trial) => ({
        seconds: trial.time.value,
        strengths: parts.map(({ dye, strength }) => {
          const amount = own(trial.mix, dye.name);
          return trial.mix === undefined
            ? strength
            : amount === undefined
              ? 0
              : strengthOf(dye, dilution(amount));
        }),
        colour: trialColour(trial),
      })),
    },
  });
}

type Strength = Extract<Spec["baths"][number]["start"], { kind: "kept" }>["strength"];

/** How strong a kept bath is: in all, and each dye of a mix where that is given. */
export function startStrength(
  strength: Strength,
  mix: model.Mix | undefined,
): { readonly strength: number; readonly strengthEach?: readonly number[] } {
  if (isAmount(strength)) return { strength: strength.value };
  // The one dye of what is written as a mix.
  if (mix === undefined) return { strength: Object.values(strength)[0]!.value };
  const strengthEach = mix.parts.map(({ dye }) => strength[dye.name]!.value);
  const figures = mix.parts.map((part) => figureOf(part.dilution));
  return {
    strength: exactSum(figures.map((figure, i) => figure * strengthEach[i]!)) / exactSum(figures),
    strengthEach,
  };
}
