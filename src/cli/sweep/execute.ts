import type { OpenBatch } from "../../batch-file/workshop.js";
import { error, isError } from "../../core/fault.js";
import { combinations } from "../../core/maths/sampling/combinations.js";
import type { Dye } from "../../core/model/batch.js";
import { planBatch } from "../../core/plan/plan.js";
import { planResults } from "../../core/plan/results/plan-results.js";
import type { SharedWork } from "../../core/plan/run/shared-work.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { type SweepRow, sweepReport } from "../../report/sweep/report.js";
import { openBatchFile, workshopOf } from "../batch/read.js";
import { type Execute, refused, unplaced } from "../command.js";
import { readVaried, type Varied } from "./vary.js";

/** Rows that a table can be read or drawn from; more are a slip of the hand. */
const mostCombinations = 100_000;

type Tried = SweepRow & {
  readonly diagnostics: readonly Diagnostic[];
  readonly currency: string | null;
  readonly dyes: readonly Dye[];
};

async function tryOne(
  open: OpenBatch,
  chosen: readonly Varied["values"][number][],
  shared: SharedWork,
): Promise<Tried> {
  const values = chosen.map(({ text }) => text);
  const fails = (diagnostics: readonly Diagnostic[]): Tried => {
    const { code, message } = diagnostics.find(isError)!;
    return { values, results: null, error: { code, message }, diagnostics, currency: null, dyes: [] };
  };
  const read = await open.settle(chosen.map(({ change }) => change));
  if (read.batch === undefined) return fails(read.diagnostics);
  const plan = planBatch(read.batch, shared);
  if (!plan.ok) return fails(plan.faults.map((fault) => toDiagnostic(fault, read.locate)));
  return {
    values,
    results: planResults(plan.value),
    error: null,
    diagnostics: [],
    currency: plan.value.currency,
    dyes: read.batch.dyes,
  };
}

/** One warning for each kind of error, with the first combination that has it. */
function failures(tried: readonly Tried[], varied: readonly Varied[]): Diagnostic[] {
  const codes = new Set(tried.flatMap((one) => one.error?.code ?? []));
  return [...codes].map((code) => {
    const all = tried.filter((one) => one.error?.code === code);
    const first = all[0]!;
    const where = varied.map(({ key }, i) => `${key}=${first.values[i]}`).join(", ");
    return {
      code: "combination-failed",
      severity: "warning",
      message: `${all.length} of ${tried.length} combinations cannot be worked (${code}); the first is ${where}: ${first.error!.message}`,
      spans: [],
    };
  });
}

/** A dye that is varied in what its swatches belong to: they would move with it, and dip times stay. */
function swatchesMove(varied: readonly Varied[], dyes: readonly Dye[]): Diagnostic[] {
  return varied.flatMap(({ key }) => {
    const [, name, what] = /^dyes\.(.+)\.(dilution|temperature)$/.exec(key) ?? [];
    const dye = dyes.find((one) => one.name === name);
    if (dye === undefined || dye.measuredAt?.[what === "dilution" ? "dilution" : "celsius"] !== undefined)
      return [];
    return {
      code: "swatches-move",
      severity: "warning",
      message: `${key} varies, and dye "${name}" does not say what it was measured at: its swatches or rate are taken as those of each value in turn`,
      help: `write measuredAt: { ${what}: ${what === "dilution" ? "1:9" : "80 °C"} } for the dye, so that they stay where they were dipped`,
      spans: [],
    };
  });
}

/** A plan's results over every combination of some values. */
export const execute: Execute = async (request, io) => {
  const given = (request.options.vary ?? []) as readonly string[];
  if (given.length === 0)
    return refused(
      error("usage", [], "--vary is needed: nothing varies", "write --vary tanks.six.volume='6 L,8 L'"),
    );
  const read = await Promise.all(given.map(readVaried));
  const diagnostics = read.flatMap((one) => one.diagnostics);
  const varied = read.flatMap((one) => one.varied ?? []);
  const twice = varied.find(({ key }, i) => varied.findIndex((other) => other.key === key) < i);
  if (twice)
    diagnostics.push(
      unplaced(
        error("usage", [], `--vary ${twice.key} is given twice`, "write all its values in one --vary"),
      ),
    );
  const count = varied.reduce((product, { values }) => product * values.length, 1);
  if (count > mostCombinations)
    diagnostics.push(
      unplaced(
        error(
          "usage",
          [],
          `--vary: ${count} combinations are too many`,
          `vary fewer values: at most ${mostCombinations}`,
        ),
      ),
    );
  if (diagnostics.length > 0) return { diagnostics };

  const workshop = workshopOf(io);
  const open = await openBatchFile(request.args[0] ?? "-", request, io, {
    needs: ["bathsIfDyed", "orders"],
    workshop,
  });
  if (open.diagnostics.length > 0) return { diagnostics: (await open.settle()).diagnostics };
  const tried: Tried[] = [];
  for (const chosen of combinations(varied.map(({ values }) => values)))
    tried.push(await tryOne(open, chosen, workshop.work));
  if (tried.every(({ results }) => results === null)) return { diagnostics: tried[0]!.diagnostics };
  const wanted = request.options.result as string | undefined;
  const report = sweepReport(
    varied.map(({ key, names, values }) => ({ key, names, values: values.map(({ text }) => text) })),
    tried.map(({ values, results, error: failed }) => ({ values, results, error: failed })),
    {
      currency: tried.find(({ results }) => results)!.currency,
      wanted: wanted?.split(",").map((name) => name.trim()),
    },
  );
  if (!report.ok) return refused(...report.faults);
  const dyes = tried.find(({ results }) => results)!.dyes;
  return {
    report: report.value,
    diagnostics: [...swatchesMove(varied, dyes), ...failures(tried, varied)],
  };
};
