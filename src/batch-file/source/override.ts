import { listed } from "../../core/quantity/text/listed.js";
import type { Diagnostic, Span } from "../../diagnostics/diagnostic.js";
import { nearest } from "../issues/nearest.js";
import { isTextAt } from "../issues/schema-at.js";
import { batchSchema } from "../schema/batch.js";
import { isNamedMap } from "../schema/named-maps.js";
import { YamlPlaces } from "../yaml/yaml-places.js";
import { yamlPlain } from "../yaml/yaml-plain.js";
import { readYaml } from "../yaml/yaml-read.js";
import { keyPathText, readKeyPath, type Step } from "./key-path.js";
import { type Lines, linesOf } from "./lines.js";
import type { Merged } from "./merge.js";
import type { Origin } from "./origin.js";
import type { Path, Source } from "./source.js";

/** An option that changes values of a batch: `--set key.path=value`. */
export type OverrideOption = "--set" | "--vary";

/** One change, ready to apply to any batch. */
export interface Override {
  readonly option: OverrideOption;
  /** "tanks.six.volume=6 L" */
  readonly text: string;
  readonly steps: readonly Step[];
  readonly source: Source;
}

/** Most keys in a help line: more than names, since a map of a batch has up to a dozen. Common practice, no source. */
const mostKeys = 12;

const fault = (
  { option, text }: Pick<Override, "option" | "text">,
  start: number,
  end: number,
  message: string,
  help: string,
): Diagnostic => ({
  code: "override",
  severity: "error",
  message,
  help,
  spans: [linesOf(option, text).span(start, end)],
});

const isObject = (value: unknown): value is Record<string, unknown> | unknown[] =>
  typeof value === "object" && value !== null;

/** Reads the value of an argument; its places are places in the argument. */
async function argumentValue(
  option: OverrideOption,
  text: string,
  above: Path,
  lines: Lines & { whole: () => Span },
): Promise<{ source?: Source; diagnostics: readonly Diagnostic[] }> {
  const { root, diagnostics } = await readYaml(text, lines);
  if (root === undefined) return { diagnostics };
  const { plain, diagnostics: more } = yamlPlain(root, lines, (path) =>
    isTextAt(batchSchema(), [...above, ...path]),
  );
  if (more.length > 0) return { diagnostics: more };
  const places = new YamlPlaces(root, text);
  const locate: Source["locate"] = (path, part) => {
    if (path.length === 0 && part === "key") return lines.whole();
    const { key, value } = places.ranges(path);
    return lines.span(...((part === "key" ? key : value) ?? value ?? [0, 1]));
  };
  return { source: { name: option, plain, locate }, diagnostics: [] };
}

/** Reads one `key.path=value`: the value as YAML. Positions in it point at the argument. */
export async function readOverride(
  text: string,
  option: OverrideOption = "--set",
): Promise<{ read?: Override; diagnostics: readonly Diagnostic[] }> {
  const path = readKeyPath(text);
  if (!path.ok && path.why !== "no-equals")
    return {
      diagnostics: [
        fault(
          { option, text },
          path.at,
          path.why === "open-quote" ? text.length : path.at + 1,
          path.why === "open-quote" ? "this quote is not closed" : "a quoted name needs a dot or = after it",
          `put a name that contains a dot in quotes: ${option} 'parts."clip v1.2".mass=5 g'`,
        ),
      ],
    };
  if (!path.ok || path.equals < 1)
    return {
      diagnostics: [
        fault(
          { option, text },
          0,
          text.length,
          "the key or the value is missing",
          `write ${option} key.path=value, such as ${option} tanks.six.volume='6 L'`,
        ),
      ],
    };
  const { equals, steps } = path;
  const [{ name, start, end } = { name: "", start: 0, end: 0 }] = steps;
  if (name === "include")
    return {
      diagnostics: [
        fault(
          { option, text },
          start,
          end,
          "an include cannot be set on the command line",
          "write the include in the batch file, or set the keys of the included file one by one",
        ),
      ],
    };
  const lines = linesOf(option, text);
  const { source, diagnostics } = await argumentValue(
    option,
    text.slice(equals + 1),
    steps.map(({ name }) => name),
    {
      whole: () => lines.span(0, equals),
      span: (from, to) => lines.span(from + equals + 1, to + equals + 1),
    },
  );
  if (source === undefined) return { diagnostics };
  return { read: { option, text, steps, source }, diagnostics: [] };
}

/**
 * Applies one change. A list item is named by its number from 0, and all of the path but its last key must exist.
 */
export function applyOverride(
  merged: Merged,
  change: Override,
): { merged: Merged; diagnostics: Diagnostic[] } {
  const { steps, source } = change;
  const namesTo = (depth: number): string => keyPathText(steps.slice(0, depth).map(({ name }) => name));
  const set = (
    given: unknown,
    origin: Origin,
    depth: number,
  ): { data: unknown; origin: Origin } | Diagnostic => {
    if (depth === steps.length) return { data: source.plain, origin: { source, path: [] } };
    const { name: step, start, end } = steps[depth]!;
    const last = depth === steps.length - 1;
    const data = given ?? {};
    // A name must be defined before a key below it is set.
    const mustExist = depth === 1 && !last && isNamedMap(steps[0]!.name);
    const isList = Array.isArray(data);
    if (isList && !(/^\d+$/.test(step) && Number(step) < data.length))
      return fault(
        change,
        start,
        end,
        step === "" ? "the item number is empty" : `this list has no item ${step}`,
        data.length === 0
          ? "the list is empty"
          : `items count from 0: ${namesTo(depth)}.0 is ${
              data.length === 1 ? "the only one" : `the first, ${namesTo(depth)}.${data.length - 1} the last`
            }`,
      );
    if (
      !isList &&
      (!isObject(data) || step === "" || step === "__proto__" || (mustExist && !Object.hasOwn(data, step)))
    ) {
      const known = isObject(data) ? Object.keys(data) : [];
      const near = nearest(step, known);
      return fault(
        change,
        start,
        end,
        isObject(data)
          ? step === ""
            ? "the name is empty"
            : `${step} is not defined here`
          : "this value has no keys",
        near !== undefined
          ? `did you mean ${near}?`
          : known.length > 0 && known.length <= mostKeys
            ? `defined here: ${listed(known, "and")}`
            : "name a key of the batch, such as tanks.six.volume",
      );
    }
    const key = isList ? Number(step) : step;
    const before = Object.hasOwn(data, key) ? (data as Record<string | number, unknown>)[key] : undefined;
    const child = set(
      before,
      before === undefined
        ? { source, path: [] }
        : (origin.children?.get(key) ?? { source: origin.source, path: [...origin.path, key] }),
      depth + 1,
    );
    if ("code" in child) return child;
    const copy = (isList ? [...data] : { ...(data as object) }) as Record<string | number, unknown>;
    copy[key] = child.data;
    return { data: copy, origin: { ...origin, children: new Map(origin.children).set(key, child.origin) } };
  };
  const done = set(merged.data, merged.origin, 0);
  if ("code" in done) return { merged, diagnostics: [done] };
  return { merged: { data: done.data as Record<string, unknown>, origin: done.origin }, diagnostics: [] };
}
