import { Command, CommanderError, Help, Option } from "commander";
import { formatsOf } from "../report/format/formats.js";
import type { CommandDeclaration, OptionDeclaration } from "./command.js";
import { foldCommand } from "./fold-command.js";
import type { Io } from "./io.js";
import { version } from "./version.js";

/** The command that was called and what was typed after it. */
export interface Call {
  readonly command: CommandDeclaration;
  readonly args: readonly string[];
  readonly options: Readonly<Record<string, unknown>>;
}

export { CommanderError };

const collect = (value: string, before: string[] | undefined): string[] => [...(before ?? []), value];

function option({ flags, description, choices, repeat }: OptionDeclaration): Option {
  const made = new Option(flags, description);
  if (choices !== undefined) made.choices(choices);
  if (repeat === true) made.argParser(collect);
  return made;
}

const either = (names: readonly string[]): string => names.join(", ").replace(/, (?=[^,]*$)/, " or ");
const someHave = formatsOf("lines", "picture").filter((name) => !formatsOf().includes(name));

const everywhere: readonly OptionDeclaration[] = [
  {
    flags: "--format <name>",
    description: `${either(formatsOf())}; ${either(someHave)} where a command has it`,
  },
  { flags: "--out <file>", description: "write the result to a file, whole or not at all" },
  {
    flags: "--set <key.path=value>",
    description:
      'change one value of the batch; may be repeated; items of lists count from 0: orders.0 is the first; put a name with a dot in quotes: parts."clip v1.2".mass; include cannot be set',
    repeat: true,
  },
  { flags: "--strict", description: "exit status 1 on any warning" },
  { flags: "--quiet", description: "say nothing but errors" },
  { flags: "--no-color", description: "no colour" },
  { flags: "--delimiter <sign>", description: "of CSV columns; default a comma" },
  { flags: "--decimal <name>", description: "comma or point in CSV; comma sets the delimiter to ;" },
  { flags: "--bom", description: "start CSV with a byte order mark" },
];

const examples = (lines: readonly string[], columns: number): string =>
  `\n${lines.length > 1 ? "Examples" : "Example"}:\n${lines.map((line) => foldCommand(line, columns)).join("\n")}`;

const exitStatus =
  "Exit status: 0 done; 1 done, but a limit, tolerance or --strict failed; 2 bad input or usage, nothing written; 70 a defect in dipwright.";

/** Commands before options: most who ask for help look for a command. */
function commandsFirst(this: Help, command: Command, helper: Help): string {
  const parts = Help.prototype.formatHelp.call(this, command, helper).trimEnd().split("\n\n");
  const options = parts.filter((part) => part.startsWith("Options:"));
  const others = parts.filter((part) => !options.includes(part));
  return `${(command.parent === null ? [...others, ...options] : parts).join("\n\n")}\n`;
}

/**
 * Builds the command line; `called` hears which command was asked for. Help and version go to `out`, help that
 * nobody asked for to `err`.
 */
export function tree(
  commands: readonly CommandDeclaration[],
  called: (call: Call) => void,
  { out, err }: Pick<Io, "out" | "err">,
  columns: number,
): Command {
  const program = new Command("dipwright");
  program
    .description("What to mix, how long to dip, when to top up and what each good part costs.")
    .usage("COMMAND [options]")
    .version(version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: out,
      writeErr: err,
      // `say` prints faults.
      outputError: () => {},
      getOutHelpWidth: () => columns,
      getErrHelpWidth: () => columns,
      getOutHasColors: () => true,
      getErrHasColors: () => true,
    })
    .configureHelp({
      showGlobalOptions: true,
      minWidthToWrap: 20,
      formatHelp: commandsFirst,
      styleTitle: (title) => (title === "Global Options:" ? "Everywhere:" : title),
      subcommandTerm: (sub) =>
        [
          sub.name(),
          ...sub.registeredArguments.map(
            (a) => (a.required ? a.name() : `[${a.name()}]`) + (a.variadic ? "..." : ""),
          ),
        ].join(" "),
      visibleGlobalOptions: (sub) => (sub.parent?.options ?? []).filter((o) => o.long !== "--version"),
    })
    .addHelpText("after", examples(["dipwright mix --volume 6L --dilution 1:9 --temperature 80C"], columns))
    .addHelpText(
      "after",
      `\nMore on a command: dipwright COMMAND --help\n${new Help().boxWrap(exitStatus, Math.min(columns, 72))}`,
    );
  for (const made of everywhere.map(option)) program.addOption(made);
  for (const command of commands) {
    const sub = program
      .command(`${command.name} ${command.arguments}`.trim())
      .helpGroup(`${command.group}:`)
      .summary(command.summary)
      .description(
        [`${command.summary[0]?.toUpperCase()}${command.summary.slice(1)}.`, command.details]
          .filter(Boolean)
          .join(" "),
      )
      .addHelpText("after", examples(command.examples, columns))
      .action(() => called({ command, args: sub.args, options: sub.optsWithGlobals() }));
    for (const declared of command.options) sub.addOption(option(declared));
  }
  return program;
}
