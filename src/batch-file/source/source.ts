import type { Span } from "../../diagnostics/diagnostic.js";

export type Path = readonly (string | number)[];

/** Whether a fault lies with a key or with what stands behind it. */
export type Part = "key" | "value";

/** One input that has been read: its data, and the way back from a path in the data to the text. */
export interface Source {
  /** As the user named it. */
  readonly name: string;
  readonly plain: unknown;
  /** The place of a path; of the nearest thing around it where the path leads nowhere. */
  locate(path: Path, part: Part): Span;
}
