import type { BatchRead } from "../../batch-file/batch-read.js";
import { nearest } from "../../batch-file/issues/nearest.js";
import type { Fault } from "../../core/fault.js";
import type { Batch } from "../../core/model/batch.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { namesInWords } from "../batch/names-in-words.js";
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

/** A word that is neither a colour nor a shade: with the shades that it may mean. */
function orShade(fault: Fault, text: string, batch: Batch | undefined): Fault {
  if (fault.code !== "colour-unknown" || !/^[a-z][\w.-]*$/i.test(text)) return fault;
  if (batch === undefined) return { ...fault, help: `${fault.help} A shade needs --spec FILE.` };
  const shades = batch.shades.map(({ name }) => name);
  const near = nearest(text, shades);
  return {
    ...fault,
    message: `"${text}" is neither a shade of the batch nor a colour`,
    help: near === undefined ? `the shades are ${namesInWords(shades)}` : `did you mean ${near}?`,
  };
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
        shade === undefined ? unplaced(orShade(fault, text, batch)) : toDiagnostic(fault, locate),
      ),
    );
    if (given.ok) colours.push(given.value);
  }
  return hasErrors(diagnostics) ? { diagnostics } : { colours, diagnostics, ...(batch && { batch }) };
}
