// Kills `cost --out` in the middle, again and again, and looks at what is left.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { writeBatches } from "../../fixtures/generators/batches.mjs";

const bundle = fileURLToPath(new URL("../../dist/dipwright.js", import.meta.url));
const old = `old,${"x".repeat(200_000)}\r\n`;

/**
 * Counts over so many rounds: those that were killed, those of them in which the new text had been begun, and
 * those that left the old file, the new one, or anything else. The moment of the kill moves through the run.
 */
export async function killRounds(rounds, batches = 40) {
  const folder = mkdtempSync(join(tmpdir(), "dipwright-"));
  const found = { rounds, killed: 0, begun: 0, old: 0, new: 0, torn: 0 };
  const target = join(folder, "costs.csv");
  const parts = () => readdirSync(folder).filter((name) => name.endsWith(".part"));
  const start = () =>
    spawn(process.execPath, [bundle, "cost", "batches", "--format", "csv", "--quiet", "--out", "costs.csv"], {
      cwd: folder,
      stdio: "ignore",
    });
  try {
    writeBatches(folder, batches, 1);
    const first = start();
    await once(first, "exit");
    const whole = readFileSync(target, "utf8");
    const began = process.hrtime.bigint();
    await once(start(), "exit");
    const milliseconds = Number(process.hrtime.bigint() - began) / 1e6;
    for (let round = 0; round < rounds; round++) {
      writeFileSync(target, old);
      const child = start();
      const ended = once(child, "exit");
      let over = false;
      ended.then(() => {
        over = true;
      });
      const share = (round + 0.5) / rounds;
      // Every other round waits until the new text is begun, so that most kills hit while it is written.
      if (round % 2 === 0) await sleep(share * milliseconds * 1.1);
      else {
        while (!over && parts().length === 0) await sleep(1);
        await sleep(share * milliseconds * 0.4);
      }
      child.kill("SIGKILL");
      const [, signal] = await ended;
      if (signal === "SIGKILL") found.killed++;
      if (parts().length > 0) found.begun++;
      const left = readFileSync(target, "utf8");
      if (left === old) found.old++;
      else if (left === whole) found.new++;
      else found.torn++;
      for (const name of parts()) rmSync(join(folder, name));
    }
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
