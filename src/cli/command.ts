import type { Fault } from "../core/fault.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { FormatName } from "../report/format/formats.js";
import type { Report } from "../report/report.js";
import type { Io } from "./io.js";
import type { OutputOptions } from "./output/output-options.js";

/** An option of one command. */
export interface OptionDeclaration {
  /** As commander reads it: `--volume <quantity>`. */
  readonly flags: string;
  readonly description: string;
  readonly choices?: readonly string[];
  /** May be given several times; its value is the list. */
  readonly repeat?: boolean;
}

/** What help and completion need to know of a command; its work is loaded only when it runs. */
export interface CommandDeclaration {
  readonly name: string;
  /** Its heading in the help. */
  readonly group: string;
  /** As commander reads it: `<SPEC>`, `[FILE...]`; empty for none. */
  readonly arguments: string;
  readonly summary: string;
  /** Said after the summary in the command's own help. */
  readonly details?: string;
  readonly options: readonly OptionDeclaration[];
  readonly examples: readonly string[];
  readonly formats: readonly FormatName[];
  /** It writes a CSV file of the user's beside its result. */
  readonly writesCsv?: true;
  readonly load: () => Promise<Execute>;
}

/** One call of a command. */
export interface Request {
  readonly args: readonly string[];
  /** By the option's long name in camelCase. */
  readonly options: Readonly<Record<string, string | boolean | readonly string[] | undefined>>;
  readonly output: OutputOptions;
}

/** How a streamed result ended. */
export interface Ending {
  readonly diagnostics: readonly Diagnostic[];
  /** Part of the input was bad. */
  readonly status?: 2;
  readonly missed?: boolean;
  /** The result broke off: a file that was asked for is not made. */
  readonly spoilt?: boolean;
  /** Said on stderr at the end. */
  readonly note?: string;
}

/** A result written as it comes, so that its length costs no memory; diagnostics are printed as they arise. */
export type Stream = AsyncGenerator<string | readonly Diagnostic[], Ending>;

/** What a command hands back. With an error among the diagnostics nothing is written. */
export interface Result {
  /** A report in the format asked for, or text that is the same in every format. */
  readonly report?: Report | string;
  /** Instead of a report. */
  readonly stream?: Stream;
  readonly diagnostics: readonly Diagnostic[];
  /** Part of the input is bad: the report on the rest is written all the same. */
  readonly status?: 2;
  /** A limit or tolerance of the user's is not met: exit status 1. */
  readonly missed?: boolean;
  /** Said on stderr at the end. */
  readonly note?: string;
}

/** The work of a command. What a user can cause comes back as diagnostics; a throw is a defect. */
export type Execute = (request: Request, io: Io) => Promise<Result>;

/** A fault that belongs to no place in a file; its path is an option, said first. */
export const unplaced = ({ path, ...fault }: Fault): Diagnostic => ({
  ...fault,
  message: [...path, fault.message].join(": "),
  spans: [],
});

/** Nothing but faults of the command line. */
export const refused = (...faults: readonly Fault[]): Result => ({ diagnostics: faults.map(unplaced) });
