import fc from "fast-check";
import { expect, test } from "vitest";
import { bathLife } from "../../../../src/core/bath/life/bath-life.js";
import { drainSaves, dyeFate } from "../../../../src/core/bath/life/dye-fate.js";
import { drainingFilmMlPerDm2 } from "../../../../src/core/bath/rinse/drain-film.js";
import { longerDrain } from "../../../../src/core/bath/rinse/longer-drain.js";
import { partsOf, setting, toDepth } from "../settings.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const part = { dragOutMlPerDm2: 0.8, fromSeconds: 15, toSeconds: 30, celsius: 80, heightDm: 1 };

test("from 15 s to 30 s a longer drain saves at least what a smooth wall lets run and at most 1 - sqrt(1/2)", () => {
  const { share, dragOutMlPerDm2, extraSeconds } = longerDrain(part);
  const film = (seconds: number) => drainingFilmMlPerDm2({ seconds, heightDm: 1, celsius: 80 });
  expect(share.low).toBeCloseTo((film(15) - film(30)) / 0.8, 12);
  expect(share.low).toBeCloseTo(0.038, 3);
  expect(share.high).toBeCloseTo(1 - Math.SQRT1_2, 12);
  expect(dragOutMlPerDm2.low).toBeCloseTo(0.8 * Math.SQRT1_2, 12);
  expect(extraSeconds).toBe(15);
});

test("the two ends keep their order, grow with the drain time, and stop at 40 s", () => {
  fc.assert(
    fc.property(real(0.02, 4), real(2, 60), real(0, 60), real(0.2, 3), (dragOut, from, longer, height) => {
      const at = (toSeconds: number) =>
        longerDrain({ ...part, dragOutMlPerDm2: dragOut, fromSeconds: from, toSeconds, heightDm: height })
          .share;
      const [now, then] = [at(from + longer / 2), at(from + longer)];
      expect(then.low).toBeGreaterThanOrEqual(now.low);
      expect(then.high).toBeGreaterThanOrEqual(now.high);
      expect(then.low).toBeGreaterThanOrEqual(0);
      expect(then.low).toBeLessThanOrEqual(then.high + 1e-15);
      expect(then.high).toBeLessThan(1);
      expect(at(100)).toEqual(at(Math.max(40, from)));
    }),
  );
});

test("a shorter time than now saves nothing and costs nothing", () => {
  const shorter = longerDrain({ ...part, toSeconds: 5 });
  expect(shorter.share).toEqual({ low: 0, high: 0 });
  expect(shorter.extraSeconds).toBe(0);
});

test("the shares of a life's dye add up to 1, and a longer drain saves its share of what was rinsed away", () => {
  const life = bathLife({ ...setting, rule: "level" }, [{ ...partsOf(10, 8), ...toDepth(0.8) }], {
    everyDays: 1,
    shelfLifeDays: 60,
  });
  const fate = dyeFate({ ...life, left: life.dyeLeft });
  expect(fate.onPartsShare + fate.rinsedShare + fate.leftShare).toBeCloseTo(1, 12);
  expect(fate.onPartsShare).toBeCloseTo((life.loads * 0.03 * 10 * 0.8) / life.dyeUsed, 9);
  const saving = longerDrain(part);
  const { dye, minutes } = drainSaves(life, saving);
  expect(dye.high).toBeCloseTo(life.draggedOut * saving.share.high, 12);
  expect(minutes).toBeCloseTo((life.loads * 15) / 60, 12);
  expect(dyeFate({ takenUp: 0, draggedOut: 0, left: 0 })).toEqual({
    onPartsShare: 0,
    rinsedShare: 0,
    leftShare: 0,
  });
});
