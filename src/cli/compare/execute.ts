import { compareColours } from "../../core/colour/difference/compare-colours.js";
import { changeGrade } from "../../core/colour/difference/grey-scale.js";
import { defaultReading } from "../../core/colour/resolve-colour.js";
import type { Fault } from "../../core/fault.js";
import { sameReading } from "../../core/model/colour.js";
import { standardReading } from "../../core/model/defaults.js";
import { compareReport } from "../../report/compare/report.js";
import { about, type Given, readAs, readUnder } from "../colour/given.js";
import { readColours } from "../colour/read-colours.js";
import { type Execute, type Request, type Result, refused, unplaced } from "../command.js";
import type { Io } from "../io.js";
import { comparePairs } from "./pairs.js";
import { type CompareTask, readTask } from "./read-task.js";

type Two = CompareTask["what"] & { readonly kind: "two" };

/** Compares two colours under one reading: the one asked for, else a shade's, else the usual one for such colours. */
async function compareTwo(
  { standard: first, sample: second, spec }: Two,
  task: CompareTask,
  request: Request,
  io: Io,
): Promise<Result> {
  const typed = [["A", first] as const, ["B", second] as const];
  const { colours, diagnostics } = await readColours(typed, spec, request, io);
  if (colours === undefined) return { diagnostics };
  const [standard, sample] = colours as [Given, Given];
  const usual = defaultReading([standard.colour, sample.colour]);
  const shades = colours
    .filter(({ colour }) => colour.kind !== "hex")
    .flatMap((given) => given.readUnder ?? []);
  const reading = task.reading ?? shades[0] ?? usual;
  const faults: Fault[] = [];
  const [one, other] = [standard, sample].map((given, i) => {
    const read = readAs(given, task.reading ?? usual, reading);
    faults.push(...about(i === 0 ? "standard" : "sample", read.faults));
    return read.ok ? read.value : undefined;
  });
  if (one === undefined || other === undefined)
    return { diagnostics: [...diagnostics, ...faults.map(unplaced)] };
  const compared = compareColours(one, other, reading, task.limit);
  const said = [...diagnostics, ...[...faults, ...compared.faults].map(unplaced)];
  if (!compared.ok) return { diagnostics: said };
  const origin = (given: Given) => {
    const own = readUnder(given, task.reading ?? usual);
    return {
      given: given.said,
      ...(given.colour.kind === "reflectance" || sameReading(own, reading) ? {} : { carriedFrom: own }),
    };
  };
  return {
    diagnostics: said,
    report: compareReport(
      compared.value,
      { standard: origin(standard), sample: origin(sample) },
      changeGrade(compared.value.standard.lab, compared.value.sample.lab),
    ),
    missed: compared.value.verdict?.pass === false,
  };
}

/** Colour differences of two colours or of a file of pairs. */
export const execute: Execute = async (request, io) => {
  const task = readTask(request);
  if (!task.ok) return refused(...task.faults);
  const { what, reading, limit } = task.value;
  if (what.kind === "two") return compareTwo(what, task.value, request, io);
  return comparePairs(
    {
      file: what.file,
      failFast: what.failFast,
      reading: reading ?? standardReading,
      ...(limit === undefined ? {} : { limit }),
    },
    request.output,
    io,
  );
};
