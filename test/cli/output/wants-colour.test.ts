import { expect, test } from "vitest";
import { wantsColour, wantsTrueColour } from "../../../src/cli/output/wants-colour.js";

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

test("wantsTrueColour asks for colour and for a terminal that says it can show all of them", () => {
  const trueColour = (env: Record<string, string>, isTerminal = true, refused = false): boolean =>
    wantsTrueColour({ env, isTerminal, refused });
  expect(trueColour({ COLORTERM: "truecolor" })).toBe(true);
  expect(trueColour({ COLORTERM: "24bit" })).toBe(true);
  expect(trueColour({})).toBe(false);
  expect(trueColour({ COLORTERM: "yes" })).toBe(false);
  expect(trueColour({ COLORTERM: "truecolor" }, false)).toBe(false);
  expect(trueColour({ COLORTERM: "truecolor", FORCE_COLOR: "1" }, false)).toBe(true);
  expect(trueColour({ FORCE_COLOR: "3" }, false)).toBe(true);
  expect(trueColour({ COLORTERM: "truecolor", NO_COLOR: "1" })).toBe(false);
  expect(trueColour({ COLORTERM: "truecolor" }, true, true)).toBe(false);
});
