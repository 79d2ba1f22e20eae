import { defaultReading } from "../../core/colour/resolve-colour.js";
import { type Reading, sameReading } from "../../core/model/colour.js";
import { standardReading } from "../../core/model/defaults.js";
import { colourReportOf } from "../../report/colour/report.js";
import { type Execute, type Request, type Result, refused, unplaced } from "../command.js";
import type { Io } from "../io.js";
import { reportCurves } from "./curves.js";
import { about, type Given, readUnder } from "./given.js";
import { readColours } from "./read-colours.js";
import { type ColourTask, readTask } from "./read-task.js";
import { reportGiven } from "./report-given.js";

type One = ColourTask["what"] & { readonly kind: "one" };

async function reportOne({ text, spec }: One, task: ColourTask, request: Request, io: Io): Promise<Result> {
  const { colours, diagnostics } = await readColours([["A", text]], spec, request, io);
  if (colours === undefined) return { diagnostics };
  const [given] = colours as [Given];
  const typed = task.reading ?? defaultReading([given.colour]);
  const own = readUnder(given, typed);
  const reading: Reading = {
    illuminant: task.illuminant ?? own.illuminant,
    observer: task.observer ?? own.observer,
  };
  const report = reportGiven(given, typed, reading);
  const said = [...diagnostics, ...about("A", report.faults).map(unplaced)];
  if (!report.ok) return { diagnostics: said };
  const carried = given.colour.kind !== "reflectance" && !sameReading(own, reading);
  return {
    diagnostics: said,
    report: colourReportOf(report.value, { given: given.said, ...(carried ? { carriedFrom: own } : {}) }),
  };
}

/** What a colour is, or every curve of a file. */
export const execute: Execute = async (request, io) => {
  const read = readTask(request);
  if (!read.ok) return refused(...read.faults);
  const task = read.value;
  const { what, illuminant = standardReading.illuminant, observer = standardReading.observer } = task;
  return what.kind === "one"
    ? reportOne(what, task, request, io)
    : reportCurves(what.file, { illuminant, observer }, io);
};
