import { nearest } from "../../batch-file/issues/nearest.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Tank } from "../../core/model/batch.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { type Request, unplaced } from "../command.js";
import type { Io } from "../io.js";

/** A tank and how parts are handled there. */
export interface TankRead {
  readonly found?: { readonly tank: Tank; readonly handling: Batch["handling"] };
  readonly diagnostics: readonly Diagnostic[];
}

/** The tank that is meant: the one named, or the only one there is. */
function pick({ tanks }: Batch, typed: string | undefined): Outcome<Tank> {
  const names = tanks.map(({ name }) => name);
  const [only, ...others] = tanks;
  if (typed === undefined)
    return only !== undefined && others.length === 0
      ? done(only)
      : failed(
          error(
            "usage",
            [],
            "--tank is needed: the spec has several tanks",
            `write --tank with one of ${names.join(", ")}`,
          ),
        );
  const tank = tanks.find(({ name }) => name === typed);
  if (tank !== undefined) return done(tank);
  const near = nearest(typed, names);
  return failed(
    error(
      "undefined-name",
      [],
      `--tank: no tank is named "${typed}"`,
      near === undefined ? `the spec has ${names.join(", ")}` : `did you mean ${near}?`,
    ),
  );
}

/** Reads the tank from a batch file, which needs nothing but tanks. */
export async function readTank(
  spec: string,
  typed: string | undefined,
  request: Request,
  io: Io,
): Promise<TankRead> {
  const { readBatchFile } = await import("../batch/read.js");
  const { batch, diagnostics } = await readBatchFile(spec, request, io, { needs: ["tanks"] });
  if (batch === undefined) return { diagnostics };
  const tank = pick(batch, typed);
  const all = [...diagnostics, ...tank.faults.map(unplaced)];
  return tank.ok
    ? { found: { tank: tank.value, handling: batch.handling }, diagnostics: all }
    : { diagnostics: all };
}
