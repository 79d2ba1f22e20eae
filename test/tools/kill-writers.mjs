// Two writers record in one log without a pause and are killed again and again; then the log is looked at.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const source = fileURLToPath(new URL("./record-forever.ts", import.meta.url));

/** The same numbers in 0..1 in every run (32-bit linear congruential generator). */
function randomNumbers(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/**
 * Kills two writers so many times together. A writer is killed within 150 ms of its first row, each row taking some
 * milliseconds; after every third kill a piece of a row is left in the log, as a failing disk would leave it. Returns
 * the text of the log, what was set aside, and the notes of the rows whose writers were told that they are recorded.
 */
export async function killWriters(kills, seed) {
  const folder = mkdtempSync(join(tmpdir(), "dipwright-"));
  const log = join(folder, "baths.csv");
  const script = join(folder, "writer.mjs");
  const random = randomNumbers(seed);
  const acknowledged = [];
  const pieces = [];
  const faults = [];
  let killed = 0;
  let runs = 0;
  /** Settles when any writer has had a row recorded since it was asked. */
  let heard = () => {};
  const nextRow = () => new Promise((settle) => (heard = settle));

  async function writer(name) {
    while (killed < kills) {
      const child = spawn(process.execPath, [script, log, `${name}${++runs}`], {
        stdio: ["ignore", "pipe", "pipe"],
      });
      child.stderr.on("data", (text) => faults.push(String(text)));
      let said = "";
      child.stdout.on("data", (text) => {
        said += text;
        heard();
      });
      await once(child.stdout, "data");
      await sleep(150 * random());
      await recovering;
      child.kill("SIGKILL");
      await once(child, "close");
      killed++;
      // What the pipe still held has come by now; a last line without its end was not said.
      acknowledged.push(...said.split("\n").slice(0, -1));
      if (killed % 3 === 0) {
        const piece = `2027-04-16T09:30:05,six,lo${killed}`;
        pieces.push(piece);
        appendFileSync(log, piece);
        // The disk does not fail twice at once: the other writer ends what it is at before it may be killed too.
        recovering = Promise.race([nextRow(), sleep(500)]);
      }
    }
  }
  let recovering = Promise.resolve();
  try {
    await build({
      entryPoints: [source],
      outfile: script,
      bundle: true,
      platform: "node",
      format: "esm",
      logLevel: "silent",
    });
    await Promise.all([writer("a"), writer("b")]);
    // One more, undisturbed, finds what the last kill left.
    await once(spawn(process.execPath, [script, log, "last", "1"], { stdio: "ignore" }), "close");
    const torn = existsSync(`${log}.torn`) ? readFileSync(`${log}.torn`, "utf8") : "";
    return { killed, acknowledged, pieces, faults, torn, text: readFileSync(log, "utf8") };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
