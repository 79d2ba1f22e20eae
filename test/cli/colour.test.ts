import { expect, test } from "vitest";
import { wantsColour } from "../../src/cli/colour.js";

const wants = (env: Record<string, string>, isTerminal: boolean, refused = false): boolean =>
  wantsColour({ env, isTerminal, refused });

test("wantsColour follows the stream where nothing is said", () => {
  expect(wants({}, true)).toBe(true);
  expect(wants({}, false)).toBe(false);
  expect(wants({ TERM: "dumb" }, true)).toBe(false);
});

test("wantsColour takes NO_COLOR and --no-color over FORCE_COLOR, and FORCE_COLOR over the stream", () => {
  expect(wants({ FORCE_COLOR: "1" }, false)).toBe(true);
  expect(wants({ FORCE_COLOR: "0" }, true)).toBe(false);
  expect(wants({ FORCE_COLOR: "false" }, true)).toBe(false);
  expect(wants({ FORCE_COLOR: "3", TERM: "dumb" }, false)).toBe(true);
  expect(wants({ NO_COLOR: "1", FORCE_COLOR: "1" }, true)).toBe(false);
  expect(wants({ FORCE_COLOR: "1" }, true, true)).toBe(false);
});

test("wantsColour takes an empty variable as unset", () => {
  expect(wants({ NO_COLOR: "" }, true)).toBe(true);
  expect(wants({ FORCE_COLOR: "" }, false)).toBe(false);
});
