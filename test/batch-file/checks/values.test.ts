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
