import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Lab, Shade } from "../../../../src/core/model/batch.js";
import { type Rework, reworkShade } from "../../../../src/core/recipe/rework/rework-shade.js";
import { dyeModel } from "../../../../src/core/uptake/shade/dye-model.js";
import { labAfter } from "../../../../src/core/uptake/swatches/shade-curve.js";
import { handling, dye as sampleDye } from "../../plan/sample.js";
import { seeded } from "../../uptake/shade/invented-dyes.js";
import { layerDye } from "../../uptake/shade/layer-dyes.js";
import { readLab } from "../competing-dyes.js";
import { someDyes } from "../some-dyes.js";

const [first, second] = someDyes(61, 2) as [ReturnType<typeof someDyes>[0], ReturnType<typeof someDyes>[0]];
const { curve } = first.model.chosen;

const shadeOf = (lab: Lab, of = first, tolerance = 0.2): Shade => ({
  name: "meant",
  dye: of.model.dye,
  target: { kind: "colour", colour: { kind: "lab", lab } },
  tolerance,
});

const rework = (shade: Shade, lab: Lab, dye?: string, of = first): Rework => {
  const part = { colour: { kind: "lab", lab } as const, ...(dye === undefined ? {} : { dye }) };
  const read = reworkShade(of.model, shade, part);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};

test("a part that is too light goes on for the time that is missing along its dye's curve", () => {
  const made = rework(shadeOf(labAfter(curve, 90)), labAfter(curve, 40), "dye 1");
  expect(made.how).toBe("goes-on");
  expect(made.seconds).toBeCloseTo(50, 3);
  expect(made.deltaE00).toBeLessThan(1e-4);
  expect(made.reachable).toBe(true);
});

test("how a part lies off the curve stays as it is", () => {
  const [L, a, b] = labAfter(curve, 40);
  const off: Lab = [L, a + 4, b - 4];
  const made = rework(shadeOf(labAfter(curve, 90)), off, "dye 1");
  expect(made.how).toBe("goes-on");
  expect(made.deltaE00).toBeGreaterThan(0.5);
});

test("a part that is too dark stays too dark, one within the tolerance is as it should be", () => {
  const dark = rework(shadeOf(labAfter(curve, 40)), labAfter(curve, 150), "dye 1");
  expect([dark.how, dark.seconds, dark.reachable]).toEqual(["too-dark", 0, false]);
  const right = rework(shadeOf(labAfter(curve, 40)), labAfter(curve, 40.2), "dye 1");
  expect([right.how, right.seconds, right.reachable]).toEqual(["as-it-is", 0, true]);
});

test("a part of another dye is the base of the over-dye", () => {
  const part = labAfter(second.model.chosen.curve, 20);
  const made = rework(shadeOf(labAfter(curve, 90)), part, "dye 2");
  expect(made.how).toBe("over-dyed");
  expect(made.seconds).toBeGreaterThan(0);
});

test("a part whose dye is not known goes on where it lies on the curve, and is over-dyed where it does not", () => {
  expect(rework(shadeOf(labAfter(curve, 90)), labAfter(curve, 40)).how).toBe("goes-on");
  const [L, a, b] = labAfter(curve, 40);
  expect(rework(shadeOf(labAfter(curve, 90)), [L, a + 25, b - 25]).how).toBe("over-dyed");
});

test("a dye with one swatch has no curve to go on along", () => {
  const bare = { ...first.model, chosen: null };
  const read = reworkShade(bare, shadeOf([50, 0, 0]), { colour: { kind: "lab", lab: [60, 0, 0] } });
  expect(read.ok ? [] : read.faults.map(({ code }) => code)).toEqual(["rework-without-curve"]);
});

test("parts of layer dyes that were dipped too short reach their shade: median at most 0.4, 95th at most 2", () => {
  const random = seeded(20261126);
  const missed: number[] = [];
  for (let i = 0; i < 40; i++) {
    const truth = layerDye(random);
    const fresh = { strength: 1, celsius: 80 };
    const { ratePerSecond: _, ...rest } = sampleDye;
    const model = dyeModel(
      {
        ...rest,
        law: "auto",
        base: { name: "white", lab: readLab(truth.baseLab, 0.3, random) },
        swatches: [15, 30, 60, 180].map((seconds) => ({
          seconds,
          colour: { kind: "lab", lab: readLab(truth.colour({ seconds, ...fresh }), 0.3, random) },
        })),
      },
      handling,
    );
    if (!model.ok) throw new Error(JSON.stringify(model.faults));
    for (let j = 0; j < 3; j++) {
      const meant = 25 + 155 * random();
      const dipped = meant * (0.3 + 0.5 * random());
      const target = truth.colour({ seconds: meant, ...fresh });
      const shade = { ...shadeOf(target), dye: model.value.dye, tolerance: 0.01 };
      const lab = readLab(truth.colour({ seconds: dipped, ...fresh }), 0.3, random);
      const made = reworkShade(model.value, shade, { colour: { kind: "lab", lab }, dye: "coral" });
      if (!made.ok) throw new Error(JSON.stringify(made.faults));
      missed.push(ciede2000(truth.colour({ seconds: dipped + made.value.seconds, ...fresh }), target));
    }
  }
  missed.sort((a, b) => a - b);
  const quantile = (p: number): number => missed[Math.round(p * (missed.length - 1))]!;
  process.stdout.write(
    `rework in the same dye, layer dyes: median ${quantile(0.5).toFixed(2)}, 95th ${quantile(0.95).toFixed(2)}\n`,
  );
  expect(quantile(0.5)).toBeLessThanOrEqual(0.4);
  expect(quantile(0.95)).toBeLessThanOrEqual(2);
});
