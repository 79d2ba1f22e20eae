import { done, error, failed, type Outcome } from "../core/fault.js";
import type { CommandDeclaration, Request } from "./command.js";
import { commands as known } from "./commands.js";
import { defect } from "./defect.js";
import { ownInput, watched } from "./files/own-input.js";
import type { Io } from "./io.js";
import { finish } from "./output/finish.js";
import { checkOutput, type RawOutputOptions } from "./output/output-options.js";
import { turnDown } from "./output/say.js";
import { terminalColumns } from "./output/terminal-columns.js";
import { type Call, CommanderError, tree } from "./tree.js";

/** `help` and `help plan` as `--help` and `plan --help`. */
function asOption(argv: readonly string[], commands: readonly CommandDeclaration[]): readonly string[] {
  const [first, second, ...more] = argv;
  if (first !== "help" || commands.some(({ name }) => name === "help")) return argv;
  if (second === undefined || second.startsWith("-")) return ["--help"];
  // An unknown command is refused by its name, before its arguments are read.
  return commands.some(({ name }) => name === second) ? [second, "--help"] : [second, ...more];
}

/** The command that was meant by a name in capitals. */
const inAnyCase = (said: string, commands: readonly CommandDeclaration[]): string | undefined => {
  const typed = /^unknown command '(.*)'$/.exec(said)?.[1]?.toLowerCase();
  return commands.find(({ name }) => name === typed)?.name;
};

/** What was typed, as far as commander can tell: a call, or nothing left to do (help, version), or a fault. */
function read(
  argv: readonly string[],
  io: Io,
  commands: readonly CommandDeclaration[],
): Outcome<Call | undefined> {
  let call: Call | undefined;
  const program = tree(
    commands,
    (heard) => {
      call = heard;
    },
    io,
    Math.min(terminalColumns(io.columns), 100),
  );
  try {
    program.parse([...asOption(argv, commands)], { from: "user" });
  } catch (thrown) {
    if (!(thrown instanceof CommanderError)) throw thrown;
    if (thrown.exitCode === 0) return done(undefined);
    // Without a command the help goes to stderr; no fault is added.
    if (thrown.code === "commander.help") return failed();
    const [said = "", ...more] = thrown.message.replace(/^error: /, "").split("\n");
    const near =
      inAnyCase(said.replace(/\.$/, ""), commands) ??
      /\(Did you mean (?:one of )?(.+?)\?\)/.exec(more.join(" "))?.[1];
    return failed(
      error(
        "usage",
        [],
        said.replace(/\.$/, ""),
        near !== undefined
          ? `did you mean ${near}?`
          : said.includes("argument 'SPEC'")
            ? "SPEC is a batch file: dipwright new DIR writes one"
            : "dipwright --help lists commands and options",
      ),
    );
  }
  return done(call);
}

/**
 * Runs one command line and returns the exit status: 0 done; 1 done, but a limit, tolerance or `--strict`
 * failed; 2 bad input or usage, nothing written; 70 a defect of our own.
 */
export async function run(
  argv: readonly string[],
  io: Io,
  commands: readonly CommandDeclaration[] = known,
): Promise<number> {
  const refusedColour = argv.includes("--no-color");
  try {
    const call = read(argv, io, commands);
    if (!call.ok) return await turnDown(call.faults, io, refusedColour);
    if (call.value === undefined) return 0;
    const { command, args, options } = call.value;
    const output = checkOutput(options as RawOutputOptions, command);
    if (!output.ok) return await turnDown(output.faults, io, refusedColour);
    const execute = await command.load();
    const request: Request = { args, options: options as Request["options"], output: output.value };
    const { io: seen, reads } = watched(io);
    const before = ownInput(request, io, reads);
    if (before) return await turnDown([before], io, refusedColour);
    const result = await execute(request, seen);
    const after = () => ownInput(request, io, reads);
    const fault = after();
    if (fault) return await turnDown([fault], io, refusedColour);
    return await finish(result, output.value, io, after);
  } catch (thrown) {
    io.err(defect(thrown, io.env));
    return 70;
  }
}
