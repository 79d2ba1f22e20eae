import { expect, test } from "vitest";
import { readText } from "../read.js";

const helpOf = async (text: string, ...overrides: readonly string[]): Promise<string> =>
  (await readText(`batch: x\n${text}`, { overrides })).diagnostics[0]!.help!;
const tanks = (count: number): string =>
  `tanks:\n${Array.from({ length: count }, (_, i) => `  tank-${i}: { volume: 6 L }\n`).join("")}`;
const dye = "dyes: { coral: { dilution: 1:9, temperature: 80 °C } }\n";

test("the help on a name that is not defined lists up to eight", async () => {
  const bath = `${dye}baths: [{ tank: wok, dye: coral }]\n`;
  expect(await helpOf(tanks(8) + bath)).toBe(
    "defined under tanks: tank-0, tank-1, tank-2, tank-3, tank-4, tank-5, tank-6 and tank-7",
  );
  expect(await helpOf(tanks(9) + bath)).toBe("9 tanks are defined: add wok to them or use one of them");
});

test("the help on a name that is missing lists up to eight", async () => {
  const bath = `${dye}baths: [{ dye: coral }]\n`;
  expect(await helpOf(tanks(8) + bath)).toContain("with one of the names tank-0, ");
  expect(await helpOf(tanks(9) + bath)).toBe("add tank: with a name that is defined under tanks");
});

test("the help on a key that --set does not find lists up to twelve", async () => {
  expect(await helpOf(tanks(12), "tanks.wok.volume=5 L")).toContain("defined here: tank-0, ");
  expect(await helpOf(tanks(13), "tanks.wok.volume=5 L")).toBe(
    "name a key of the batch, such as tanks.six.volume",
  );
});

test("a map of up to three keys is shown by an example, a larger one by its keys", async () => {
  expect(await helpOf("consumables: 5\n")).toMatch(/^write consumables: \{ perBath: 1\.5, .*perPart/);
  expect(await helpOf("rates: 5\n")).toBe("it takes the keys electricity, water, labour and disposal");
});
