import fc from "fast-check";
import type { Batch, Bath, Dye, Order, Part, Shade, Tank } from "../../../src/core/model/batch.js";
import { batch, dye, handling, tank } from "./sample.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const tanks = (name: string): fc.Arbitrary<Tank> =>
  fc
    .record({
      volumeL: real(4, 30),
      spare: real(1.1, 1.6),
      depthCm: real(8, 30),
      cover: fc.constantFrom("none" as const, "lid" as const, "balls" as const),
    })
    .map(({ volumeL, spare, depthCm, cover }) => ({
      ...tank,
      name,
      volumeL,
      capacityL: volumeL * spare,
      surfaceCm2: (1000 * volumeL) / depthCm,
      wallAreaDm2: 20,
      cover,
      heaterW: 6000,
    }));

const dyes = (name: string): fc.Arbitrary<Dye> =>
  fc
    .record({
      law: fc.constantFrom(
        "first-order" as const,
        "second-order" as const,
        "parabolic" as const,
        "cegarra-puente" as const,
      ),
      ratePerSecond: real(0.002, 0.03),
      price: real(10, 90),
      uptakePerDm2: real(0, 0.1),
      dilution: fc.oneof(
        real(0.02, 0.5).map((fraction) => ({ kind: "liquid" as const, fraction })),
        real(5, 40).map((gramsPerL) => ({ kind: "powder" as const, gramsPerL })),
      ),
      saturated: fc.option(real(0.2, 3), { nil: undefined }),
    })
    .map(({ saturated, ...rest }) => ({
      ...dye,
      ...rest,
      name,
      ...(saturated === undefined ? {} : { saturation: saturated }),
    }));

const parts = (name: string): fc.Arbitrary<Part> =>
  fc
    .record({
      massG: real(1, 60),
      thickness: real(0.05, 0.3),
      perLoad: fc.option(fc.integer({ min: 1, max: 30 }), { nil: undefined }),
      blank: real(0.1, 9),
    })
    .map(({ massG, thickness, perLoad, blank }) => {
      const volumeCm3 = massG / 0.93;
      return {
        name,
        massG,
        volumeCm3,
        areaDm2: (2 * volumeCm3) / thickness / 100,
        blank,
        heatCapacityKjPerKgK: 1.7,
        ...(perLoad === undefined ? {} : { perLoad }),
      };
    });

/** Batches with one or two dyes, one or two tanks a dye, one to four orders, and everything priced. */
export const batches: fc.Arbitrary<Batch> = fc
  .record({
    dyes: fc.tuple(dyes("coral"), dyes("navy")),
    dyeCount: fc.integer({ min: 1, max: 2 }),
    tanks: fc.tuple(tanks("a"), tanks("b"), tanks("c"), tanks("d")),
    tanksEach: fc.integer({ min: 1, max: 2 }),
    parts: fc.tuple(parts("hook"), parts("tray")),
    orders: fc.array(
      fc.record({
        part: fc.nat(1),
        dye: fc.nat(1),
        seconds: real(15, 280),
        quantity: fc.integer({ min: 1, max: 150 }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    topUp: fc.constantFrom("none" as const, "level" as const, "strength" as const),
    after: fc.constantFrom("keep" as const, "dump" as const),
    goodShare: real(0.8, 1),
    dragOutMlPerDm2: real(0, 2.5),
    dryerCapacity: fc.integer({ min: 5, max: 200 }),
  })
  .map((draw) => {
    const used = draw.dyes.slice(0, draw.dyeCount);
    const baths = used.flatMap((of, i): Bath[] =>
      draw.tanks.slice(2 * i, 2 * i + draw.tanksEach).map((holder) => ({
        index: 0,
        tank: holder,
        dye: of,
        start: { kind: "fresh" },
        topUp: draw.topUp,
        after: draw.after,
        everyDays: 1,
      })),
    );
    const shades: Shade[] = [];
    const orders = draw.orders.map((wish, index): Order => {
      const shade: Shade = {
        name: `s${index}`,
        dye: used[wish.dye % used.length]!,
        target: { kind: "time", seconds: wish.seconds },
        tolerance: 1.5,
      };
      shades.push(shade);
      return { index, part: draw.parts[wish.part]!, shade, quantity: wish.quantity };
    });
    return {
      ...batch,
      dyes: used,
      parts: draw.parts,
      shades,
      tanks: baths.map((bath) => bath.tank),
      baths: baths.map((bath, index) => ({ ...bath, index })),
      orders,
      yield: draw.goodShare,
      handling: { ...handling, dragOutMlPerDm2: draw.dragOutMlPerDm2, longestSeconds: 3000 },
      dryers: [{ ...batch.dryers[0]!, capacity: draw.dryerCapacity }],
    };
  });
