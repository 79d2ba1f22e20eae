import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type BathState,
  dragOut,
  evaporate,
  refill,
  takeUp,
} from "../../../../src/core/bath/load/bath-state.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const load = fc.record({
  uptake: number(0, 0.2),
  dragged: number(0, 0.2),
  vapour: number(0, 0.2),
  dyePerL: number(0, 200),
});

test("dye balances over any run: start + added = taken up + dragged out + left, to 1e-9", () => {
  fc.assert(
    fc.property(fc.array(load, { maxLength: 50 }), (loads) => {
      let bath: BathState = { volumeL: 6, dye: 600 };
      let out = 0;
      let added = 0;
      for (const { uptake, dragged, vapour, dyePerL } of loads) {
        const dipped = takeUp(bath, uptake * bath.dye);
        const steamed = evaporate(dragOut(dipped, dragged), vapour);
        out += uptake * bath.dye + dragged * (dipped.dye / dipped.volumeL);
        added += (6 - steamed.volumeL) * dyePerL;
        bath = refill(steamed, { toVolumeL: 6, dyePerL });
        expect(bath.volumeL).toBe(6);
      }
      expect(Math.abs(600 + added - out - bath.dye)).toBeLessThan(1e-9 * (600 + added));
    }),
  );
});

test("drag-out leaves the strength as it is and vapour raises it", () => {
  const bath = { volumeL: 6, dye: 540 };
  const dragged = dragOut(bath, 0.5);
  expect(dragged.dye / dragged.volumeL).toBeCloseTo(90, 12);
  const steamed = evaporate(bath, 0.5);
  expect(steamed.dye / steamed.volumeL).toBeCloseTo(540 / 5.5, 12);
});

test("a bath fuller than the mark keeps its volume, and gets the dye that is given as an amount", () => {
  const full = { volumeL: 6.5, dye: 600 };
  expect(refill(full, { toVolumeL: 6, dyePerL: 100 })).toEqual(full);
  expect(refill(full, { toVolumeL: 6, dye: 20 })).toEqual({ volumeL: 6.5, dye: 620 });
});
