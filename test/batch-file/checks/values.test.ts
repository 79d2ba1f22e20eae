import { expect, test } from "vitest";
import { checkValues } from "../../../src/batch-file/checks/values.js";

function codes(batch: object): string[] {
  const found: string[] = [];
  checkValues(batch as never, (code) => found.push(code));
  return found;
}

test("a dye's temperature lies above the room's and under the boiling point of water", () => {
  const at = (celsius: number) =>
    codes({ room: { temperature: { value: 22 } }, dyes: { coral: { temperature: { value: celsius } } } });
  expect([22, 22.1, 99.9, 100].map((celsius) => at(celsius).length)).toEqual([1, 0, 0, 1]);
});

test("a bath starts with at most what its tank holds, 1.15 times its volume where nothing else is written", () => {
  const starting = (tank: object, volume: number) =>
    codes({ tanks: { six: tank }, baths: [{ tank: "six", start: { volume: { value: volume } } }] });
  expect([6.89, 6.91].map((volume) => starting({ volume: { value: 6 } }, volume).length)).toEqual([0, 1]);
  const brim = { volume: { value: 6 }, capacity: { value: 7.5 } };
  expect([7.49, 7.51].map((volume) => starting(brim, volume).length)).toEqual([0, 1]);
});
