import { handsOnWait } from "../../bath/load/hands-on-wait.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch, Dryer } from "../../model/batch.js";

/** A bath as the clock sees it. */
export interface BathOnTheDay {
  readonly tank: string;
  /** Position in the batch file's list: a tank may hold two in a day. */
  readonly bath: number;
  /** Undefined where no heater is known: the bath is then taken as hot after set-up. */
  readonly heatingMinutes: number | undefined;
  /** Minutes that it must still wait for its heater if its next load is racked now; undefined where none is left. */
  nextWaitMinutes(): number | undefined;
  /** The operator is elsewhere. */
  pass(minutes: number): void;
  /** Works the next load; undefined where none can be worked. */
  work():
    | {
        readonly load: number;
        readonly parts: number;
        readonly waitMinutes: number;
        readonly minutes: number;
      }
    | undefined;
  /** Minutes until it is cool enough to be emptied. */
  cool(): number;
}

export type TimelineTask =
  | "set up"
  | "heat"
  | "dip"
  | "dryer loading"
  | "dry"
  | "dryer emptying"
  | "cool"
  | "clean up"
  | "wait";

/** One stretch of the day; minutes from the start of work. */
export interface TimelineEntry {
  readonly startMinute: number;
  readonly endMinute: number;
  readonly what: TimelineTask;
  readonly tank?: string;
  /** Position of the bath in the batch file's list: a tank may hold two in a day. */
  readonly bath?: number;
  /** Of a wait: the load that waits for its bath. */
  readonly load?: number;
  readonly parts?: number;
}

/** The day, when it ends, and the dryer runs in it. */
export interface Timeline {
  readonly entries: readonly TimelineEntry[];
  readonly minutes: number;
  /** Hands at work, and the first ten minutes of each wait for a bath. */
  readonly operatorMinutes: number;
  readonly dryerRuns: number;
}

/** Where a bath is in its day: its tank is still in use by another, it heats up or is hot, it cools, or it is done. */
type Stage =
  | { readonly is: "later" }
  | { readonly is: "ready"; readonly fromMinute: number; readonly started: boolean }
  | { readonly is: "cooling"; readonly untilMinute: number }
  | { readonly is: "done" };

/** Nobody goes to another bath for a shorter wait. Common practice, no source. */
const patienceMinutes = 1;

/** Runs without the operator: heaters, dryer, cooling. */
const unattended: ReadonlySet<TimelineTask> = new Set(["heat", "dry", "cool"]);

/**
 * One operator, one thing at a time. All tanks are set up first, and each heater is switched on just in time for its
 * bath's first load. Baths follow each other in file order; while one has to wait for its heater, the operator dips in
 * another that is ready. The dryer is filled whenever a full run waits and it is free, and emptied before the next run
 * and at the end. A bath cools before it is emptied and its tank cleaned; a tank that is used for a second bath is
 * cleaned, set up and heated again as soon as it has cooled.
 */
export function timeline(
  baths: readonly BathOnTheDay[],
  { handling, dryers }: Pick<Batch, "handling" | "dryers">,
): Timeline {
  return new Day(baths, handling, dryers[0]).worked();
}

class Day {
  private readonly entries: TimelineEntry[] = [];
  private readonly stages = new Map<BathOnTheDay, Stage>();
  private now = 0;
  private current: BathOnTheDay | undefined;
  private wet = 0;
  private dryerRuns = 0;
  /** The run in the dryer: until when, and of how many parts. */
  private drying: { readonly untilMinute: number; readonly parts: number } | undefined;

  private readonly baths: readonly BathOnTheDay[];
  private readonly handling: Batch["handling"];
  private readonly dryer: Dryer | undefined;

  constructor(baths: readonly BathOnTheDay[], handling: Batch["handling"], dryer: Dryer | undefined) {
    this.baths = baths;
    this.handling = handling;
    this.dryer = dryer;
    for (const bath of baths) this.stages.set(bath, { is: "later" });
  }

  worked(): Timeline {
    for (const bath of this.baths) if (this.isTankFree(bath)) this.setUp(bath);
    while (this.step());
    const entries = joinedWaits(this.entries).sort(
      (a, b) => a.startMinute - b.startMinute || a.endMinute - b.endMinute,
    );
    return {
      entries,
      minutes: entries.reduce((latest, entry) => Math.max(latest, entry.endMinute), 0),
      operatorMinutes: exactSumOf(entries, operatorMinutesOf),
      dryerRuns: this.dryerRuns,
    };
  }

