import type { Bath, BathStart } from "../../model/batch.js";
import { carryOver } from "../../plan/results/carry-over.js";
import type { BathRun } from "../../plan/run/bath-run.js";
import { daysBetween } from "../../quantity/days.js";

type Kept = Extract<BathStart, { kind: "kept" }>;

/** Where a bath is: as it was left on a day. */
interface Left {
  readonly date: string;
  readonly kept: Kept;
}

/** How a bath starts on a day. */
export interface BathToday {
  readonly bath: Bath;
  /** The bath before it is past its shelf life. */
  readonly renewed: boolean;
}

const keyOf = ({ tank, dye }: Pick<Bath, "tank" | "dye">): string => JSON.stringify([tank.name, dye.name]);

/** What is in every jug of the week: each kept bath goes on from what the day before left of it. */
export class BathBook {
  private readonly left: ReadonlyMap<string, Left>;
  private readonly used: ReadonlySet<string>;

  private constructor(left: ReadonlyMap<string, Left>, used: ReadonlySet<string>) {
    this.left = left;
    this.used = used;
  }

  /** As the batches say on the first day; a bath whose age is of an earlier day is older by then. */
  static of(baths: readonly Bath[], first: string, agedOn: ReadonlyMap<Bath, string>): BathBook {
    const kept = baths.flatMap((bath): [string, Left][] => {
      if (bath.start.kind === "fresh") return [];
      const day = agedOn.get(bath) ?? first;
      return [[keyOf(bath), { date: day < first ? day : first, kept: bath.start }]];
    });
    return new BathBook(new Map(kept), new Set());
  }

  /** A bath as it starts on a day. A trial corrects it on the first day only. */
  today(bath: Bath, date: string): BathToday {
    const key = keyOf(bath);
    const left = this.left.get(key);
    const { trial: _, ...untried } = bath;
    const own = this.used.has(key) ? untried : bath;
    if (left === undefined) return { bath: { ...own, start: { kind: "fresh" } }, renewed: false };
    const ageDays = left.kept.ageDays + daysBetween(left.date, date);
    if (ageDays > (bath.dye.shelfLifeDays ?? ageDays))
      return { bath: { ...untried, start: { kind: "fresh" } }, renewed: true };
    return { bath: { ...own, start: { ...left.kept, ageDays } }, renewed: false };
  }

  /** The book after a day's work. */
  after(runs: readonly BathRun[], date: string): BathBook {
    const left = new Map(this.left);
    const used = new Set(this.used);
    for (const run of runs) {
      const key = keyOf(run.bath);
      used.add(key);
      const carried = carryOver(run, undefined);
      if (carried === null) left.delete(key);
      else {
        const { volumeL, strength, mix, ageDays, areaDm2 } = carried;
        const each = mix && { strengthEach: mix.map((one) => one.strength) };
        left.set(key, { date, kept: { kind: "kept", volumeL, strength, ...each, ageDays, areaDm2 } });
      }
    }
    return new BathBook(left, used);
  }
}
