import { expect, test } from "vitest";
import type { Evidence } from "../../../src/core/bath/evidence/forms.js";
import { reconcile } from "../../../src/core/bath/evidence/reconcile.js";
import { strengthOfSlowerDip } from "../../../src/core/bath/evidence/strength-of-slower-dip.js";
import { coldPerHot } from "../../../src/core/bath/water.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import { readGood, readText } from "../read.js";

const head = (evidence: string, rest = ""): string => `batch: x
dyes:
  lagoon:
    dilution: 1:9
    temperature: 80 °C
    rate: 0.011 /s
    uptake: { evidence: [${evidence}] }
parts: { cleat: { mass: 5.8 g, area: 40 cm2 } }
${rest}`;
const weighed = "handling: { dragOut: { evidence: [{ part: cleat, count: 10, dry: 58 g, wet: 61.2 g }] } }\n";
/** Concentrate in a hot litre of that bath. */
const dyePerL = 100 * coldPerHot(80, 20);

/** What reconcile makes of one piece of evidence, and of the weighing before it. */
function expected(evidence: Evidence) {
  const first = reconcile([{ kind: "weighing", dryG: 58, wetG: 61.2, areaDm2: 4 }]);
  if (!first.ok) throw new Error("no drag-out");
  const { value, factor } = first.value.dragOutMlPerDm2;
  const found = reconcile([evidence], {
    uptakePerDm2: { value: 0.03, deviation: Math.log(4) / 1.959963984540054 },
    dragOutMlPerDm2: { value, deviation: Math.log(factor) },
  });
  if (!found.ok) throw new Error("no uptake");
  return found.value;
}

const forms: Readonly<Record<string, Evidence>> = {
  "{ yield: 60 m2/L, used: 60 %, depth: 0.6, uncertain: 40 % }": {
    kind: "yield",
    dye: 1000,
    areaDm2: 6000,
    usedShare: 0.6,
    depth: 0.6,
    dyePerL,
    relative: 0.4,
  },
  "{ yield: 170 kg/L, area: 35 dm2/kg }": {
    kind: "yield",
    dye: 1000,
    areaDm2: 170 * 35,
    depth: 1,
    dyePerL,
  },
  "{ bought: 2 L, left: 200 mL, dumped: 1.2 L, dyed: 60 m2, depth: 0.6 }": {
    kind: "purchases",
    bought: 2000,
    left: 200,
    dumped: 1200,
    areaDm2: 6000,
    depth: 0.6,
    dyePerL,
  },
  "{ slower: 1.2, dyed: 6 m2, volume: 6 L, evaporated: 4 L, refilled: water, depth: 0.6 }": {
    kind: "slower",
    ...strengthOfSlowerDip(
      {
        law: "first-order",
        ratePerSecond: 0.011,
        referenceSeconds: 300,
        referenceCelsius: 80,
        activationEnergyJPerMol: 75_000,
      },
      0.6,
      1.2,
    )!,
    areaDm2: 600,
    depth: 0.6,
    dyePerL,
    volumeL: 6,
    evaporatedL: 4,
    refill: "water",
  },
};
for (const [written, evidence] of Object.entries(forms))
  test(`readBatch finds the uptake that ${written} tells, beside parts weighed wet`, async () => {
    const { batch, diagnostics } = await readText(head(written, weighed));
    expect(diagnostics).toEqual([]);
    const { uptakePerDm2, dragOutMlPerDm2 } = expected(evidence);
    const [dye] = batch!.dyes;
    expect(dye!.uptakePerDm2).toBeCloseTo(uptakePerDm2.value, 9);
    expect(dye!.uptakeFound!.interval95[0]).toBeCloseTo(uptakePerDm2.interval95[0], 9);
    expect(dye!.uptakeFound!.assumedShare).toBeCloseTo(uptakePerDm2.assumedShare, 6);
    expect(dye!.uptakeAssumed).toBe(uptakePerDm2.assumedShare > 0.1);
    expect(batch!.handling.dragOutMlPerDm2).toBeCloseTo(dragOutMlPerDm2.value, 9);
  });

test("a spec keeps what evidence says as an amount with its factor, for draws", async () => {
  const { spec } = await readText(head("{ yield: 60 m2/L, depth: 0.6 }"));
  const { uptake, uptakeEvidence } = spec!.dyes.lagoon!;
  const [low, high] = uptake.interval95!;
  expect(uptake.value / uptake.factor!).toBeCloseTo(low, 12);
  expect(uptake.value * uptake.factor!).toBeCloseTo(high, 12);
  expect(uptake).not.toHaveProperty("plusMinus");
  expect(uptakeEvidence).toEqual([]);
});

