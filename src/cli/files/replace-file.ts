import { rmSync } from "node:fs";
import { type FileHandle, open, readdir, readlink, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import type { Replacement } from "../io.js";

const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/** Removes a file when a signal ends the process, then lets it end. Returns how to cancel that. */
function removeOnSignal(path: string): () => void {
  const end = (signal: NodeJS.Signals): void => {
    rmSync(path, { force: true });
    stop();
    process.kill(process.pid, signal);
  };
  const stop = (): void => {
    for (const signal of signals) process.off(signal, end);
  };
  for (const signal of signals) process.on(signal, end);
  return stop;
}

/** Whether a process of this machine has that number. */
function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    return (thrown as NodeJS.ErrnoException).code !== "ESRCH";
  }
}

/** From this age on what a killed run left behind is surely nobody's [ms]; another machine may write there too. */
const abandoned = 3_600_000;

/** Removes what runs that were killed while they wrote this file left beside it. */
async function clearAbandoned(target: string): Promise<void> {
  const folder = dirname(target);
  const lead = `.${basename(target)}.`;
  for (const name of await readdir(folder).catch(() => [])) {
    const pid = name.startsWith(lead) ? /^(\d+)\.part$/.exec(name.slice(lead.length))?.[1] : undefined;
    if (pid === undefined || isAlive(Number(pid))) continue;
    const path = join(folder, name);
    const { mtimeMs } = (await stat(path).catch(() => undefined)) ?? { mtimeMs: Number.POSITIVE_INFINITY };
    if (Date.now() - mtimeMs > abandoned) await rm(path, { force: true });
  }
}

/** Writes every byte; `write` alone may stop short. */
const append = (file: FileHandle, text: string): Promise<void> => file.appendFile(text);

/** Links that one name may lead through. */
const mostLinks = 40;

/** The file that a name leads to through links, though it is not there. */
async function endOfLinks(path: string): Promise<string> {
  let end = path;
  for (let count = 0; count < mostLinks; count++) {
    const link = await readlink(end).catch(() => undefined);
    if (link === undefined) return end;
    end = resolve(await realpath(dirname(end)), link);
  }
  throw Object.assign(new Error(`${path} leads in a circle`), { code: "ELOOP" });
}

/**
 * Opens a new text for a file: written beside it, synced and renamed over it when whole. A link is followed, the
 * old file's mode and owner are kept; a pipe or device is written to as it is.
 */
export async function replaceFile(path: string): Promise<Replacement> {
  const there = await stat(path).catch(() => undefined);
  if (there !== undefined && !there.isFile()) {
    const device = await open(path, "w");
    const close = (): Promise<void> => device.close();
    return { write: (text) => append(device, text), commit: close, discard: close };
  }
  const target = there === undefined ? await endOfLinks(path) : await realpath(path);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  await clearAbandoned(target);
  // One of our number that was killed may have left its own behind.
  await rm(beside, { force: true });
  const file = await open(beside, "wx", there?.mode ?? 0o666);
  const stop = removeOnSignal(beside);
  const discard = async (): Promise<void> => {
    await file.close().catch(() => undefined);
    await rm(beside, { force: true });
    stop();
  };
  return {
    write: (text) => append(file, text),
    commit: async () => {
      if (there !== undefined) {
        // Only root may give a file away, and only root finds another's here that it may replace.
        await file.chown(there.uid, there.gid).catch(() => undefined);
        await file.chmod(there.mode);
      }
      await file.sync();
      await file.close();
      await rename(beside, target);
      stop();
    },
    discard,
  };
}
