import type { ZodType } from "zod";
import type { Path } from "./source.js";

/** A schema with what this tool looks at in it. */
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

/** The part of the schema that a path leads to; wrappers are taken off. */
export function schemaAt(schema: ZodType, path: Path): Schema | undefined {
  let here: Schema | undefined = schema as Schema;
  const bare = (found: Schema | undefined): Schema | undefined => {
    let inner = found;
    while (inner?._zod.def.innerType !== undefined) inner = inner._zod.def.innerType;
    if (inner?._zod.def.type === "pipe") return inner._zod.def.in;
    if (inner?._zod.def.type === "union")
      return (
        inner._zod.def.options
          ?.map(bare)
          .find((o) => o?._zod.def.shape !== undefined || o?._zod.def.valueType !== undefined) ?? inner
      );
    return inner;
  };
  here = bare(here);
  for (const step of path) {
    const def: Definition | undefined = here?._zod.def;
    here = bare(def?.shape?.[String(step)] ?? def?.valueType ?? def?.element);
  }
  return here;
}

/** Keys of the map that a path leads to; none where it is no map of fixed keys. */
export const keysAt = (schema: ZodType, path: Path): readonly string[] =>
  Object.keys(schemaAt(schema, path)?._zod.def.shape ?? {});

/** The first example of the value that a path leads to. */
export const exampleAt = (schema: ZodType, path: Path): unknown =>
  (schemaAt(schema, path)?.meta() as { examples?: readonly unknown[] } | undefined)?.examples?.[0];
