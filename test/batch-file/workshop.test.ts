import { expect, test } from "vitest";
import { batchText, shared } from "../../fixtures/generators/batches.mjs";
import type { BatchRead } from "../../src/batch-file/batch-read.js";
import type { BatchText } from "../../src/batch-file/batch-text.js";
import { readBatch } from "../../src/batch-file/read-batch.js";
import { modelReader } from "../../src/batch-file/resources/model-reader.js";
import { reflectanceReader } from "../../src/batch-file/resources/reflectance.js";
import { Workshop, type WorkshopReaders } from "../../src/batch-file/workshop.js";
import { planBatch } from "../../src/core/plan/plan.js";
import { renderPlain } from "../../src/diagnostics/render-plain.js";
import { readBytes, readFile as readFixture } from "./read.js";

const shop = `currency: EUR
room: { temperature: 18 °C }
tanks:
  six: { volume: 6 L, cover: lid, heater: 700 W }
  nine: { volume: 9 L, heater: 900 W }
bases:
  white: { lab: [92, 0, -1] }
  grey: { hex: "#808182" }
handling: { drain: 20 s, longest: 6 min }
dryers:
  trays: { capacity: 60, temperature: 70 °C, time: 60 min, power: 500 W }
`;
const dyes = `dyes:
  coral:
    dilution: 1:9
    temperature: 80 °C
    price: 46.00 /L
    base: white
    uptake: { evidence: [{ dyed: 90 m2, bought: 1 L, left: 700 mL }] }
    swatches:
      - { time: 15 s, lab: [80.2, 21.7, 9.8] }
      - { time: 60 s, lab: [65.9, 44.6, 23.0] }
      - { time: 180 s, hex: "#d9603b" }
  moss: { dilution: 12 %, temperature: 78 °C, base: grey, rate: 0.02 /s, uptake: 0.03 mL/dm2 ± 40 % }
shades:
  coral-light: { dye: coral, time: 30 s }
  coral-deep: { dye: coral, lab: [60, 50, 28], tolerance: 3 }
  moss-mid: { dye: moss, time: 90 s }
parts:
  clip: { mass: 5.2 g, area: 34 cm2, blank: { white: 1.20, grey: 1.10 } }
  cleat: { mesh: ../fixtures/models/block.stl, blank: 2.00 }
`;
const files: { readonly [name: string]: string } = {
  "shared/shop.yaml": shop,
  "shared/colours.yaml": dyes,
  "shared/other.yaml": shop.replace("6 L", "5 L").replace("92, 0, -1", "88, 0, 2"),
  ...Object.fromEntries(Object.entries(shared).map(([name, text]) => [`shared/${name}`, text])),
};

/** Readers of these files, with the names that were asked for. */
function reading(): { readonly readers: WorkshopReaders; readonly asked: string[] } {
  const asked: string[] = [];
  const readFile = (name: string): string => {
    asked.push(name);
    return files[name] ?? readFixture(name);
  };
  const measure = modelReader((name) => {
    asked.push(name);
    return readBytes(name);
  });
  return { asked, readers: { readFile, measure, reflectance: reflectanceReader(readFile) } };
}

const file = (name: string, lines: string, more: Partial<BatchText> = {}): BatchText => ({
  name: `batches/${name}.yaml`,
  text: `batch: ${name}\ninclude: [../shared/shop.yaml, ../shared/colours.yaml]\n${lines}`,
  ...more,
});
const orders = `baths: [{ tank: six, dye: coral }]
orders:
  - { part: clip, shade: coral-light, base: white, quantity: 40 }
  - { part: cleat, shade: coral-deep, base: grey, quantity: 12 }
`;
const mossOrder =
  "baths: [{ tank: nine, dye: moss }]\norders: [{ part: clip, shade: moss-mid, quantity: 9 }]\n";

