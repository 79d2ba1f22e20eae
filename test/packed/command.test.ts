import { spawn } from "node:child_process";
import { readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { commands } from "../../src/cli/commands.js";
import { type Call, calls } from "./calls.js";
import { writeInputs } from "./inputs.js";
import { installPacked } from "./install.js";
import { readBack } from "./written.js";

let folder = "";
beforeAll(async () => {
  folder = installPacked();
  writeInputs(folder);
  writeFileSync(join(folder, "earlier.json"), (await run(["cost", "restock.yaml", "--format", "json"])).out);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the installed command in the folder. */
const run = (args: readonly string[], stdin?: Uint8Array): Promise<Ended> =>
  new Promise((settle) => {
    const child = spawn(join(folder, "node_modules/.bin/dipwright"), args, {
      cwd: folder,
      shell: process.platform === "win32",
    });
    let out = "";
    let err = "";
    child.stdout.setEncoding("utf8").on("data", (text) => (out += text));
    child.stderr.setEncoding("utf8").on("data", (text) => (err += text));
    child.stdin.on("error", () => {}).end(stdin);
    child.on("close", (status) => settle({ status, out, err }));
  });

/**
 * Every call of every command. Writers do not know what was read: the first call has each format of the command, the
 * others take turns with the formats.
 */
const table = commands.flatMap(({ name, formats }) => {
  const possible = (call: Call) => formats.filter((format) => call.not?.includes(format) !== true);
  const all = calls[name] ?? [];
  const first = all.find((call) => possible(call).length === formats.length);
  return all.map((call, i) => {
    const own = possible(call);
    const formats = call === first ? own : [own[i % own.length]!];
    return { name, call, formats, title: `${name} of ${call.reads}`, written: formats.join(", ") };
  });
});

/** `new` makes a folder, another one for each format. */
const argsFor = (name: string, { args }: Call, format: string): readonly string[] =>
  name === "new" ? args.map((folder) => `${folder}-${format}`) : args;

test("every command is in the table with each of its formats, and nothing else", () => {
  expect(Object.keys(calls).sort()).toEqual(commands.map(({ name }) => name).sort());
  for (const { name, formats } of commands) {
    const tried = table.filter((row) => row.name === name).flatMap((row) => row.formats);
    expect([name, new Set(tried)]).toEqual([name, new Set(formats)]);
  }
});

test.each(table)("installed, $title writes $written", async ({ name, call, formats }) => {
  const ended = await Promise.all(
    formats.map(async (format) => ({
      format,
      ...(await run([name, ...argsFor(name, call, format), "--format", format, "--quiet"], call.stdin)),
    })),
  );
  expect(ended.map(({ format, status, err }) => [format, status, err])).toEqual(
    formats.map((format) => [format, 0, ""]),
  );
  for (const { format, out } of ended)
    expect(() => readBack[format](out), `${format}: ${out.slice(0, 200)}`).not.toThrow();
});

test("installed, the files that new writes can be planned", async () => {
  expect((await run(["new", "first"])).status).toBe(0);
  expect((await run(["plan", "first/batch.yaml", "--quiet"])).status).toBe(0);
});

test("no file of the installed command has more than 400 kB", () => {
  const dist = join(folder, "node_modules/dipwright/dist");
  const files = [
    join(dist, "dipwright.js"),
    ...readdirSync(join(dist, "parts")).map((name) => join(dist, "parts", name)),
  ];
  expect(files.filter((file) => statSync(file).size > 400_000)).toEqual([]);
});
