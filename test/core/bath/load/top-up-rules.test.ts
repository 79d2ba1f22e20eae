import { describe, expect, test } from "vitest";
import type { BathSetting } from "../../../../src/core/bath/load/bath-setting.js";
import { toKeepLevel, toKeepStrength, topUpRules } from "../../../../src/core/bath/load/top-up-rules.js";
import type { TopUp } from "../../../../src/core/bath/load/worked-bath.js";
import type { Dilution, TopUpRule } from "../../../../src/core/model/batch.js";
import { partsOf, setting, steadyHeat, toDepth, workLoad } from "../settings.js";

const powder: Dilution = { kind: "powder", gramsPerL: 100 };

/** What is poured into a bath of 6 L with 600 mL or g when fresh, after a load that takes nothing out of it. */
function poured(rule: TopUpRule, volumeL: number, dye: number, dilution = setting.dye.dilution) {
  const still: BathSetting = {
    ...setting,
    rule,
    dye: { uptakePerDm2: 0, dilution },
    handling: { ...setting.handling, dragOutMlPerDm2: 0 },
    heat: steadyHeat(0),
  };
  const result = workLoad(still, { volumeL, dye }, { ...partsOf(1), ...toDepth(0.2) });
  if (result === undefined) throw new Error("not worked");
  return result;
}

/** To 0.001 mL or g. */
const rounded = (topUp: TopUp | null) =>
  topUp && { dye: Number(topUp.dye.toFixed(3)), waterMl: Number(topUp.waterMl.toFixed(3)) };

describe("a bath is topped up", () => {
  test("where it has fallen by more than 2 % below its mark, unless the rule is none", () => {
    const toppedUp = (volumeL: number) =>
      topUpRules.filter((rule) => poured(rule, volumeL, 100 * volumeL).topUp !== null);
    expect(toppedUp(5.879)).toEqual(["level", "strength"]);
    expect(toppedUp(5.881)).toEqual([]);
  });

  test("where it has weakened by more than 2 %, under the rule strength only", () => {
    const toppedUp = (dye: number) =>
      topUpRules.filter((rule) => poured(rule, 6, dye, powder).topUp !== null);
    expect(toppedUp(587.9)).toEqual(["strength"]);
    expect(toppedUp(588.1)).toEqual([]);
  });

  test("under level with liquor at the make-up ratio, be it weak", () => {
    expect(rounded(poured("level", 5.4, 400).topUp)).toEqual({ dye: 60, waterMl: 540 });
    expect(rounded(poured("level", 5.4, 400, powder).topUp)).toEqual({ dye: 60, waterMl: 600 });
  });

  test("under strength with the dye that is missing, concentrate as far as there is room under the mark", () => {
    expect(rounded(poured("strength", 5.4, 400).topUp)).toEqual({ dye: 200, waterMl: 400 });
    expect(rounded(poured("strength", 5.4, 400, powder).topUp)).toEqual({ dye: 200, waterMl: 600 });
    const full = poured("strength", 5.9, 400);
    expect([rounded(full.topUp), full.topUpShort]).toEqual([{ dye: 100, waterMl: 0 }, true]);
    // A bath that is too strong gets water only.
    expect(rounded(poured("strength", 5.4, 700).topUp)).toEqual({ dye: 0, waterMl: 600 });
  });
});

test("messages name the rules that keep a bath full, and those that keep it strong", () => {
  expect([toKeepLevel, toKeepStrength]).toEqual(["topUp: level or topUp: strength", "topUp: strength"]);
});
