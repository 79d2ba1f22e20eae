import { describe, expect, test } from "vitest";
import { topping } from "../../../../src/core/bath/make-up/top-up.js";
import { atStrength, dilutionOf, figureOf, volumeShare } from "../../../../src/core/quantity/dye/dilution.js";
import {
  type DyeFigure,
  dyeFigures,
  dyeInWords,
  figureOfDye,
  kindWith,
} from "../../../../src/core/quantity/dye/dye-figures.js";
import { dyeKinds, kindsOfDye } from "../../../../src/core/quantity/dye/dye-kinds.js";

const names = Object.keys(dyeKinds.liquid.keys) as DyeFigure[];

describe.each(kindsOfDye)("figures of a %s dye", (kind) => {
  test("read back what was written, and the kind, from every key", () => {
    names.forEach((name, i) => {
      const written = dyeFigures(kind, { [name]: i } as Record<DyeFigure, number>);
      expect(Object.keys(written)).toEqual([dyeKinds[kind].keys[name]]);
      expect([kindWith(written, name), figureOfDye(written, name)]).toEqual([kind, i]);
    });
  });

  test("have keys that say the unit, and that no other kind has", () => {
    const ending = { mL: "Ml", g: "G" }[dyeKinds[kind].unit];
    const own = Object.values(dyeKinds[kind].keys);
    expect(own.every((key) => new RegExp(`${ending}(Per(Part|Dm2))?$`).test(key))).toBe(true);
    const others = kindsOfDye.filter((other) => other !== kind);
    for (const other of others)
      expect(Object.values<string>(dyeKinds[other].keys).filter((key) => own.includes(key as never))).toEqual(
        [],
      );
  });

  test("make a dilution and read it, at half the strength too", () => {
    const dilution = dilutionOf(kind, 0.4);
    expect(dilution.kind).toBe(kind);
    expect([figureOf(dilution), figureOf(atStrength(dilution, 0.5))]).toEqual([0.4, 0.2]);
  });
});

test("figures without any dye are a defect, not a liquid", () => {
  expect(() => kindWith({ waterMl: 5 }, "amount")).toThrow("no amount of a dye among waterMl");
});

test("amounts in messages have the digits that a cylinder or a balance has", () => {
  expect(kindsOfDye.map((kind) => dyeInWords(kind, 1234.56))).toEqual([
    "1235 mL of concentrate",
    "1234.6 g of powder",
  ]);
});

test("a concentrate takes the place of water, and a powder does not", () => {
  expect(kindsOfDye.map((kind) => volumeShare(dilutionOf(kind, 0.2)))).toEqual([0.2, 0]);
  const asked = { volumeL: 5, strength: 1, toVolumeL: 6, toStrength: 1, celsius: 20, roomCelsius: 20 };
  expect(topping({ ...asked, dilution: dilutionOf("liquid", 0.2) })).toMatchObject({
    concentrateMl: 200,
    waterMl: 800,
  });
  expect(topping({ ...asked, dilution: dilutionOf("powder", 20) })).toMatchObject({
    powderG: 20,
    waterMl: 1000,
  });
});
