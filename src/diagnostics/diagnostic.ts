import { isError } from "../core/fault.js";
/** A place in an input that a person can go to. */
export interface Span {
  /** As the user named it, "-" for standard input, "--set" for an override. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** Counted from 1, in characters as an editor counts them (UTF-16 units). */
  readonly column: number;
  /** Characters at fault, at least 1, all on this line. */
  readonly length: number;
  /** The whole line, without its end. */
  readonly text: string;
  /** What this place has to do with it: "first defined here". */
  readonly label?: string;
}

/** What is wrong, where, and what to write instead. */
export interface Diagnostic {
  /** Stable; may be scripted against. */
  readonly code: string;
  readonly severity: "error" | "warning";
  readonly message: string;
  readonly help?: string;
  /** One of many alike: on one line, however long. */
  readonly oneLine?: true;
  /** A report for people holds it, so that it is not said beside the report. */
  readonly inReport?: true;
  /** The place at fault first, then places that explain it; empty where no input is at fault. */
  readonly spans: readonly Span[];
}

/** Whether any of them prevents a result. */
export const hasErrors = (diagnostics: readonly Diagnostic[]): boolean => diagnostics.some(isError);
