import { expect } from "vitest";
import type { Fault } from "../../../../src/core/fault.js";
import { measureMesh } from "../../../../src/core/part/measure.js";
import type { MeshMeasure, MeshOptions } from "../../../../src/core/part/mesh-measure.js";

/** The measure of a file that must have one, and the codes of its warnings. */
export async function measured(
  bytes: Uint8Array,
  options: MeshOptions = {},
): Promise<MeshMeasure & { codes: string[]; faults: readonly Fault[] }> {
  const outcome = await measureMesh(bytes, options);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return { ...outcome.value, codes: outcome.faults.map((f) => f.code), faults: outcome.faults };
}

/** The one error of a file that must be refused. */
export async function refusal(bytes: Uint8Array): Promise<Fault> {
  const outcome = await measureMesh(bytes);
  expect(outcome.ok).toBe(false);
  const errors = outcome.faults.filter((f) => f.severity === "error");
  expect(errors).toHaveLength(1);
  return errors[0]!;
}

/** Equal to so many parts of the expected value. */
export function near(actual: number, expected: number, relative = 1e-9): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}
