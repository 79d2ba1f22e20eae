import { error, type Fault } from "../../core/fault.js";
import { namedMapKeys, namedMaps } from "../schema/named-maps.js";
import type { Path } from "../source/source.js";
import { isAmount } from "../to-batch/amounts.js";
import type { Spec } from "../to-batch/complete.js";

/** A batch file that is worked together with others. */
export interface NamedSpec {
  readonly name: string;
  readonly spec: Spec;
}

/** A fault of one of the files, by its position. */
export interface FaultOfFile {
  readonly file: number;
  readonly fault: Fault;
}

/** What all files must give alike, and what costs need alike beside it. */
const common = ["room", "handling", "yield", "rework"] as const;
const ofCosts = ["currency", "rates", "consumables", "pricing"] as const;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** Where two values first differ; undefined where they are the same. */
function difference(a: unknown, b: unknown, path: Path = []): Path | undefined {
  if (Object.is(a, b)) return undefined;
  if (!isObject(a) || !isObject(b)) return path;
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = difference(a[key], b[key], isAmount(a) ? path : [...path, key]);
    if (found !== undefined) return found;
  }
  return undefined;
}

const help = "write it once, in a file that both include, or use another name";

/** What files that are worked together give differently; `costs`: what they cost is asked for too. */
export function sameInAll(files: readonly NamedSpec[], costs: boolean): FaultOfFile[] {
  const faults: FaultOfFile[] = [];
  const tell = (file: number, path: Path, what: string, first: string): void => {
    faults.push({
      file,
      fault: error("differs", path, `${what} is not the same here as in ${first}`, help),
    });
  };
  for (const kind of namedMapKeys) {
    const first = new Map<string, { readonly value: unknown; readonly file: string }>();
    files.forEach(({ name: file, spec }, i) => {
      for (const [name, value] of Object.entries(spec[kind])) {
        const before = first.get(name);
        if (before === undefined) first.set(name, { value, file });
        else {
          const at = difference(before.value, value);
          const key =
            at === undefined || at.length === 0
              ? ""
              : `${at.filter((step) => typeof step === "string" && Number.isNaN(Number(step))).join(".")} of `;
          if (at !== undefined)
            tell(i, [kind, name, ...at], `${key}${namedMaps[kind]} "${name}"`, before.file);
        }
      }
    });
  }
  const [first, ...others] = files;
  for (const key of costs ? [...common, ...ofCosts] : common)
    others.forEach(({ spec }, i) => {
      const at = difference(first!.spec[key], spec[key]);
      if (at !== undefined) tell(i + 1, [key, ...at], [key, ...at].join("."), first!.name);
    });
  // A file that does not say when work starts leaves it to the others.
  const starting = files.find(({ spec }) => spec.startAt !== undefined);
  files.forEach(({ spec }, i) => {
    if (spec.startAt !== undefined && spec.startAt !== starting!.spec.startAt)
      tell(i, ["startAt"], "startAt", starting!.name);
  });
  return faults;
}
