import type { BatchRead } from "../../batch-file/batch-read.js";
import type { Batch } from "../../core/model/batch.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { type Request, unplaced } from "../command.js";
import type { Io } from "../io.js";
import { type Given, givenColour } from "./given.js";

/** Colours named on the command line, and what is wrong with them. No colours where anything is. */
export interface ColoursRead {
  readonly colours?: readonly Given[];
  /** The batch whose shades were named. */
  readonly batch?: Batch;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads colours, each under the name of its argument; with `spec` a name may be a shade of that batch. */
export async function readColours(
  typed: readonly (readonly [argument: string, text: string])[],
  spec: string | undefined,
  request: Request,
  io: Io,
): Promise<ColoursRead> {
  let read: BatchRead | undefined;
  let batch: Batch | undefined;
  if (spec !== undefined) {
    read = await (await import("../batch/read.js")).readBatchFile(spec, request, io, { needs: ["shades"] });
    if (read.batch === undefined) return { diagnostics: read.diagnostics };
    batch = read.batch;
  }
  const locate = read?.locate ?? (() => undefined);
  const diagnostics: Diagnostic[] = [...(read?.diagnostics ?? [])];
  const colours: Given[] = [];
  for (const [argument, text] of typed) {
    const shade = batch?.shades.find(({ name }) => name === text);
    const given =
      shade === undefined || batch === undefined
        ? givenColour(text, argument)
        : (await import("./shade.js")).shadeColour(shade, batch);
    diagnostics.push(
      ...given.faults.map((fault) =>
        locate(fault.path) === undefined ? unplaced(fault) : toDiagnostic(fault, locate),
      ),
    );
    if (given.ok) colours.push(given.value);
  }
  return hasErrors(diagnostics) ? { diagnostics } : { colours, diagnostics, ...(batch && { batch }) };
}
