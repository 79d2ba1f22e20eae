import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Fault } from "../../../../src/core/fault.js";
import type { Batch, Bath, Dye, Shade, Tank } from "../../../../src/core/model/batch.js";
import { workBatch } from "../../../../src/core/plan/run/work-batch.js";
import { mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { someDyes } from "../../recipe/some-dyes.js";
import { batch, bath, hook, isothermal, order, tank } from "../sample.js";

const [pale, strong] = someDyes(7, 2);
const dyes: readonly Dye[] = [strong!, pale!].map(({ model }) => ({ ...model.dye, uptakePerDm2: 0 }));
const dumped: Bath = { ...bath, after: "dump" };
const other: Tank = { ...tank, name: "other" };

/** The second dye's bath after the first one's, its parts dyed for so many seconds; nothing wears. */
function faultsOf(tanks: readonly [Tank, Tank], seconds: number, change: Partial<Batch> = {}): Fault[] {
  const shades = dyes.map(
    (dye, i): Shade => ({
      name: `of ${i}`,
      dye,
      target: { kind: "time", seconds: i === 1 ? seconds : 60 },
      tolerance: 1.5,
    }),
  );
  const still = isothermal({
    ...batch,
    dyes,
    shades,
    tanks: [...new Set(tanks)],
    baths: dyes.map((dye, index) => ({ ...dumped, index, dye, tank: tanks[index]! })),
    orders: shades.map((shade, i) => order(i, hook, shade, 10)),
    ...change,
  });
  const worked = workBatch(still, "kept");
  if (!worked.ok) throw new Error(JSON.stringify(worked.faults));
  return worked.faults.filter(({ code }) => code === "carry-over");
}

/** The shift that 10 mL of the first dye make in a bath of the second, from the colours of the mixture alone. */
function shiftAt(seconds: number): number {
  const [first, second] = [strong!, pale!];
  const mixture = mixtureOf([second, first], seconds);
  return ciede2000(mixedLab(mixtureOf([second], seconds), [1]), mixedLab(mixture, [1, 10 / 6000]));
}

const times = Array.from({ length: 20 }, (_, i) => 8 * (i + 1));

test("a dye that follows another in a tank is warned of where the shift is seen, and not below", () => {
  const shifts = times.map(shiftAt);
  expect(Math.max(...shifts)).toBeGreaterThan(0.3);
  expect(Math.min(...shifts)).toBeLessThan(0.3);
  times.forEach((at, i) => {
    const told = faultsOf([tank, tank], at).filter(({ path }) => path[1] === 1);
    expect(told.length, `${at} s shifts by ${shifts[i]}`).toBe(shifts[i]! > 0.3 ? 1 : 0);
    if (told.length > 0) expect(told[0]!.message).toContain(`by ${shifts[i]!.toFixed(1)} CIEDE2000`);
  });
});

test("the help says how often to rinse, and the other order where that does less harm", () => {
  const at = times.find((seconds) => shiftAt(seconds) > 0.4)!;
  const [told] = faultsOf([tank, tank], at);
  expect(told!.message).toMatch(/^10 mL of ".+" left in tank "six" \(assumed\) shift shade "of 1"/);
  expect(told!.help).toMatch(/^rinse the tank once with 2 L of water in between/);
  const swapped = faultsOf([tank, tank], at, {
    baths: [1, 0].map((i, index) => ({ ...dumped, index, dye: dyes[i]!, tank })),
  });
  const shiftOf = (fault: Fault | undefined): number =>
    Number(/by ([\d.]+) CIEDE2000/.exec(fault?.message ?? "by 0 CIEDE2000")![1]);
  expect(told!.help!.includes("; or list the bath")).toBe(shiftOf(swapped[0]) < shiftOf(told));
});

test("a rinsed basket brings nothing from one tank to the next; one that is not rinsed is warned of", () => {
  const at = times.find((seconds) => shiftAt(seconds) > 0.4)!;
  expect(faultsOf([tank, other], at)).toEqual([]);
  const bare = faultsOf([tank, other], at, { handling: { ...batch.handling, rinses: 0 } });
  expect(bare.find(({ path }) => path[1] === 1)!.message).toMatch(/^a basket or tongs/);
});
