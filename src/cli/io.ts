import type { Fault } from "../core/fault.js";

/** Everything a run may touch outside itself; tests hand in their own. */
export interface Io {
  /** Results. */
  readonly out: (text: string) => void;
  /** Diagnostics and progress. */
  readonly err: (text: string) => void;
  /** All of stdin, or its first bytes where it holds more than `atMost`. */
  readonly readStdin: (atMost?: number) => Promise<Uint8Array>;
  /** A whole file, or its first bytes where it holds more than `atMost`. */
  readonly readFile: (path: string, atMost?: number) => Promise<Uint8Array>;
  /** The whole text or nothing; what stood there stays until the new text is complete. */
  readonly writeFileAtomic: (path: string, text: string) => Promise<void>;
  /** Makes new files in a folder (made if need be): all of them, or none and why. */
  readonly createFiles: (folder: string, files: ReadonlyMap<string, string>) => Promise<readonly Fault[]>;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  readonly now: () => Date;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** Width of the terminal that results go to, if it is one. */
  readonly columns: number | undefined;
}
