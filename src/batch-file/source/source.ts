import type { Span } from "../../diagnostics/diagnostic.js";

export type Path = readonly (string | number)[];

/** Whether a fault is in a key or in its value. */
export type Part = "key" | "value";

/** One input as read: its data, and the place in the text of each path in the data. */
export interface Source {
  /** As the user named it. */
  readonly name: string;
  readonly plain: unknown;
  /** The place of a path; if the path does not exist, the place of the deepest part of it that does. */
  locate(path: Path, part: Part): Span;
}
