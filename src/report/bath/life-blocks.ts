import type { LifeEnd } from "../../core/bath/life/bath-life.js";
import { largest, smallest } from "../../core/maths/extent.js";
import type { Plan, PlanBath } from "../../core/plan/plan-model.js";
import { dyeUnitInWords, figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import type { Block } from "../report.js";
import { percent, pour, weigh } from "../words/amounts.js";
import { mark } from "../words/assumed.js";
import { dyeText, measuredDye } from "../words/dye.js";
import { fineMoney, money } from "../words/money.js";

const ends: Record<LifeEnd, string> = {
  "longest-dip": "a dip passes the longest",
  "too-little-dye": "less dye left than a load takes up",
  "shelf-life": "shelf life",
  "too-little-liquor": "too little liquor",
  "load-limit": "nothing",
};

const small = (value: number): string => value.toPrecision(2);

function lifeTable(plan: Plan, { lives, topUpRule, cheapestRule }: PlanBath): Block {
  const m = mark(lives[0]!.restsOnAssumed);
  const days = lives.some((life) => life.days !== null);
  const priced = lives.some((life) => life.costPerPart !== null);
  const { unit } = dyeKinds[kindWith(lives[0]!, "perPart")];
  const said = (rule: string): string =>
    [rule === topUpRule ? "this bath" : "", rule === cheapestRule ? "cheapest" : ""]
      .filter(Boolean)
      .join(", ");
  return {
    kind: "table",
    table: {
      columns: [
        { key: "rule", title: "topUp" },
        { key: "loads", title: `loads${m}` },
        { key: "parts", title: `parts${m}` },
        ...(days ? [{ key: "days", title: `days${m}` }] : []),
        { key: "ended", title: `ended by${m}` },
        { key: "dye", title: `${unit} a part${m}`, digits: small },
        ...(priced
          ? [
              {
                key: "cost",
                title: `${plan.currency ?? ""} a part${m}`,
                // Rules differ by less than a minor unit a part.
                digits: (value: number) => fineMoney(value, plan.currency),
              },
            ]
          : []),
        { key: "said", title: "" },
      ],
      rows: lives.map((life) => [
        life.rule,
        life.loads,
        life.parts,
        ...(days ? [life.days] : []),
        ends[life.endedBy],
        figureOfDye(life, "perPart"),
        ...(priced ? [life.costPerPart] : []),
        said(life.rule),
      ]),
    },
  };
}

function lifeText(plan: Plan, { life }: PlanBath): string {
  const m = mark(life.restsOnAssumed);
  if (life.loads === 0) return `It would not last for one load of this work.${m}`;
  const { onParts, rinsedAway, left } = life.dyeFate;
  const per = `${small(figureOfDye(life, "perDm2") ?? 0)} ${dyeUnitInWords(kindWith(life, "perDm2"))}`;
  const cost =
    life.cost === null
      ? ""
      : ` It costs ${money(life.cost, plan.currency)} (dye, water, disposal${life.dipLabourPerPart === null ? "" : ", labour of the dips"}; not the work of mixing and topping up).`;
  return `Under topUp: ${life.rule} that is ${(life.areaDm2 / 100).toFixed(1)} m2 at ${per} a dm2; of its dye ${percent(onParts)} on parts, ${percent(rinsedAway)} rinsed away, ${percent(left)} thrown out in the end.${cost}${m}`;
}

const span = (values: readonly number[], say: (value: number) => string): string => {
  const [low, high] = [say(smallest(values)), say(largest(values))];
  return low === high ? low : `${low} to ${high}`;
};

function steadyText({ steadyTopUp }: PlanBath): string {
  if (steadyTopUp === null) return "";
  const { strength, dilution, pours } = steadyTopUp;
  const m = mark(steadyTopUp.restsOnAssumed);
  const amounts = span(
    pours.map(({ liquorMl }) => liquorMl),
    pour,
  );
  const kind = kindWith(pours[0]!, "amount");
  const dye = span(
    pours.map((one) => figureOfDye(one, "amount")),
    (amount) => measuredDye(kind, amount),
  );
  return dilution === null
    ? `No liquor holds it steady: it would have to be stronger than the concentrate.${m}`
    : `To hold it steady instead, fill up after each load with liquor of ${dilution} (${percent(strength)} of the fresh bath; ${jug(steadyTopUp)}): ${amounts} a load, cold, with ${dye} of dye in it.${m}`;
}

/** A litre of the liquor, measured cold. */
const jug = (steady: NonNullable<PlanBath["steadyTopUp"]>): string =>
  "gramsPerL" in steady
    ? `${weigh(steady.gramsPerL)} to each litre of water`
    : `a litre is ${dyeText({ concentrateMl: 1000 * (steady.fraction ?? 1) })} and ${pour(1000 * (1 - (steady.fraction ?? 1)))} of water`;

/** How long a fresh bath lasts under each rule, and what would hold it steady. */
export function lifeBlocks(plan: Plan, bath: PlanBath): Block[] {
  const steady = steadyText(bath);
  return [
    { kind: "heading", level: 2, text: "How long a fresh bath lasts for this work" },
    lifeTable(plan, bath),
    { kind: "paragraph", text: lifeText(plan, bath) },
    ...(steady === "" ? [] : [{ kind: "paragraph" as const, text: steady }]),
  ];
}
