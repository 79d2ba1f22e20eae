// Kills `cost --out` in the middle; the old file or the new one must be left, whole.
// Use: node test/bench/kill.mjs [ROUNDS]; needs `npm run build` first. Default 200.
import { killRounds } from "../tools/kill-rounds.mjs";

const found = await killRounds(Number(process.argv[2] ?? 200));
console.log(
  `${found.rounds} rounds, ${found.killed} killed, ${found.begun} of them while the new text was written: ${found.old} left the old file, ${found.new} the new one, ${found.torn} anything else`,
);
process.exitCode = found.torn === 0 ? 0 : 1;
