import fc from "fast-check";
import { expect, test } from "vitest";
import type { Batch } from "../../src/core/model/batch.js";
import { planBatch } from "../../src/core/plan/plan.js";
import { SharedWork } from "../../src/core/plan/run/shared-work.js";
import { readFile, readText } from "./read.js";

const dyes = /^dyes:\n([\s\S]*?)^ {2}moss:/m.exec(readFile("examples/mixing.yaml"))![1]!;
const shop = readFile("examples/workshop.yaml").replace(/^currency: .*/m, "");

const batchOf = (more: string): string => `batch: one
currency: EUR
${shop}
dyes:
${dyes}${more}
`;

async function batchFrom(text: string): Promise<Batch> {
  const { batch, diagnostics } = await readText(text);
  if (batch === undefined) throw new Error(JSON.stringify(diagnostics));
  return batch;
}

const bases = "  natural: { lab: [94.4, -0.8, 1.2] }";
const withBase = (text: string): string => text.replace(/^bases:$/m, `bases:\n${bases}`);

const rest = ({
  dye,
  topUp,
  start,
  after,
  seconds,
  quantity,
}: {
  readonly dye: string;
  readonly topUp: string;
  readonly start: string;
  readonly after: string;
  readonly seconds: number;
  readonly quantity: number;
}): string => `
shades:
  light: { dye: ${dye}, time: ${seconds} s }
  read: { dye: ${dye}, lab: [82.0, 5.0, 60.0], tolerance: 9 }
baths:
  - { tank: six, dye: ${dye}, topUp: ${topUp}, start: ${start}, after: ${after}, every: 3 d }
orders:
  - { part: hook, shade: light, base: white, quantity: ${quantity} }
  - { part: clip, shade: read, base: white, quantity: 30 }
`;

/** A plan without the names of dyes, and without what only says how a dye was written. */
const bare = (plan: unknown): string => JSON.stringify(plan).replaceAll("moss", "straw");

test("a mix of one dye is that dye in a bath of that dilution, digit by digit", async () => {
  const shared = new SharedWork();
  let planned = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.record({
        perMille: fc.integer({ min: 20, max: 200 }),
        celsius: fc.constantFrom(74, 80),
        topUp: fc.constantFrom("none", "level", "strength"),
        start: fc.constantFrom("fresh", "{ volume: 5.4 L, strength: 91 %, age: 2 d, area: 0.4 m2 }"),
        after: fc.constantFrom("keep", "dump"),
        seconds: fc.integer({ min: 20, max: 120 }),
        quantity: fc.integer({ min: 10, max: 140 }),
      }),
      async ({ perMille, celsius, ...bath }) => {
        const mix = `  moss: { mix: { straw: ${perMille} mL/L }, temperature: ${celsius} °C }\n`;
        // The same dye, measured as it was and made up as the mix says.
        const alone = dyes
          .replace(/^ {2}straw:\n([\s\S]*?) {2}rose:\n[\s\S]*/m, "  moss:\n$1")
          .replace(
            "dilution: 1:9",
            `dilution: ${perMille} mL/L\n    measuredAt: { dilution: 1:9, temperature: 80 °C }`,
          )
          .replace("temperature: 80 °C\n    base", `temperature: ${celsius} °C\n    base`);
        const mixed = planBatch(
          await batchFrom(withBase(batchOf(mix) + rest({ dye: "moss", ...bath }))),
          shared,
        );
        const own = planBatch(
          await batchFrom(withBase(batchOf(alone) + rest({ dye: "moss", ...bath }))),
          shared,
        );
        if (!mixed.ok || !own.ok) {
          expect([mixed.ok, mixed.faults.map(({ code }) => code)]).toEqual([
            own.ok,
            own.faults.map(({ code }) => code),
          ]);
          return;
        }
        expect(bare(mixed.value)).toBe(bare(own.value));
        planned++;
      },
    ),
    { seed: 8, numRuns: 20, endOnFailure: true },
  );
  expect(planned).toBeGreaterThan(10);
});

