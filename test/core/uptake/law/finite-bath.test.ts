import fc from "fast-check";
import { expect, test } from "vitest";
import { type BathSetting, workLoad } from "../../../../src/core/bath/load/work-load.js";
import { dipTimer, secondsForDepth, type UptakeModel } from "../../../../src/core/uptake/law/depth.js";
import { strengthDuringDip } from "../../../../src/core/uptake/law/finite-bath.js";
import { uptakeAtStrength } from "../../../../src/core/uptake/law/isotherm.js";
import { lawInverse, lawNames, lawUptake } from "../../../../src/core/uptake/law/laws.js";
import { setting } from "../../bath/settings.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const k = 0.01;
/** Depth is here the share of the plateau of a bath of strength 1. */
const model: UptakeModel = {
  law: "first-order",
  ratePerSecond: k,
  referenceSeconds: 1e9,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75_000,
};

/** dD/dt = k (s - D), s = s₀ - b D/D_end: t = -ln(1 - (D_end + b)/s₀)/(k (1 + b/D_end)); b is what the dip takes of s. */
const closedForm = (depth: number, before: number, taken: number): number =>
  -Math.log1p(-(depth + taken) / before) / (k * (1 + taken / depth));

const seconds = (one: UptakeModel, depth: number, before: number, after: number): number | undefined => {
  const strength = strengthDuringDip(one, depth, { before, after });
  return strength === undefined ? undefined : secondsForDepth(one, { depth, strength, celsius: 80 });
};

test("a first-order dip in a bath that it weakens takes the time of the closed form to 1e-8", () => {
  fc.assert(
    fc.property(real(0.01, 0.95), real(0.0001, 0.3), real(0.3, 1.5), (share, load, before) => {
      const [depth, taken] = [share * (1 - load) * before, load * before];
      const time = seconds(model, depth, before, before - taken)!;
      expect(Math.abs(time / closedForm(depth, before, taken) - 1)).toBeLessThan(1e-8);
    }),
  );
});

test("dips of all laws and isotherms take the time of small steps of the rate law", () => {
  const stepped = (one: UptakeModel, depth: number, before: number, after: number): number => {
    // Small steps of depth, each at the strength of its middle, by the law at constant strength.
    const reference = lawUptake(one.law, one.ratePerSecond * one.referenceSeconds);
    const steps = 4000;
    let time = 0;
    for (let i = 0; i < steps; i++) {
      const strength = before + ((after - before) * (i + 0.5)) / steps;
      const top = uptakeAtStrength(strength, one.saturation) / reference;
      const at = (n: number): number => lawInverse(one.law, (depth * n) / steps / top)!;
      time += (at(i + 1) - at(i)) / one.ratePerSecond;
    }
    return time;
  };
  fc.assert(
    fc.property(
      fc.constantFrom(...lawNames),
      fc.option(real(0.2, 3), { nil: undefined }),
      real(0.05, 0.9),
      real(0.01, 0.3),
      (law, saturation, share, load) => {
        const one = {
          ...model,
          law,
          referenceSeconds: 300,
          ...(saturation === undefined ? {} : { saturation }),
        };
        const depth =
          (share * uptakeAtStrength(1 - load, saturation)) / lawUptake(law, one.ratePerSecond * 300);
        const time = seconds(one, depth, 1, 1 - load)!;
        expect(Math.abs(time / stepped(one, depth, 1, 1 - load) - 1)).toBeLessThan(1e-4);
      },
    ),
    { numRuns: 60, seed: 6 },
  );
});

test("a depth that the weakened bath does not allow has no strength", () => {
  expect(strengthDuringDip(model, 0.9, { before: 1, after: 0.9 })).toBeUndefined();
  expect(strengthDuringDip(model, 0.5, { before: 0.1, after: -0.1 })).toBeUndefined();
  expect(strengthDuringDip(model, 0, { before: 0.8, after: 0.8 })).toBe(0.8);
});

/** How far the plan's time, at the mean of the strengths, is off for a dip to a share of the plateau. */
function meanRuleOff(share: number, load: number): number {
  const bath: BathSetting = {
    ...setting,
    model,
    timer: dipTimer(model, 80),
    fresh: { volumeL: 1, dye: 1 },
    dye: { ...setting.dye, uptakePerDm2: load / share },
  };
  const worked = workLoad(bath, bath.fresh, { areaDm2: 1, depth: share })!;
  return worked.seconds / closedForm(share, 1, load) - 1;
}

test("the mean of the strengths gives the time to 0.5 % where a load takes 10 % of the dye and a dip goes to 17 % of the plateau", () => {
  for (const share of [0.02, 0.05, 0.1, 0.17])
    for (const load of [0.01, 0.03, 0.06, 0.1])
      expect(Math.abs(meanRuleOff(share, load))).toBeLessThan(0.005);
});

test("it is further off for longer dips: 2.1 % at half the plateau and 10 % of the dye, 0.35 % at 2 %", () => {
  expect(meanRuleOff(0.5, 0.1)).toBeCloseTo(-0.0214, 4);
  expect(meanRuleOff(0.5, 0.05)).toBeCloseTo(-0.0094, 4);
  expect(meanRuleOff(0.5, 0.02)).toBeCloseTo(-0.0035, 4);
  expect(meanRuleOff(0.8, 0.1)).toBeCloseTo(-0.098, 3);
});
