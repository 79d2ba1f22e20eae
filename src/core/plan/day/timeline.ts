import type { Batch, Bath, Dryer } from "../../model/batch.js";

/** What one bath asks of the clock. */
export interface BathWork {
  readonly bath: Bath;
  /** Undefined where no heater is known: the bath is then taken as hot after set-up. */
  readonly heatingMinutes: number | undefined;
  readonly loads: readonly { readonly load: number; readonly parts: number; readonly minutes: number }[];
}

export type TimelineTask = "set up" | "heat" | "dip" | "dryer loading" | "dry" | "clean up" | "wait";

/** One stretch of the day; minutes from the start of work. */
export interface TimelineEntry {
  readonly startMinute: number;
  readonly endMinute: number;
  readonly what: TimelineTask;
  readonly tank?: string;
  /** Position of the bath in the batch file's list: a tank may hold two in a day. */
  readonly bath?: number;
  readonly load?: number;
  readonly parts?: number;
}

/** The day, when it ends, and the dryer runs in it. */
export interface Timeline {
  readonly entries: readonly TimelineEntry[];
  readonly minutes: number;
  readonly operatorMinutes: number;
  readonly dryerRuns: number;
}

/**
 * One operator working serially: all tanks are set up, heaters are switched on just in time for their
 * first load, baths follow each other in file order, the dryer is filled whenever a full run waits and it
 * is free, and tanks are cleaned while something else is waited for or at the end. A tank that is used for
 * a second bath is cleaned and set up again in between.
 */
export function timeline(work: readonly BathWork[], batch: Pick<Batch, "handling" | "dryers">): Timeline {
  const { setUpMinutes, cleanUpMinutes, dryerLoadingMinutes } = batch.handling;
  const dryer: Dryer | undefined = batch.dryers[0];
  const entries: TimelineEntry[] = [];
  const readyAt = new Map<BathWork, number>();
  const toClean: BathWork[] = [];
  let now = 0;
  let wet = 0;
  let dryerFree = 0;
  let dryerRuns = 0;

  const operator = (what: TimelineTask, minutes: number, rest: Partial<TimelineEntry> = {}): void => {
    entries.push({ startMinute: now, endMinute: now + minutes, what, ...rest });
    now += minutes;
  };
  const setUp = (bath: BathWork): void => {
    operator("set up", setUpMinutes, { tank: bath.bath.tank.name, bath: bath.bath.index });
    readyAt.set(bath, now + (bath.heatingMinutes ?? 0));
  };
  const cleanUp = (bath: BathWork): void => {
    toClean.splice(toClean.indexOf(bath), 1);
    operator("clean up", cleanUpMinutes, { tank: bath.bath.tank.name, bath: bath.bath.index });
  };
  const fillDryer = (capacity: number, minutes: number): void => {
    const parts = Math.min(capacity, wet);
    operator("dryer loading", dryerLoadingMinutes, { parts });
    entries.push({ startMinute: now, endMinute: now + minutes, what: "dry", parts });
    dryerFree = now + minutes;
    wet -= parts;
    dryerRuns++;
  };
  const fillWhileFull = (): void => {
    while (dryer && wet >= dryer.capacity && now >= dryerFree) fillDryer(dryer.capacity, dryer.minutes);
  };
  const wait = (until: number): void => {
    fillWhileFull();
    while (now < until) {
      const dryerNext = dryer && wet >= dryer.capacity && dryerFree < until ? dryerFree : until;
      if (toClean.length > 0 && now + cleanUpMinutes <= dryerNext) cleanUp(toClean[0]!);
      else operator("wait", dryerNext - now);
      fillWhileFull();
    }
  };

  const firstInTank = new Set<string>();
  for (const bath of work) {
    if (firstInTank.has(bath.bath.tank.name)) continue;
    firstInTank.add(bath.bath.tank.name);
    setUp(bath);
  }
  for (const bath of work) {
    const tank = bath.bath.tank.name;
    if (!readyAt.has(bath)) {
      for (const before of toClean.filter((other) => other.bath.tank.name === tank)) cleanUp(before);
      setUp(bath);
    }
    wait(readyAt.get(bath)!);
    if (bath.heatingMinutes !== undefined)
      entries.push({
        startMinute: now - bath.heatingMinutes,
        endMinute: now,
        what: "heat",
        tank,
        bath: bath.bath.index,
      });
    for (const { load, parts, minutes } of bath.loads) {
      operator("dip", minutes, { tank, bath: bath.bath.index, load, parts });
      wet += parts;
      fillWhileFull();
    }
    toClean.push(bath);
  }
  while (dryer && wet > 0) {
    wait(dryerFree);
    // Waiting may have filled it with a full run already.
    if (wet > 0 && now >= dryerFree) fillDryer(dryer.capacity, dryer.minutes);
  }
  while (toClean.length > 0) cleanUp(toClean[0]!);

  const order = (a: TimelineEntry, b: TimelineEntry): number =>
    a.startMinute - b.startMinute || a.endMinute - b.endMinute;
  const hands = entries.filter(
    (entry) => entry.what !== "heat" && entry.what !== "dry" && entry.what !== "wait",
  );
  return {
    entries: entries.sort(order),
    minutes: entries.reduce((latest, entry) => Math.max(latest, entry.endMinute), 0),
    operatorMinutes: hands.reduce((sum, entry) => sum + entry.endMinute - entry.startMinute, 0),
    dryerRuns,
  };
}
