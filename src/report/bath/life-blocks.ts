import type { BathWear } from "../../core/plan/wear-model.js";
import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { type Block, paragraph } from "../report.js";
import type { Cell, Column } from "../table.js";
import { restsInWords } from "../words/assumed.js";
import { significant, trimmed } from "../words/digits.js";
import { lifeEnds } from "../words/life-ends.js";
import { fineMoney } from "../words/money.js";

const small = (value: number): string => significant(value, 2);

function lifeTable({ lives, topUpRule, cheapestRule }: BathWear, currency: string | null): Block {
  const aged = lives.some(({ days }) => days !== null);
  const priced = lives.some(({ costPerPart }) => costPerPart !== null);
  const { unit } = dyeKinds[kindWith(lives[0]!, "perPart")];
  const columns: readonly Column[] = [
    { key: "rule", title: "topUp" },
    { key: "loads", title: "loads" },
    { key: "parts", title: "parts" },
    ...(aged ? [{ key: "days", title: "days", digits: (days: number) => trimmed(days, 1) }] : []),
    { key: "ended", title: "ended by" },
    { key: "per_part", title: `${unit}/part`, digits: small },
    { key: "per_dm2", title: `${unit}/dm2`, digits: small },
    // Rules differ by less than a minor unit a part.
    ...(priced
      ? [
          {
            key: "cost",
            title: `${currency ?? ""}/part`,
            digits: (cost: number) => fineMoney(cost, currency),
          },
        ]
      : []),
  ];
  const rows = lives.map((life): Cell[] => [
    `${life.rule}${life.rule === topUpRule ? " (now)" : ""}${life.rule === cheapestRule ? ", cheapest" : ""}`,
    life.loads,
    life.parts,
    // The days of a count that was broken off say nothing.
    ...(aged ? [life.endedBy === "load-limit" ? null : life.days] : []),
    lifeEnds[life.endedBy].short,
    figureOfDye(life, "perPart"),
    figureOfDye(life, "perDm2"),
    ...(priced ? [life.costPerPart] : []),
  ]);
  return { kind: "table", table: { columns, rows } };
}

/** What the costs of a life hold, and what they say of the rules; nothing without prices. */
function costText({ lives, cheapestRule, restsOnAssumed }: BathWear): string | null {
  if (lives.every(({ costPerPart }) => costPerPart === null)) return null;
  const labour = lives.every(({ dipLabourPerPart }) => dipLabourPerPart === null)
    ? ""
    : ", labour of loads, dips and waits";
  const counted = `The cost a part is that of dye, water, disposal${labour}, not of set-up, mixing and topping up.`;
  if (cheapestRule !== null) return counted;
  const within = restsOnAssumed.length === 0 ? "1 %" : `what is assumed (${restsInWords(restsOnAssumed)})`;
  return `${counted} The rules cost the same within ${within}: which one is the cheapest is not certain.`;
}

/** Lives of a fresh bath under each rule of topping up. */
export function lifeBlocks(bath: BathWear, currency: string | null): Block[] {
  const { lives, topUpRule } = bath;
  const endless = lives.some(({ rule, endedBy }) => rule !== topUpRule && endedBy === "load-limit");
  const texts = [
    endless ? "Where dye does not end a bath, dirt, hardness and breakdown do." : null,
    costText(bath),
  ].filter((text) => text !== null);
  return [lifeTable(bath, currency), ...(texts.length === 0 ? [] : [paragraph(texts.join(" "))])];
}
