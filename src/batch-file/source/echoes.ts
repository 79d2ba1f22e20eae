import type { PartFault } from "../issues/part-fault.js";
import type { Path } from "./source.js";

export const pathKey = (path: Path): string => path.join("\n");

/**
 * Drops faults that follow from another one: a key that is missing because it is misspelt.
 */
export function withoutEchoes(faults: readonly PartFault[]): PartFault[] {
  const told = new Set<string>();
  for (const { fault, meant } of faults)
    if (meant !== undefined) told.add(pathKey([...fault.path.slice(0, -1), meant, "missing-key"]));
  return faults.filter(({ fault }) => !told.has(pathKey([...fault.path, fault.code])));
}
