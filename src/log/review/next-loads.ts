import { topUpRecords } from "../../core/bath/load/top-up-rules.js";
import { replayLoad } from "../../core/bath/replay/real-load.js";
import { realMakeUp, realTopUp } from "../../core/bath/replay/real-top-up.js";
import type { ReplayedRow } from "../replay/replay-filling.js";
import type { FollowedFilling } from "./followed-filling.js";

/** Loads ahead for which times are made right: about what is dipped before somebody looks at the log again. */
const loadsAhead = 10;

const lastTime = ({ filling: { madeUp, rows } }: FollowedFilling): number =>
  (rows.at(-1) ?? madeUp).time.seconds;

/** The filling that was worked last, and what happened in its tank from the tenth load from the end on. */
function lastWorked(fillings: readonly FollowedFilling[]): {
  readonly last: FollowedFilling | undefined;
  readonly rows: readonly ReplayedRow[];
} {
  const last = fillings.toSorted((one, other) => lastTime(one) - lastTime(other)).at(-1);
  const rows = fillings.filter(({ of }) => of === last?.of).flatMap(({ after }) => after);
  const loads = rows.flatMap(({ dip }, i) => (dip === undefined ? [] : [i]));
  return { last, rows: loads.length === 0 ? [] : rows.slice(loads.at(-loadsAhead) ?? loads[0]) };
}

/**
 * How far the next loads go wrong where the sheet has other figures than the bath: ln of the fresh time that each gets
 * over the one that it should have, in the mean of those that find dye in the bath; 0 without such a load. They are like the
 * last ones in the tank that was worked last, topped up where those were with what the sheet then asks for.
 * @param sheet the fillings of a dye as the sheet's figures have them
 * @param really the same with the figures of the bath
 */
export function nextLoadsOff(
  sheet: readonly FollowedFilling[],
  really: readonly FollowedFilling[],
  roomCelsius: number,
): number {
  const { last, rows } = lastWorked(really);
  const before = sheet.find(({ filling }) => filling === last?.filling);
  if (last === undefined || before === undefined || rows.length === 0) return 0;
  const fresh = () =>
    [realMakeUp(before.real, {}, roomCelsius), realMakeUp(last.real, {}, roomCelsius)] as const;
  let [asked, there] =
    last.filling.dumped === undefined ? ([{ ...before.bath }, { ...last.bath }] as const) : fresh();
  const { setting } = before.real;
  const topUp = topUpRecords[setting.rule];
  let [loads, dyed, off] = [0, 0, 0];
  for (let i = 0; loads < loadsAhead; i++) {
    const { row, dip } = rows[i % rows.length]!;
    if (row.event === "made-up") [asked, there] = fresh();
    else if (row.event === "top-up") {
      const byL = Math.max(0, setting.fresh.volumeL - asked.volumeL);
      const dye = topUp.keepsLevel
        ? topUp.dye(asked, setting.fresh, byL)
        : (row.concentrateMl ?? row.concentrateG ?? 0);
      realTopUp(before.real, asked, { dye });
      realTopUp(last.real, there, { dye });
    } else if (row.event === "load" && dip !== undefined) {
      const { part, freshSeconds, celsiusBefore } = dip;
      const load = { part, parts: row.parts, celsius: celsiusBefore };
      replayLoad(before.real, asked, { ...load, dipped: { freshSeconds } });
      const got = replayLoad(last.real, there, { ...load, dipped: { seconds: asked.dipSeconds } });
      loads += 1;
      // A bath without dye gives no load a time.
      if (!(freshSeconds > 0 && got.freshSeconds > 0)) continue;
      dyed += 1;
      off += Math.log(got.freshSeconds / freshSeconds);
    }
  }
  return dyed === 0 ? 0 : off / dyed;
}
