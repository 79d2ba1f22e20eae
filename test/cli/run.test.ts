import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { CommandDeclaration } from "../../src/cli/command.js";
import { commands } from "../../src/cli/commands.js";
import { foldCommand } from "../../src/cli/fold-command.js";
import { makeUpArgs, runFake } from "./fake-io.js";

test("run returns 0 and prints the version of package.json on --version and -V", async () => {
  const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  for (const option of ["--version", "-V"])
    expect(await runFake([option])).toMatchObject({ status: 0, out: `${version}\n`, err: "" });
});

test("run returns 2 and prints the help on stderr where there is no command, with or without options", async () => {
  const { out: help } = await runFake(["--help"]);
  for (const args of [[], ["--strict"], ["--format", "json"]])
    expect([args, await runFake(args)]).toEqual([args, { status: 2, out: "", err: help, files: new Map() }]);
});

test("run returns 0 and names every command on --help", async () => {
  const { status, out, err } = await runFake(["--help"]);
  expect([status, err]).toEqual([0, ""]);
  for (const { name, summary } of commands) {
    expect(out).toContain(`  ${name}`);
    expect(out.replace(/\s+/g, " ")).toContain(summary);
  }
});

test("the help of every command fits 60 and 80 columns and ends in its examples", async () => {
  for (const columns of [60, 80, 200, undefined])
    for (const args of [["--help"], ...commands.map(({ name }) => [name, "--help"])]) {
      const { status, out } = await runFake(args, { columns });
      expect(status).toBe(0);
      if (columns !== 200)
        for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(columns ?? 80);
      expect(out).toMatch(/\nExamples?:\n {2}dipwright /);
    }
});

/** A command line as a shell would part it, without what it redirects. */
const words = (line: string): string[] =>
  (
    line
      .replace(/\\\n/g, " ")
      .replace(/ < \S+/, "")
      .match(/(?:'[^']*'|"[^"]*"|[^\s'"])+/g) ?? []
  ).map((word) => word.replace(/['"]/g, ""));

test("every example of the help is a command line that run reads without fault", async () => {
  const idle = commands.map((command) => ({
    ...command,
    load: async () => async () => ({ diagnostics: [] }),
  }));
  for (const { name, examples } of commands) {
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) {
      const [called, ...args] = words(example);
      expect([called, args[0]]).toEqual(["dipwright", name]);
      expect([example, (await runFake(args, {}, idle)).status]).toEqual([example, 0]);
    }
  }
});

test("run returns 2 and says which command was meant on a misspelt one", async () => {
  const { status, out, err } = await runFake(["mxi"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toBe("error[usage]: unknown command 'mxi'\n  help: did you mean mix?\n");
});

test("run prints the help of a command on help COMMAND as on COMMAND --help", async () => {
  expect(await runFake(["help"])).toEqual(await runFake(["--help"]));
  expect(await runFake(["help", "plan"])).toEqual(await runFake(["plan", "--help"]));
  expect((await runFake(["help", "plan"])).out).toContain("Usage: dipwright plan");
  const { status, out, err } = await runFake(["help", "plann"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toBe("error[usage]: unknown command 'plann'\n  help: did you mean plan?\n");
});

test("run returns 2 and says which command was meant on one in capitals", async () => {
  for (const name of ["PLAN", "Plan"]) {
    const { status, err } = await runFake([name, "batch.yaml"]);
    expect([status, err]).toEqual([
      2,
      `error[usage]: unknown command '${name}'\n  help: did you mean plan?\n`,
    ]);
  }
});

test("the help says from where --set counts the items of a list", async () => {
  expect((await runFake(["plan", "--help"])).out.replace(/\s+/g, " ")).toContain(
    "items of lists count from 0: orders.0 is the first",
  );
});

test("foldCommand parts a long command line so that a shell reads it as one", () => {
  const line = "dipwright mix --volume 6L --dilution 1:9 --temperature 80C";
  expect(foldCommand(line, 80)).toBe(`  ${line}`);
  expect(foldCommand(line, 60)).toBe(`  ${line}`);
  expect(foldCommand(line, 48)).toBe(
    "  dipwright mix --volume 6L --dilution 1:9 \\\n      --temperature 80C",
  );
});

test("run returns 2 and says which option was meant on a misspelt one", async () => {
  const { status, out, err } = await runFake(["mix", "--dilutoin", "1:9"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toBe("error[usage]: unknown option '--dilutoin'\n  help: did you mean --dilution?\n");
});

test("run returns 2 where a value is missing or a word is too many", async () => {
  for (const args of [["mix", "--volume"], ["mix", "six"], ["--format"]]) {
    const { status, out, err } = await runFake(args);
    expect([args, status, out]).toEqual([args, 2, ""]);
    expect(err).toMatch(/^error\[usage\]: .+\n {2}help: .+\n$/);
  }
});

test("run says what SPEC is where it is missing", async () => {
  const { status, err } = await runFake(["plan"]);
  expect(status).toBe(2);
  expect(err).toContain("help: SPEC is a batch file: dipwright new DIR writes one");
  expect((await runFake(["measure"])).err).toContain("help: dipwright --help lists");
});

const failing = (thrown: unknown): CommandDeclaration => ({
  ...commands.find(({ name }) => name === "mix")!,
  load: async () => async () => {
    throw thrown;
  },
});

test("run returns 70 on a defect, says how to report it and shows the stack only when asked", async () => {
  for (const debug of [undefined, "1"]) {
    const env = debug === undefined ? {} : { DIPWRIGHT_DEBUG: debug };
    const { status, out, err } = await runFake(["mix"], { env }, [failing(new TypeError("no such thing"))]);
    expect([status, out]).toEqual([70, ""]);
    expect(err).toContain("failed through a fault of its own: no such thing");
    expect(err).toContain("report it");
    expect(err.includes("run.test.ts")).toBe(debug === "1");
  }
});

test("global options are read before and after the command", async () => {
  const after = await runFake([...makeUpArgs, "--format", "json"]);
  const before = await runFake(["--format", "json", ...makeUpArgs]);
  expect(after.status).toBe(0);
  expect(before).toEqual(after);
});
