import type { Fault } from "../core/fault.js";

/** A new text for a file, written beside it until it is whole. */
export interface Replacement {
  /** Settles when more may be written. */
  readonly write: (text: string) => Promise<void>;
  /** Puts the new text in place of the old. */
  readonly commit: () => Promise<void>;
  /** Leaves the old text and nothing of the new. */
  readonly discard: () => Promise<void>;
}

/** Lines for a file that other processes append to as well. */
export interface Appending {
  /** Whole lines, with their ends. */
  readonly text: string;
  readonly lineEnd: string;
  /** There was no file, or nothing in it. */
  readonly isNew: boolean;
  /** What followed the last line end when the file was read. */
  readonly tail: Uint8Array;
  /** A crash cut the tail off. */
  readonly torn: boolean;
  /** Tells a whole line from what a crash left of one. */
  readonly isWhole: (line: string) => boolean;
}

/** Pieces of lines that crashes had left in the file; they are now in the one whose name ends in `.torn`. */
export interface Appended {
  readonly setAside: readonly string[];
}

/** Plain data that a thread answers, and the files that it read since its last answer. */
export interface Answer {
  readonly answer: unknown;
  readonly reads: readonly string[];
}

/** Work that goes on beside this thread: questions are answered in their order. */
export interface Thread {
  readonly ask: (question: unknown) => Promise<Answer>;
  readonly stop: () => Promise<void>;
}

/** Everything a run may touch outside itself; tests hand in their own. */
export interface Io {
  /** Results. */
  readonly out: (text: string) => void;
  /** A piece of a long result; settles when more may be written, with false where nobody reads on. */
  readonly write: (text: string) => Promise<boolean>;
  /** Diagnostics and progress. */
  readonly err: (text: string) => void;
  /** All of stdin, or its first bytes where it holds more than `atMost`. */
  readonly readStdin: (atMost?: number) => Promise<Uint8Array>;
  /** A whole file, or its first bytes where it holds more than `atMost`. */
  readonly readFile: (path: string, atMost?: number) => Promise<Uint8Array>;
  /** Bytes of a regular file; undefined for anything else. */
  readonly sizeOf?: (path: string) => number | undefined;
  /** Files below a folder or matching a pattern, in order; undefined where the argument is neither. */
  readonly find: (argument: string) => Promise<readonly string[] | undefined>;
  /** A file, or stdin for "-", piece by piece. */
  readonly read: (path: string) => AsyncIterable<Uint8Array>;
  /** Begins a new text for a file; the old one stays until the new one is complete. */
  readonly replaceFile: (path: string) => Promise<Replacement>;
  /** Appends lines and syncs them to disk; "changed" and nothing done where the file does not end as it did. */
  readonly appendLines: (path: string, appending: Appending) => Promise<Appended | "changed">;
  /** Makes new files in a folder (made if need be): all of them, or none and why. */
  readonly createFiles: (folder: string, files: ReadonlyMap<string, string>) => Promise<readonly Fault[]>;
  /** Threads on one of our scripts, at most so many; none where the machine cannot run two at once. */
  readonly threads?: (script: "cost", job: unknown, atMost: number) => Promise<readonly Thread[]>;
  /** Where a path leads to in the end, its links followed; undefined where nothing is there. */
  readonly realPath?: (path: string) => string | undefined;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  readonly now: () => Date;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** Width of the terminal that results go to, if it is one. */
  readonly columns: number | undefined;
}