  /** The next thing that the operator does; false where nothing is left to do. */
  private step(): boolean {
    return this.dryNow() || this.turnTankOver() || this.dipNext() || this.tidyUp() || this.waitForNext();
  }

  private stage(bath: BathOnTheDay): Stage {
    return this.stages.get(bath)!;
  }

  /** No bath before it in its tank is unfinished. */
  private isTankFree(bath: BathOnTheDay): boolean {
    const before = this.baths.slice(0, this.baths.indexOf(bath));
    return before.every((other) => other.tank !== bath.tank || this.stage(other).is === "done");
  }

  private do(
    what: TimelineTask,
    minutes: number,
    rest: Partial<TimelineEntry> = {},
    busy?: BathOnTheDay,
  ): void {
    if (minutes > 0 || what !== "wait")
      this.entries.push({ startMinute: this.now, endMinute: this.now + minutes, what, ...rest });
    this.now += minutes;
    for (const [bath, stage] of this.stages)
      if (bath !== busy && stage.is === "ready" && stage.started) bath.pass(minutes);
  }

  private aside(what: TimelineTask, fromMinute: number, minutes: number, rest: Partial<TimelineEntry>): void {
    if (minutes > 0)
      this.entries.push({ startMinute: fromMinute, endMinute: fromMinute + minutes, what, ...rest });
  }

  private setUp(bath: BathOnTheDay): void {
    this.do("set up", this.handling.setUpMinutes, { tank: bath.tank, bath: bath.bath });
    this.stages.set(bath, {
      is: "ready",
      fromMinute: this.now + (bath.heatingMinutes ?? 0),
      started: false,
    });
  }

  private cleanUp(bath: BathOnTheDay): void {
    this.do("clean up", this.handling.cleanUpMinutes, { tank: bath.tank, bath: bath.bath });
    this.stages.set(bath, { is: "done" });
  }

  /** Loads left in a bath that is set up. */
  private canDip(bath: BathOnTheDay): boolean {
    return this.stage(bath).is === "ready";
  }

  /** Empties a dryer that is done where another run waits, and fills it with a full run. */
  private dryNow(atTheEnd = false): boolean {
    const { dryer } = this;
    if (dryer === undefined || this.wet === 0) return false;
    if (this.wet < dryer.capacity && !atTheEnd) return false;
    if (this.drying !== undefined && this.drying.untilMinute > this.now) return false;
    if (this.drying !== undefined) return this.emptyDryer();
    const parts = Math.min(dryer.capacity, this.wet);
    this.do("dryer loading", this.handling.dryerLoadingMinutes / 2, { parts });
    this.aside("dry", this.now, dryer.minutes, { parts });
    this.drying = { untilMinute: this.now + dryer.minutes, parts };
    this.wet -= parts;
    this.dryerRuns++;
    return true;
  }

  private emptyDryer(): boolean {
    const { parts } = this.drying!;
    this.do("dryer emptying", this.handling.dryerLoadingMinutes / 2, { parts });
    this.drying = undefined;
    return true;
  }

  /** Cleans a tank that has cooled and is needed again, and sets it up. */
  private turnTankOver(): boolean {
    for (const [bath, stage] of this.stages) {
      if (stage.is !== "cooling" || stage.untilMinute > this.now) continue;
      const next = this.baths.find((other) => other.tank === bath.tank && this.stage(other).is === "later");
      if (next === undefined) continue;
      this.cleanUp(bath);
      this.setUp(next);
      return true;
    }
    return false;
  }

  /** Minutes until a bath can take its next load. */
  private waitOf(bath: BathOnTheDay): number {
    const stage = this.stage(bath);
    if (stage.is !== "ready") return Number.POSITIVE_INFINITY;
    if (!stage.started) return Math.max(0, stage.fromMinute - this.now);
    const minutes = bath.nextWaitMinutes() ?? 0;
    return bath === this.current && minutes <= patienceMinutes ? 0 : minutes;
  }

