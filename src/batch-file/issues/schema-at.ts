import type { ZodType } from "zod";
import type { Forms } from "../schema/one-of-forms.js";
import type { Path } from "../source/source.js";

/** A schema with the parts of its definition that are used here. */
export type Schema = ZodType & { readonly _zod: { readonly def: Definition } };
interface Definition {
  readonly type: string;
  readonly shape?: Record<string, Schema>;
  readonly valueType?: Schema;
  readonly element?: Schema;
  readonly innerType?: Schema;
  readonly in?: Schema;
  readonly options?: readonly Schema[];
}

/** A schema without its wrappers. */
function bare(schema: Schema | undefined): Schema | undefined {
  let inner = schema;
  while (inner?._zod.def.innerType !== undefined) inner = inner._zod.def.innerType;
  return inner?._zod.def.type === "pipe" ? inner._zod.def.in : inner;
}

/** The forms that a value can take, of unions in unions too. */
const formsOf = (schema: Schema | undefined): Schema[] => {
  const inner = bare(schema);
  if (inner === undefined) return [];
  return inner._zod.def.type === "union" ? (inner._zod.def.options ?? []).flatMap(formsOf) : [inner];
};

/** The part of the schema that a path leads to, in its wrappers. */
function wrappedAt(schema: ZodType, path: Path): Schema | undefined {
  let here: Schema | undefined = schema as Schema;
  for (const step of path) {
    const defs: Definition[] = formsOf(here).map((form) => form._zod.def);
    const own = defs.find(({ shape }) => shape !== undefined && Object.hasOwn(shape, step));
    const any = defs.find(({ valueType, element }) => valueType !== undefined || element !== undefined);
    here = own?.shape?.[String(step)] ?? any?.valueType ?? any?.element;
  }
  return here;
}

/** The part of the schema that a path leads to, without its wrappers; of a union, the map of fixed keys. */
export function schemaAt(schema: ZodType, path: Path): Schema | undefined {
  const here = wrappedAt(schema, path);
  const forms = formsOf(here);
  return (
    forms.find(({ _zod }) => _zod.def.shape !== undefined) ??
    forms.find(({ _zod }) => _zod.def.valueType !== undefined) ??
    bare(here)
  );
}

/**
 * Keys of the map that a path leads to; empty unless it is a map of fixed keys. Of several such maps that which has most
 * of the keys that are written.
 */
export function keysAt(schema: ZodType, path: Path, written: readonly string[] = []): readonly string[] {
  const forms = formsOf(wrappedAt(schema, path)).flatMap(({ _zod: { def } }) =>
    def.shape === undefined ? [] : [Object.keys(def.shape)],
  );
  const has = (keys: readonly string[]): number => written.filter((key) => keys.includes(key)).length;
  return forms.reduce<readonly string[]>(
    (best, keys) => (has(keys) > has(best) ? keys : best),
    forms[0] ?? [],
  );
}

/** Those of its keys that can be written together: of keys that exclude each other, the first one. */
export function exampleKeys(schema: ZodType, path: Path): readonly string[] {
  const { forms = [] } = (schemaAt(schema, path)?.meta() ?? {}) as { forms?: Forms };
  const others = new Set(forms.flatMap(({ keys = [] }) => keys));
  return keysAt(schema, path).filter((key) => !others.has(key) || forms[0]!.keys!.includes(key));
}

/** The first example of the value that a path leads to; of a union without a map of fixed keys, that of the whole. */
export function exampleAt(schema: ZodType, path: Path): unknown {
  const examples = (of: Schema | undefined) =>
    (of?.meta() as { examples?: readonly unknown[] } | undefined)?.examples;
  return (examples(schemaAt(schema, path)) ?? examples(bare(wrappedAt(schema, path))))?.[0];
}

/** Whether a path leads to a text that may look like a number: tank 1.10, dye 007. */
export const isTextAt = (schema: ZodType, path: Path): boolean =>
  formsOf(wrappedAt(schema, path)).some((form) => {
    const type = form.meta()?.type;
    return Array.isArray(type) && type.includes("string") && type.includes("number");
  });
