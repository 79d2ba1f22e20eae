import { spawn, spawnSync } from "node:child_process";
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { starter } from "../../src/cli/new/starter.js";
import { makeUpArgs } from "./fake-io.js";

const bundle = new URL("../../dist/dipwright.js", import.meta.url).pathname;
let folder = "";
beforeAll(() => {
  if (!existsSync(bundle)) throw new Error("these tests run the built command: npm run build");
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const call = (...args: readonly string[]) =>
  spawnSync(process.execPath, [bundle, ...args], { cwd: folder, encoding: "utf8" });

test("the built command prints its version and nothing else", () => {
  const { status, stdout, stderr } = call("--version");
  expect([status, stdout, stderr]).toEqual([0, expect.stringMatching(/^\d+\.\d+\.\d+\n$/), ""]);
});

test("the built command returns 2 on bad input and says so on stderr only", () => {
  const { status, stdout, stderr } = call("mix", "--volume", "6");
  expect([status, stdout]).toEqual([2, ""]);
  expect(stderr).toContain("a volume needs a unit");
});

test("--out replaces a file in one step and leaves nothing beside it", () => {
  writeFileSync(join(folder, "sheet.txt"), "old");
  expect(call(...makeUpArgs, "--out", "sheet.txt").status).toBe(0);
  expect(readFileSync(join(folder, "sheet.txt"), "utf8")).toBe(call(...makeUpArgs).stdout);
  expect(readdirSync(folder)).toEqual(["sheet.txt"]);
});

test("--out leaves the old file as it is on bad input, and says why a folder takes no report", () => {
  writeFileSync(join(folder, "sheet.txt"), "old");
  expect(call("mix", "--volume", "6", "--out", "sheet.txt").status).toBe(2);
  expect(readFileSync(join(folder, "sheet.txt"), "utf8")).toBe("old");
  const { status, stderr } = call(...makeUpArgs, "--format", "text", "--out", ".");
  expect([status, stderr]).toEqual([2, expect.stringContaining(". was not written: it is a folder")]);
  const missing = call(...makeUpArgs, "--out", "none/sheet.txt");
  expect([missing.status, missing.stderr]).toEqual([2, expect.stringContaining("there is no such folder")]);
});

test.skipIf(process.platform === "win32")("--out leaves the old file where the new one does not fit", () => {
  writeFileSync(join(folder, "sheet.json"), "old");
  const examples = new URL("../../examples", import.meta.url).pathname;
  for (const command of ["plan", "cost"]) {
    const line = `trap '' XFSZ; ulimit -f 4; exec "$0" "$@"`;
    const args = [bundle, command, join(examples, "restock.yaml"), "--out", "sheet.json"];
    const { status, stderr } = spawnSync("sh", ["-c", line, process.execPath, ...args], {
      cwd: folder,
      encoding: "utf8",
    });
    expect([status, stderr]).toEqual([2, expect.stringContaining("it is larger than files may be here")]);
    expect(readFileSync(join(folder, "sheet.json"), "utf8")).toBe("old");
    expect(readdirSync(folder).filter((name) => name.includes("sheet.json"))).toEqual(["sheet.json"]);
  }
});

test.skipIf(process.platform === "win32")(
  "record says that a row does not fit, and the next one sets its piece aside",
  () => {
    const row = ["record", "small.csv", "--bath", "six", "--event", "dump", "--note", "x".repeat(300)];
    expect(call(...row).status).toBe(0);
    const whole = readFileSync(join(folder, "small.csv"), "utf8");
    const line = `trap '' XFSZ; ulimit -f 1; exec "$0" "$@"`;
    const { status, stdout, stderr } = spawnSync("sh", ["-c", line, process.execPath, bundle, ...row], {
      cwd: folder,
      encoding: "utf8",
    });
    expect([status, stdout, stderr]).toEqual([2, "", expect.stringContaining("small.csv was not written")]);
    const piece = readFileSync(join(folder, "small.csv"), "utf8").slice(whole.length);
    expect(piece).toMatch(/^\d{4}-[^\n]*$/);
    const next = call(...row);
    expect([next.status, next.stderr]).toEqual([0, expect.stringContaining("a row was cut off")]);
    expect(readFileSync(join(folder, "small.csv.torn"), "utf8")).toBe(`${piece}\n`);
    expect(readFileSync(join(folder, "small.csv"), "utf8").split(/\r?\n/)).toHaveLength(5);
  },
);

test.skipIf(!existsSync("/dev/null"))("--out to a device writes to it and does not replace it", () => {
  expect(call(...makeUpArgs, "--format", "text", "--out", "/dev/null").status).toBe(0);
  expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
});

test("a reader that closes its end early ends the command quietly with status 0", async () => {
  const child = spawn(process.execPath, [bundle, ...makeUpArgs], { cwd: folder });
  child.stdout.destroy();
  let stderr = "";
  child.stderr.on("data", (text) => {
    stderr += text;
  });
  const status = await new Promise((resolve) => child.on("close", resolve));
  expect([status, stderr]).toEqual([0, ""]);
});

/** A batch whose JSON report is far larger than the 64 KiB that a pipe holds. */
const large = (): string => {
  const orders = Array.from(
    { length: 300 },
    () => "  - { part: clip, shade: moss-light, quantity: 40 }\n",
  ).join("");
  writeFileSync(join(folder, "large.yaml"), starter.replace(/orders:\n(?: {2}-.*\n)+/, `orders:\n${orders}`));
  return "large.yaml";
};

test("a report larger than a pipe holds comes through whole", () => {
  const args = ["plan", large(), "--format", "json", "--quiet"];
  const { status, stdout } = call(...args);
  expect([status, stdout.length > 4 * 65536]).toEqual([0, true]);
  expect(call(...args, "--out", "large.json").status).toBe(0);
  expect(readFileSync(join(folder, "large.json"), "utf8")).toBe(stdout);
});

test("a reader that leaves in the middle of a large report ends the command quietly with status 0", async () => {
  const child = spawn(process.execPath, [bundle, "plan", large(), "--format", "json", "--quiet"], {
    cwd: folder,
  });
  let stderr = "";
  child.stderr.on("data", (text) => {
    stderr += text;
  });
  child.stdout.once("data", () => child.stdout.destroy());
  const status = await new Promise((resolve) => child.on("close", resolve));
  expect([status, stderr]).toEqual([0, ""]);
});

test.skipIf(!existsSync("/dev/full"))("a full disk behind stdout is an error, not a silent success", () => {
  const full = openSync("/dev/full", "w");
  const { status, stderr } = spawnSync(process.execPath, [bundle, ...makeUpArgs], {
    stdio: ["ignore", full, "pipe"],
    encoding: "utf8",
  });
  closeSync(full);
  expect([status, stderr]).toEqual([2, expect.stringContaining("could not be written")]);
});

test("costs that are drawn in threads are those drawn one by one, and the threads end with the command", () => {
  const names = ["one", "two", "three"];
  for (const name of names) expect(call("new", name).status).toBe(0);
  const drawn = (...files: readonly string[]) =>
    call("cost", ...files, "--spread", "--draws", "30", "--format", "ndjson");
  const together = drawn(...names);
  expect([together.status, together.stdout]).toEqual([0, names.map((name) => drawn(name).stdout).join("")]);
});
