import { dilutionPattern } from "../../core/quantity/pattern/dilution-pattern.js";
import { quantityPattern } from "../../core/quantity/pattern/quantity-pattern.js";
import { surfacePattern } from "../../core/quantity/pattern/surface-pattern.js";
import type { TextForm } from "../schema/leaf.js";
import { quantityForm } from "../schema/quantities.js";
import type { KeySchema } from "./key-schema.js";

function patternOf(reads: TextForm): string {
  if (reads === "dilution") return dilutionPattern();
  if (reads === "surface") return surfacePattern();
  const patterns = reads.map(({ kind, limits }) => quantityPattern(kind, limits));
  return patterns.length === 1 ? patterns[0]! : `(?:${patterns.join("|")})`;
}

function messageOf(reads: TextForm): string | undefined {
  const [only, ...others] = typeof reads === "string" ? [] : reads;
  return only === undefined || others.length > 0 ? undefined : quantityForm(only.kind, only.limits);
}

/** The name of a definition: "volume", "volumeOrMass". */
const nameOf = (reads: TextForm): string =>
  typeof reads === "string"
    ? reads
    : reads.map(({ kind }, i) => (i === 0 ? kind : `Or${kind[0]!.toUpperCase()}${kind.slice(1)}`)).join("");

/**
 * Shared definitions, as many keys read the same texts. `refer` replaces the pattern and messages of a key by a reference
 * to a definition; `made` has the definitions by name.
 */
export function textDefinitions() {
  const made = new Map<string, KeySchema>();
  const refer = ({
    reads,
    type,
    minimum,
    errorMessage: own,
    ...key
  }: KeySchema & { reads: TextForm }): KeySchema => {
    const errorMessage = own ?? messageOf(reads);
    const messages = { errorMessage, patternErrorMessage: errorMessage };
    const pattern = `^${patternOf(reads)}$`;
    const rules = { type, ...(minimum === undefined ? {} : { minimum }), pattern, ...messages } as KeySchema;
    let name = nameOf(reads);
    for (let i = 2; JSON.stringify(made.get(name) ?? rules) !== JSON.stringify(rules); i++)
      name = `${nameOf(reads)}${i}`;
    made.set(name, rules);
    return { $ref: `#/$defs/${name}`, ...key };
  };
  return { made, refer };
}
