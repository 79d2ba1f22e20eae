import { expect, test } from "vitest";
import { dilutionInWords } from "../../../../src/core/quantity/dye/dilution.js";

test.each([
  [1 / 10, "1 part dye + 9 parts water = 10 % by volume"],
  [1 / 9, "1 part dye + 8 parts water = 11.11 % by volume"],
  [0.5, "1 part dye + 1 part water = 50 % by volume"],
  [3 / 10, "3 parts dye + 7 parts water = 30 % by volume"],
  [0.07, "7 parts dye + 93 parts water = 7 % by volume"],
  [0.6, "3 parts dye + 2 parts water = 60 % by volume"],
  [Math.PI / 30, "1 part dye + about 8.549 parts water = 10.47 % by volume"],
  [1, "undiluted dye = 100 % by volume"],
])("a fraction of %d is said as %s", (fraction, words) => {
  expect(dilutionInWords({ kind: "liquid", fraction })).toBe(words);
});
