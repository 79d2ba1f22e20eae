import type { Amount } from "../schema/quantities.js";
import type { Path } from "../source/source.js";
import type { Spec } from "./complete.js";

type Holder = Record<string | number, unknown>;

/** Tells an amount from a map of amounts in which a name happens to be "value". */
export const isAmount = (value: object): value is Amount =>
  "value" in value && typeof value.value === "number";

/** Every quantity of a spec with its path. */
export function amountsOf(spec: Spec): { readonly path: Path; readonly amount: Amount }[] {
  const found: { path: Path; amount: Amount }[] = [];
  const walk = (value: unknown, path: Path): void => {
    if (typeof value !== "object" || value === null) return;
    if (isAmount(value)) found.push({ path, amount: value });
    else
      for (const [key, child] of Object.entries(value))
        walk(child, [...path, Array.isArray(value) ? Number(key) : key]);
  };
  walk(spec, []);
  return found;
}

/** The spec with other values at some paths; toBatch then gives the batch of one draw. */
export function withAmounts(
  spec: Spec,
  values: readonly { readonly path: Path; readonly value: number }[],
): Spec {
  const root = { ...spec } as unknown as Holder;
  const copied = new Set<object>([root]);
  for (const { path, value } of values) {
    let here = root;
    for (const [i, step] of path.entries()) {
      const old = here[step] as Holder;
      const child = copied.has(old) ? old : ((Array.isArray(old) ? [...old] : { ...old }) as Holder);
      copied.add(child);
      here[step] = child;
      here = child;
      if (i === path.length - 1) here.value = value;
    }
  }
  return root as unknown as Spec;
}
