import { expect, test } from "vitest";
import type { PlanBath, PlanLoad } from "../../../src/core/plan/plan-model.js";
import { bathBlocks } from "../../../src/report/plan/bath-blocks.js";
import { planned, printed, withBath } from "./planned.js";

const plan = planned();
const page = (bath: Partial<PlanBath>, load: Partial<PlanLoad> = {}): string => {
  const changed = withBath(plan, bath, load);
  return printed(bathBlocks(changed, changed.baths[0]!, 0));
};

test("a dip under a minute needs care to come out level, one of a minute does not", () => {
  const spots = "Short dips spot and streak: clean parts, all in at once, never still, rinsed.";
  expect(page({}, { dipSeconds: 59.9 })).toContain(spots);
  expect(page({}, { dipSeconds: 60 })).not.toContain(spots);
  const [first, ...others] = plan.baths[0]!.loads.map((load) => ({ ...load, dipSeconds: 60 }));
  expect(page({ loads: [{ ...first!, dipSeconds: 59.9 }, ...others] })).toContain(spots);
});

test("loose dye is said from 1 % of the dye on the parts", () => {
  const { rinse } = plan.baths[0]!;
  expect(page({ rinse: { ...rinse, looseShare: 0.01 } })).toContain(
    "1 % of the dye on the parts stays loose.",
  );
  expect(page({ rinse: { ...rinse, looseShare: 0.0099 } })).not.toContain("stays loose");
});

test("waits have a column where a load waits half a second, misses where one is 0.5 off", () => {
  expect(page({}, { waitSeconds: 0.5 })).toMatch(/DIP at °C wait rack/);
  expect(page({}, { waitSeconds: 0.4 })).toMatch(/DIP at °C rack/);
  expect(page({}, { deltaE00: 0.5 })).toContain("dE00");
  expect(page({}, { deltaE00: 0.49 })).not.toContain("dE00");
});

test("what is on the liquor is on while it heats, and comes off before it cools", () => {
  for (const [cover, on, off] of [
    ["none", "", ""],
    ["lid", ", lid on", ", lid off"],
    ["balls", ", balls on", ", balls out"],
  ] as const) {
    expect(page({ cover })).toContain(`Heater on at +0:15${on}, stay near: 80 °C in`);
    expect(page({ cover })).toContain(`Switch all off${off}; empty it under 45 °C`);
  }
});

test("a bath that never comes under coolTo, or is under it, is said to be so", () => {
  expect(page({ coolMinutes: null })).toContain(
    "The room is too warm for the bath to come under 45 °C: let it cool as far as it goes.",
  );
  expect(page({ coolMinutes: 0 })).toContain("it may be emptied at once, since it is under 45 °C.");
  expect(page({ coolMinutes: 0.2 })).toContain("empty it under 45 °C, after 1 min.");
});
