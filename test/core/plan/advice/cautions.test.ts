import { expect, test } from "vitest";
import { type CautionFacts, cautions } from "../../../../src/core/plan/advice/cautions.js";

const facts: CautionFacts = {
  celsius: 80,
  roomCelsius: 20,
  agitation: false,
  drying: false,
  powder: false,
  lid: false,
  coolToCelsius: 45,
};
const codes = (change: Partial<CautionFacts>): string[] =>
  cautions({ ...facts, ...change }).map(({ code }) => code);

test("cautions on a bath of 80 °C start with scalding and say that it is immediate", () => {
  const [first] = cautions(facts);
  expect(first?.code).toBe("hot-liquor");
  expect(first?.text).toMatch(
    /^Liquor of 80 °C scalds at once: water of 68.3 °C burns seriously in about 1 s\./,
  );
});

test("cautions on a bath of 60 °C give the published seconds", () => {
  expect(cautions({ ...facts, celsius: 60 })[0]?.text).toMatch(
    /^Liquor of 60 °C scalds within seconds: water of 60 °C burns the skin in 3 s, seriously in 5 s\./,
  );
});

test("cautions name ultrasound only where a tank is agitated, and dust only where powder is weighed", () => {
  expect(codes({})).not.toContain("agitation");
  expect(codes({ agitation: true })).toContain("agitation");
  expect(codes({})).not.toContain("dust");
  expect(codes({ powder: true })).toContain("dust");
});

test("cautions on electricity hold for a heater, an agitator or a dryer", () => {
  const cold = { celsius: 20 };
  expect(codes(cold)).not.toContain("electricity");
  expect(codes({ ...cold, agitation: true })).toContain("electricity");
  expect(codes({ ...cold, drying: true })).toContain("electricity");
  expect(codes({})).toContain("electricity");
});

test("cautions always hold protection, data sheet, waste and use, and end with what comes before the tool", () => {
  for (const celsius of [15, 40, 50, 60, 80, 95]) {
    const given = codes({ celsius });
    for (const code of ["protection", "data-sheet", "waste", "use"]) expect(given).toContain(code);
    expect(given.at(-1)).toBe("precedence");
  }
});
