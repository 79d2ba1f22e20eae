import { expect, test } from "vitest";
import { readLog } from "../../src/log/read/read-log.js";
import { killWriters } from "../tools/kill-writers.mjs";

test("kill -9 of two writers at once: every row that they were told of is in the log, once, and torn ones are set aside", async () => {
  const { killed, acknowledged, pieces, faults, torn, text } = await killWriters(20, 5);
  expect(faults).toEqual([]);
  expect(killed).toBeGreaterThanOrEqual(20);
  expect(acknowledged.length).toBeGreaterThan(killed);
  const { log, diagnostics } = readLog("baths.csv", text);
  // Of two writers in one second the earlier one may come second: that is a warning, and both rows are there.
  expect(diagnostics.filter(({ code }) => code !== "log-time-back")).toEqual([]);
  const notes = log!.rows.map(({ note }) => note!);
  expect(new Set(notes).size).toBe(notes.length);
  expect(acknowledged.filter((note) => !notes.includes(note))).toEqual([]);
  expect(pieces.length).toBeGreaterThan(4);
  for (const piece of pieces) expect(torn.split("\n")).toContain(piece);
}, 120_000);
