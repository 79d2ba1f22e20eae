import { baseUnder } from "../../core/colour/base-under.js";
import type { Base } from "../../core/model/batch.js";
import type { Reading } from "../../core/model/colour.js";
import { standardReading } from "../../core/model/defaults.js";
import type { Spec } from "./complete.js";

/** The bases of a batch, each with its colour under the readings of the dyes. */
export class Bases {
  private readonly entries: Spec["bases"];
  private readonly known = new Map<string, Base>();

  constructor(entries: Spec["bases"]) {
    this.entries = entries;
  }

  /** A base under a reading: its `lab` counts as read so, its `hex` is converted from the screen's D65/2. */
  under(name: string, reading: Reading): Base {
    const key = `${reading.illuminant}/${reading.observer} ${name}`;
    let base = this.known.get(key);
    if (base === undefined) {
      base = this.make(name, reading);
      this.known.set(key, base);
    }
    return base;
  }

  /** All bases, under the standard reading. */
  all(): Base[] {
    return Object.keys(this.entries).map((name) => this.under(name, standardReading));
  }

  private make(name: string, reading: Reading): Base {
    const { lab, hex } = this.entries[name]!;
    if (lab !== undefined) return { name, lab };
    return hex === undefined ? { name } : baseUnder({ name, hex }, reading);
  }
}
