import type { Span } from "../../diagnostics/diagnostic.js";
import type { Part, Path, Source } from "./source.js";

/** Where a part of the merged data came from: one place in one source, or a place for each child. */
export interface Origin {
  readonly source: Source;
  readonly path: Path;
  readonly children?: Map<string | number, Origin>;
}

/** The place in the text that a path in the merged data came from. */
export function locateIn(origin: Origin, path: Path, part: Part): Span {
  let here = origin;
  for (let i = 0; i < path.length; i++) {
    const child = here.children?.get(path[i]!);
    if (child === undefined) return here.source.locate([...here.path, ...path.slice(i)], part);
    here = child;
  }
  return here.source.locate(here.path, part);
}
