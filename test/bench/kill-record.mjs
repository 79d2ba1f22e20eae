// Kills two writers that record in one log; every row that they were told of must be there, once.
// Use: node test/bench/kill-record.mjs [KILLS] [SEED]. Default 500 and 1.
import { killWriters } from "../tools/kill-writers.mjs";

const [kills = 500, seed = 1] = process.argv.slice(2).map(Number);
const began = performance.now();
const { killed, acknowledged, pieces, faults, torn, text } = await killWriters(kills, seed);
const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
const columns = lines[0].split(",").length;
const rows = lines.slice(1).map((line) => line.trim().split(","));
const whole = rows.filter((cells) => cells.length === columns);
const counts = new Map();
for (const cells of whole) counts.set(cells.at(-1), (counts.get(cells.at(-1)) ?? 0) + 1);
const lost = acknowledged.filter((note) => !counts.has(note));
const twice = [...counts.values()].filter((count) => count > 1);
const unsaid = pieces.filter((piece) => !torn.split("\n").includes(piece));
console.log(
  `${killed} kills in ${((performance.now() - began) / 1000).toFixed(0)} s, ${acknowledged.length} rows acknowledged: ${lost.length} lost, ${twice.length} twice; ${rows.length - whole.length} rows damaged; ${pieces.length} torn pieces, ${unsaid.length} of them not set aside, ${torn.split("\n").length - 1} pieces set aside; ${faults.length} complaints`,
);
process.exitCode =
  lost.length + twice.length + unsaid.length + faults.length + rows.length - whole.length > 0 ? 1 : 0;
