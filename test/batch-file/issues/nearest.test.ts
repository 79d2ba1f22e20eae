import { expect, test } from "vitest";
import { nearest } from "../../../src/batch-file/issues/nearest.js";

test.each([
  ["yeild", "yield"],
  ["tnak", "tank"],
  ["atnk", "tank"],
  ["strenght", "strength"],
  ["wall_area", "wallArea"],
  ["Volume", "volume"],
  ["wages", undefined],
  ["yiedl", "yield"],
  ["sternghth", "strength"],
  ["heatre", "heater"],
  ["frothing", undefined],
  ["", undefined],
])("nearest to %j is %j", (written, expected) => {
  expect(nearest(written, ["volume", "yield", "strength", "wallArea", "water", "heater", "tank"])).toBe(
    expected,
  );
});

test("nearest finds a third of the letters wrong, and no more", () => {
  expect(nearest("saturaxxxx", ["saturation"])).toBeUndefined();
  expect(nearest("saturatxxx", ["saturation"])).toBe("saturation");
  const word = "abcdefghijklmnopqrstuvwxyzåäö";
  for (const [letters, edits] of [
    [29, 9],
    [19, 6],
    [18, 6],
    [17, 5],
  ] as const) {
    const slip = (count: number) => word.slice(0, letters - count) + "#".repeat(count);
    expect(nearest(slip(edits), [word.slice(0, letters)])).toBe(word.slice(0, letters));
    expect(nearest(slip(edits + 1), [word.slice(0, letters)])).toBeUndefined();
  }
  expect(nearest("taxx", ["tank"])).toBeUndefined();
  expect(nearest("taxk", ["tank"])).toBe("tank");
});

test("nearest compares words of up to 100 letters", () => {
  const long = (letters: number) => "lamp".repeat(25).padEnd(letters, "s");
  expect(nearest(`x${long(99)}`.slice(0, 100), [long(100)])).toBe(long(100));
  expect(nearest(`x${long(100)}`, [long(101)])).toBeUndefined();
  expect(nearest("x".repeat(10_000_000), ["tank", "y".repeat(10_000_000)])).toBeUndefined();
});

test("nearest to anything among nothing is nothing", () => {
  expect(nearest("volume", [])).toBeUndefined();
});
