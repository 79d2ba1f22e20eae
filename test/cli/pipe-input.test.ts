// The built command with inputs that are not regular files.
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runFake } from "./fake-io.js";

const bundle = new URL("../../dist/dipwright.js", import.meta.url).pathname;
const wait = promisify(setTimeout);
const posix = process.platform !== "win32";
let folder = "";
beforeAll(() => {
  if (!existsSync(bundle)) throw new Error("these tests run the built command: npm run build");
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
  if (posix) spawnSync("mkfifo", [join(folder, "pipe")]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ended = (child: ChildProcess): Promise<unknown> =>
  new Promise((settle) => child.on("close", (status, signal) => settle(signal ?? status)));

test.runIf(posix).each([
  ["cost", "pipe"],
  ["compare", "--pairs", "pipe"],
  ["colour", "--reflectance", "pipe"],
])(
  "%s that waits for a pipe nobody writes to ends on SIGINT, and leaves no --out file",
  async (...args) => {
    const child = spawn(process.execPath, [bundle, ...args, "--format", "csv", "--out", "made.csv"], {
      cwd: folder,
      stdio: "ignore",
    });
    const end = ended(child);
    // Streams open their file before they read; other commands write it when all is read.
    for (let i = 0; i < 60 && !readdirSync(folder).some((name) => name.endsWith(".part")); i++)
      await wait(50);
    child.kill("SIGINT");
    expect(await Promise.race([end, wait(5000).then(() => "deaf")])).toBe("SIGINT");
    expect(readdirSync(folder)).toEqual(["pipe"]);
  },
  20_000,
);

test.runIf(posix)("a pipe is read like a file once somebody writes to it", async () => {
  const child = spawn(process.execPath, [bundle, "check", "pipe"], { cwd: folder, stdio: "ignore" });
  const end = ended(child);
  writeFileSync(join(folder, "pipe"), "batch: small\n");
  expect(await end).toBe(0);
});

test("cost --against refuses a report that is too large before it is read", async () => {
  let asked: number | undefined;
  const large = (bytes: number) =>
    runFake(["cost", "a.yaml", "--against", "old.json"], {
      sizeOf: () => bytes,
      readFile: async (_path, atMost) => {
        asked = atMost;
        return new Uint8Array();
      },
    });
  const limit = 128 * 1024 ** 2;
  const { status, err } = await large(limit + 1);
  expect([status, asked]).toEqual([2, undefined]);
  expect(err).toContain("error[too-large]: --against: old.json: the earlier report is larger than 128 MiB");
  expect((await large(limit)).err).toContain("not-a-cost-report");
  expect(asked).toBe(limit + 1);
});

test.runIf(existsSync("/dev/zero"))(
  "cost --against ends where a device never does",
  () => {
    const call = (path: string) =>
      spawnSync(process.execPath, [bundle, "cost", "a.yaml", "--against", path], {
        cwd: folder,
        encoding: "utf8",
      });
    const zero = call("/dev/zero");
    expect([zero.status, zero.stdout]).toEqual([2, ""]);
    expect(zero.stderr).toContain("error[too-large]");
    writeFileSync(join(folder, "sparse.json"), "");
    truncateSync(join(folder, "sparse.json"), 24 * 1024 ** 3);
    expect(call("sparse.json").stderr).toContain("error[too-large]");
  },
  60_000,
);
