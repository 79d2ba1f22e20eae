import { expect, test } from "vitest";
import { killRounds } from "../tools/kill-rounds.mjs";

test("kill -9 in the middle of --out leaves the old file or the new one, whole", async () => {
  const found = await killRounds(16, 12);
  expect(found.torn).toBe(0);
  expect(found.old + found.new).toBe(16);
  expect(found.killed).toBeGreaterThan(4);
  expect(found.begun).toBeGreaterThan(0);
}, 120_000);
