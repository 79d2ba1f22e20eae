import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

const bundle = new URL("../../dist/dipwright.js", import.meta.url).pathname;
const header = "id,L1,a1,b1,L2,a2,b2\n";
const lines = (count: number): string =>
  Array.from({ length: count }, (_, i) => `s${i},50,${i % 90},2,50.5,${i % 80},-3\n`).join("");
const args = ["compare", "--pairs", "-", "--format", "csv"];
let folder = "";
beforeAll(() => {
  if (!existsSync(bundle)) throw new Error("these tests run the built command: npm run build");
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ended = (child: ChildProcess): Promise<{ status: unknown; stderr: string }> =>
  new Promise((settle) => {
    let stderr = "";
    child.stderr?.on("data", (text) => {
      stderr += text;
    });
    child.on("close", (status, signal) => settle({ status: signal ?? status, stderr }));
  });

test("compare --pairs gives the same from a file, from stdin and into a file", () => {
  const input = header + lines(20_000);
  writeFileSync(join(folder, "pairs.csv"), input);
  const call = (...more: string[]) =>
    spawnSync(process.execPath, [bundle, ...more], {
      cwd: folder,
      encoding: "utf8",
      input,
      maxBuffer: 1 << 26,
    });
  const piped = call(...args);
  expect([piped.status, piped.stderr, piped.stdout.split("\r\n").length]).toEqual([0, "", 20_002]);
  expect(call("compare", "--pairs", "pairs.csv", "--format", "csv").stdout).toBe(piped.stdout);
  expect(call(...args, "--out", "made.csv").status).toBe(0);
  expect(readFileSync(join(folder, "made.csv"), "utf8")).toBe(piped.stdout);
  expect(readdirSync(folder)).toEqual(["made.csv", "pairs.csv"]);
});

test("compare --pairs ends quietly with status 0 when its reader leaves while rows still come", async () => {
  const child = spawn(process.execPath, [bundle, ...args], { cwd: folder });
  const end = ended(child);
  child.stdin.on("error", () => {});
  child.stdin.write(header);
  const more = setInterval(() => child.stdin.write(lines(2000)), 10);
  child.stdout.once("data", () => child.stdout.destroy());
  const { status, stderr } = await end;
  clearInterval(more);
  expect([status, stderr]).toEqual([0, ""]);
});

test("compare --pairs writes rows while others are still to come", async () => {
  const child = spawn(process.execPath, [bundle, ...args], { cwd: folder });
  const end = ended(child);
  child.stdin.write(header + lines(50));
  const first = await new Promise<string>((settle) => child.stdout.once("data", (text) => settle(`${text}`)));
  expect(first).toMatch(/^id,L1.*\r\ns0,50,0,2,50.5,0,-3,/);
  child.stdin.end();
  expect((await end).status).toBe(0);
});

test("compare --pairs leaves no file when a signal ends it half way", async () => {
  writeFileSync(join(folder, "kept.csv"), "old");
  const child = spawn(process.execPath, [bundle, ...args, "--out", "kept.csv"], { cwd: folder });
  const end = ended(child);
  child.stdin.on("error", () => {});
  child.stdin.write(header + lines(5000));
  const beside = () => readdirSync(folder).filter((name) => name.endsWith(".part"));
  while (beside().length === 0) await new Promise((settle) => setTimeout(settle, 10));
  child.kill("SIGTERM");
  expect((await end).status).toBe("SIGTERM");
  expect(beside()).toEqual([]);
  expect(readFileSync(join(folder, "kept.csv"), "utf8")).toBe("old");
});