test("a drag-out that is given stays as it is, whatever evidence of the uptake says", async () => {
  const { batch } = await readText(
    head("{ bought: 2 L, dyed: 60 m2 }", "handling: { dragOut: 0.5 mL/dm2 ± 10 % }\n"),
  );
  expect(batch!.handling.dragOutMlPerDm2).toBe(0.5);
  expect(batch!.handling).not.toHaveProperty("dragOutFound");
});

test("weighings alone replace the assumed drag-out and leave the uptake assumed", async () => {
  const { batch } = await readText(
    `batch: x\ndyes: { lagoon: { dilution: 1:9, temperature: 80 °C } }\nparts: { cleat: { mass: 5.8 g, area: 40 cm2 } }\n${weighed}`,
  );
  const { handling, dyes } = batch!;
  expect(handling.dragOutMlPerDm2).toBeCloseTo(0.8, 2);
  expect([handling.dragOutAssumed, dyes[0]!.uptakeAssumed]).toEqual([true, true]);
  expect(handling.dragOutFound!.assumedShare).toBeLessThan(0.13);
  const sure = await readText(
    head("{ yield: 60 m2/L }", weighed.replace("wet: 61.2 g", "wet: 61.2 g, uncertain: 5 %")),
  );
  expect(sure.batch!.handling.dragOutAssumed).toBe(false);
});

test("evidence that disagrees is a warning at its item, and the batch is read all the same", async () => {
  const { batch, diagnostics } = await readText(
    head("{ bought: 2 L, dyed: 10 m2 }, { yield: 90 m2/L, uncertain: 5 % }", weighed),
  );
  expect(batch).toBeDefined();
  expect(
    diagnostics.every(({ code, severity }) => code === "evidence-disagrees" && severity === "warning"),
  ).toBe(true);
  const places = diagnostics.map(({ spans }) =>
    spans[0]!.text.slice(spans[0]!.column - 1, spans[0]!.column + 10),
  );
  expect(places).toEqual(expect.arrayContaining(["{ bought: 2", "{ yield: 90"]));
});

test("every form is read, of a liquid and of a powder, several of them together", async () => {
  const { batch, diagnostics } = await readGood("evidence.yaml", { overrides: ["dyes.rust.rate=0.01 /s"] });
  expect(diagnostics).toEqual([]);
  const [lagoon, rust] = batch!.dyes;
  expect(lagoon!.uptakePerDm2).toBeGreaterThan(0.01);
  expect(lagoon!.uptakePerDm2).toBeLessThan(0.12);
  expect(rust!.uptakePerDm2).toBeGreaterThan(0.0005);
  expect(rust!.uptakePerDm2).toBeLessThan(0.02);
});

test("a plan says what is estimated, what is partly assumed, and marks figures only in the latter case", async () => {
  const rest = (
    uncertain: string,
  ): string => `${weighed.replace("wet: 61.2 g", `wet: 61.2 g, uncertain: ${uncertain}`)}
tanks: { six: { volume: 6 L, surface: 450 cm2 } }
shades: { pale: { dye: lagoon, time: 60 s } }
baths: [{ tank: six, dye: lagoon }]
orders: [{ part: cleat, shade: pale, quantity: 20 }]
`;
  const planOf = async (uncertain: string) => {
    const { batch } = await readText(head(`{ yield: 6 m2/L, uncertain: ${uncertain} }`, rest(uncertain)));
    const plan = planBatch(batch!);
    if (!plan.ok) throw new Error("no plan");
    return plan.value;
  };
  const vague = await planOf("60 %");
  expect(vague.assumptions.map(({ code }) => code)).toEqual(
    expect.arrayContaining(["partly-assumed-uptake", "partly-assumed-drag-out"]),
  );
  expect(vague.restsOnAssumed).toEqual(["uptake", "dragOut"]);
  const sure = await planOf("3 %");
  expect(sure.assumptions.map(({ code }) => code)).toEqual(
    expect.arrayContaining(["estimated-uptake", "estimated-drag-out"]),
  );
  expect(sure.restsOnAssumed).toEqual([]);
});