  /** Dips in the bath that is ready soonest, the one last used before others. */
  private dipNext(): boolean {
    let best: BathOnTheDay | undefined;
    let least = Number.POSITIVE_INFINITY;
    const first = this.current !== undefined && this.canDip(this.current) ? [this.current] : [];
    for (const bath of [...first, ...this.baths.filter((other) => this.canDip(other))]) {
      const wait = this.waitOf(bath);
      if (wait < least) [best, least] = [bath, wait];
    }
    if (best === undefined) return false;
    const stage = this.stage(best);
    if (stage.is !== "ready") return false;
    if (least > 0 && this.useWait(least)) return true;
    if (!stage.started) {
      if (least > 0) return this.waitUntil(Math.min(stage.fromMinute, this.nextEvent()));
      this.start(best);
    }
    this.dip(best);
    return true;
  }

  /** What fits into a wait: a tank that has cooled, a dryer that is done. */
  private useWait(minutes: number): boolean {
    if (this.handling.cleanUpMinutes <= minutes && this.cleanCooled()) return true;
    return this.handling.dryerLoadingMinutes / 2 <= minutes && this.emptyDone();
  }

  private cleanCooled(): boolean {
    for (const [bath, stage] of this.stages)
      if (stage.is === "cooling" && stage.untilMinute <= this.now) {
        this.cleanUp(bath);
        return true;
      }
    return false;
  }

  private emptyDone(): boolean {
    return this.drying !== undefined && this.drying.untilMinute <= this.now && this.emptyDryer();
  }

  private start(bath: BathOnTheDay): void {
    const { tank, heatingMinutes = 0 } = bath;
    this.aside("heat", this.now - heatingMinutes, heatingMinutes, { tank, bath: bath.bath });
    this.stages.set(bath, { is: "ready", fromMinute: this.now, started: true });
  }

  private dip(bath: BathOnTheDay): void {
    this.current = bath;
    const worked = bath.work();
    const of = { tank: bath.tank, bath: bath.bath };
    if (worked !== undefined) {
      const { load, parts, waitMinutes, minutes } = worked;
      this.do("wait", waitMinutes, { ...of, load }, bath);
      this.do("dip", minutes, { ...of, load, parts }, bath);
      this.wet += parts;
    }
    if (bath.nextWaitMinutes() !== undefined) return;
    const coolMinutes = bath.cool();
    this.aside("cool", this.now, coolMinutes, of);
    this.stages.set(bath, { is: "cooling", untilMinute: this.now + coolMinutes });
  }

  /** When no load is left: the last parts into the dryer, tanks that have cooled, the dryer emptied. */
  private tidyUp(): boolean {
    const isLast = [...this.stages.values()].every(({ is }) => is !== "later");
    return this.dryNow(isLast) || this.cleanCooled() || this.emptyDone();
  }

  /** The next minute at which a bath has cooled or the dryer is done; infinite where nothing is under way. */
  private nextEvent(): number {
    const ends = [...this.stages.values()].flatMap((stage) =>
      stage.is === "cooling" && stage.untilMinute > this.now ? [stage.untilMinute] : [],
    );
    if (this.drying !== undefined && this.drying.untilMinute > this.now) ends.push(this.drying.untilMinute);
    return Math.min(...ends, Number.POSITIVE_INFINITY);
  }

  private waitUntil(minute: number): boolean {
    this.do("wait", minute - this.now);
    // Not a rounding error before it, which would be waited for again and again.
    this.now = minute;
    return true;
  }

  private waitForNext(): boolean {
    const next = this.nextEvent();
    return next < Number.POSITIVE_INFINITY && this.waitUntil(next);
  }
}

/** Waits that follow each other, for nothing in particular, as one. */
function joinedWaits(entries: readonly TimelineEntry[]): TimelineEntry[] {
  const joined: TimelineEntry[] = [];
  for (const entry of entries) {
    const last = joined.at(-1);
    const follows =
      last?.what === "wait" && entry.what === "wait" && last.load === undefined && entry.load === undefined;
    if (follows) joined[joined.length - 1] = { ...last, endMinute: entry.endMinute };
    else joined.push(entry);
  }
  return joined;
}

/** What an entry costs the operator. */
const operatorMinutesOf = ({ what, load, startMinute, endMinute }: TimelineEntry): number => {
  const minutes = endMinute - startMinute;
  if (unattended.has(what)) return 0;
  if (what !== "wait") return minutes;
  return load === undefined ? 0 : handsOnWait(60 * minutes) / 60;
};
