import { exactSumOf } from "../../core/maths/exact-sum.js";
import type { BathWear } from "../../core/plan/wear-model.js";
import { type Block, paragraph } from "../report.js";
import { percent } from "../words/amounts.js";
import { decimals } from "../words/digits.js";

const kWh = (value: number): string => decimals(value, 2);

/** Where the heat of this batch came from and went. */
export function energyBlocks({ energyBalance, heating }: BathWear): Block[] {
  const { heaterKwh, agitationKwh, lostKwh, partsKwh, topUpKwh, bathKwh } = energyBalance;
  const goes = [
    ["surface and walls", lostKwh],
    ["parts", partsKwh],
    ...(topUpKwh > 0 ? [["top-ups", topUpKwh] as const] : []),
    ["left in the bath", bathKwh],
  ] as const;
  const gained = exactSumOf(goes, ([, of]) => of);
  const agitation = agitationKwh >= 0.005 ? `, stirring ${kWh(agitationKwh)} kWh` : "";
  return [
    paragraph(
      heating.minutes === null
        ? `The heater's power is not given: heating up is left out, and the bath is taken to be held, which draws ${kWh(heaterKwh)} kWh in this batch${agitation}.`
        : `In this batch the heater draws ${kWh(heaterKwh)} kWh, heating up included${agitation}; ${kWh(gained)} kWh of that reaches the bath.`,
    ),
    {
      kind: "table",
      table: {
        columns: [
          { key: "what", title: "" },
          { key: "kWh", title: "kWh", digits: kWh },
          { key: "share", title: "share", show: percent },
        ],
        rows: goes.map(([what, of]) => [what, of, gained > 0 ? of / gained : 0]),
      },
    },
  ];
}