test("a mix takes the lowest temperature, the common base and the shortest shelf life of its dyes", async () => {
  const cool = `  cool: { dilution: 1:9, temperature: 70 °C, base: natural, shelfLife: 20 d, rate: 0.01 /s }
  moss: { mix: { straw: 50 mL/L, cool: 20 mL/L } }
`;
  const { dyes: read } = await batchFrom(withBase(batchOf(cool)));
  expect(read.at(-1)).toMatchObject({
    name: "moss",
    celsius: 70,
    base: { name: "natural" },
    shelfLifeDays: 20,
    dilution: { kind: "liquid", fraction: 0.07 },
    uptakePerDm2: 0.03 * 0.5 + 0.03 * 0.2,
    uptakeAssumed: true,
  });
});

test("what a plan prints of a kept mix is read back: each dye is as strong as it was left", async () => {
  const text = (start: string): string =>
    withBase(
      batchOf("  moss: { mix: { straw: 70 mL/L, rose: 20 mL/L } }\n") +
        rest({ dye: "moss", topUp: "none", start, after: "keep", seconds: 60, quantity: 120 }),
    );
  const first = planBatch(await batchFrom(text("fresh")));
  if (!first.ok) throw new Error(JSON.stringify(first.faults));
  const { start, mix } = first.value.baths[0]!.carryOver!;
  const again = (await batchFrom(text(start))).baths[0]!.start;
  if (again.kind !== "kept") throw new Error("it is kept");
  mix!.forEach(({ strength }, i) => {
    expect(Math.abs(again.strengthEach![i]! - strength)).toBeLessThan(0.0006);
  });
});

test("stock is that of each dye of a mix, alone and in mixes together", async () => {
  const two = `  moss: { mix: { straw: 70 mL/L, rose: 20 mL/L } }\n`;
  const batch = await batchFrom(
    withBase(
      batchOf(two).replace(/( {2}rose:\n)/, "$1    stock: 100 mL\n") +
        rest({ dye: "moss", topUp: "none", start: "fresh", after: "dump", seconds: 60, quantity: 10 }),
    ),
  );
  const plan = planBatch(batch);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  const short = plan.value.warnings.filter(({ code }) => code === "stock-short");
  expect(short.map(({ message }) => message)).toEqual([
    expect.stringMatching(/^dye "rose": 117 mL of concentrate needed, 100 mL of concentrate on the shelf$/),
  ]);
});

test("a dye without a curve cannot be mixed: the plan says which swatches are missing", async () => {
  const text = withBase(
    batchOf(`  plain: { dilution: 1:9, temperature: 80 °C, base: natural, rate: 0.01 /s }
  moss: { mix: { straw: 50 mL/L, plain: 20 mL/L } }
`) + rest({ dye: "moss", topUp: "none", start: "fresh", after: "dump", seconds: 60, quantity: 10 }),
  );
  const plan = planBatch(await batchFrom(text));
  expect([plan.ok, plan.faults.map(({ code, path }) => [code, path.join(".")])]).toEqual([
    false,
    [["mix-without-curve", "dyes.plain"]],
  ]);
});

test("an order of a mix without a base of its own is on that of its dyes", async () => {
  const text = withBase(
    batchOf("  moss: { mix: { straw: 70 mL/L, rose: 20 mL/L } }\n").replace(
      /^parts:$/m,
      "parts:\n  knob: { mass: 4 g, area: 20 cm2, blank: { natural: 0.80 } }",
    ),
  );
  const { orders } = await batchFrom(`${text}
shades:
  light: { dye: moss, time: 60 s }
baths:
  - { tank: six, dye: moss }
orders:
  - { part: knob, shade: light, quantity: 10 }
`);
  expect(orders[0]).toMatchObject({ base: { name: "natural" } });
});
