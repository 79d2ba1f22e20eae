import { expect, test } from "vitest";
import { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { aimAtMix } from "../../../../src/core/recipe/mixed-bath/mixed-aim.js";
import { reworkMixed } from "../../../../src/core/recipe/rework/rework-mixed.js";
import { mixOf, rose, shadeOf, straw } from "../../plan/mixed/mixed-sample.js";
import { handling } from "../../plan/sample.js";

const mix = mixOf([
  [straw, 0.8],
  [rose, 0.4],
]);
const { dyes, mixes } = new SharedWork();
const fitted = mixes.fit(mix, handling, dyes);
if (!fitted.ok) throw new Error(JSON.stringify(fitted.faults));
const mixed = fitted.value;
const shade = shadeOf(mix, 75);
const aim = aimAtMix(mixed, shade, undefined);
if (!aim.ok) throw new Error(JSON.stringify(aim.faults));
const { labAt } = aim.value;

const rework = (lab: readonly [number, number, number], dye?: string) => {
  const made = reworkMixed(mixed, shade, { colour: { kind: "lab", lab }, ...(dye && { dye }) });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
};

test("a part that is too light in a mix goes on for the seconds that are missing", () => {
  const [L, a, b] = labAt(30);
  const one = rework([L, a, b]);
  expect(one).toMatchObject({ how: "goes-on", dye: "moss", reachable: true });
  expect(one.seconds).toBeCloseTo(45, 2);
  expect(one.deltaE00).toBeLessThan(1e-3);
});

test("one that is too dark stays as it is, and one of the shade passes", () => {
  expect(rework([...labAt(150)] as [number, number, number])).toMatchObject({ how: "too-dark", seconds: 0 });
  expect(rework([...labAt(74)] as [number, number, number])).toMatchObject({ how: "as-it-is" });
});

test("a part of another colour is taken as the base of the mix", () => {
  const one = rework([75, -20, 20], "another");
  expect(one.how).toBe("over-dyed");
  expect(one.lab[0]).toBeLessThan(75);
});