const varied: readonly BatchText[] = [
  file("plain", orders),
  file("plain", orders),
  file("moss", mossOrder),
  file("own", `parts: { bar: { mass: 9 g, area: 60 cm2 } }\n${orders.replace("clip", "bar")}`),
  file(
    "own-dye",
    `dyes: { ink: { dilution: 1:4, temperature: 70 °C, base: grey, rate: 0.01 /s } }\n${mossOrder}`,
  ),
  file("own-base", `bases: { black: { lab: [20, 0, 0] } }\n${orders}`),
  file("set", orders, { overrides: ["tanks.six.volume=5 L", "bases.white.lab=[90, 1, 1]"] }),
  file("set-dye", orders, { overrides: ["dyes.coral.base=grey", "handling.longest=15 min"] }),
  file("set-swatch", orders, { overrides: ["dyes.coral.swatches.0.lab=[81, 20, 9]"] }),
  file("set-room", orders, {
    overrides: ["room.temperature=25 °C", "currency=JPY", "dryers.trays.duty=50 %"],
  }),
  { ...file("other", orders), text: file("other", orders).text.replace("shop.yaml", "other.yaml") },
  file("twice", `tanks: { six: { volume: 7 L } }\n${orders}`),
  file("bad-unit", orders, { overrides: ["tanks.six.volume=5 m"] }),
  file("bad-name", orders.replace("clip", "clop")),
  file("bad-key", `tank: {}\n${orders}`),
  file("needy", "yield: 90 %\n", { needs: ["baths", "orders"] }),
  file("plain", orders),
];

/** What a reading of a batch and its plan come to. */
const outcome = ({ batch, spec, diagnostics }: BatchRead, plan: unknown) => ({
  batch,
  spec,
  said: renderPlain(diagnostics),
  plan,
});

async function alone(one: BatchText) {
  const read = await readBatch({ ...one, ...reading().readers });
  return outcome(read, read.batch && read.batch.orders.length > 0 && planBatch(read.batch));
}

async function inWorkshop(batches: readonly BatchText[], workshop: Workshop) {
  const found = [];
  for (const one of batches) {
    const read = await workshop.read(one);
    found.push(
      outcome(read, read.batch && read.batch.orders.length > 0 && planBatch(read.batch, workshop.work)),
    );
  }
  return found;
}

test("a batch in a workshop is read, refused and planned as it is alone, whatever was read before it", async () => {
  const each = await Promise.all(varied.map(alone));
  expect(each.filter(({ batch }) => batch !== undefined)).toHaveLength(varied.length - 5);
  expect(await inWorkshop(varied, new Workshop(reading().readers))).toEqual(each);
  const backwards = varied.toReversed();
  expect((await inWorkshop(backwards, new Workshop(reading().readers))).toReversed()).toEqual(each);
});

test("generated batches in a workshop are those of each file alone", async () => {
  const batches = Array.from(
    { length: 20 },
    (_, i): BatchText => ({ name: `batches/${i}.yaml`, text: batchText(i, 5) }),
  );
  const each = await Promise.all(batches.map(alone));
  expect(await inWorkshop(batches, new Workshop(reading().readers))).toEqual(each);
});

test("files that batches share are read once, models too", async () => {
  const { readers, asked } = reading();
  await inWorkshop([varied[0]!, varied[2]!, varied[3]!], new Workshop(readers));
  expect(asked.sort()).toEqual(["fixtures/models/block.stl", "shared/colours.yaml", "shared/shop.yaml"]);
});

test("what a batch has from shared files is made once, what it changes is made anew", async () => {
  const workshop = new Workshop(reading().readers);
  const batchOf = async (one: BatchText) => (await workshop.read(one)).batch!;
  const first = await batchOf(varied[0]!);
  const second = await batchOf(varied[2]!);
  const set = await batchOf(varied[6]!);
  expect(second.tanks[1]).toBe(first.tanks[1]);
  expect(second.dyes[1]).toBe(first.dyes[1]);
  expect(set.tanks[1]).toBe(first.tanks[1]);
  expect(set.tanks[0]).not.toBe(first.tanks[0]);
});
