import fc from "fast-check";
import { expect, test } from "vitest";
import { keyPathText, readKeyPath } from "../../../src/batch-file/source/key-path.js";

const names = (text: string): string[] => {
  const path = readKeyPath(text);
  expect(path.ok).toBe(true);
  return path.ok ? path.steps.map(({ name }) => name) : [];
};

test("readKeyPath parts names at dots that are neither in quotes nor behind a backslash", () => {
  expect(names("parts.clip.mass=5 g")).toEqual(["parts", "clip", "mass"]);
  expect(names('parts."clip v1.2".mass=5 g')).toEqual(["parts", "clip v1.2", "mass"]);
  expect(names("parts.clip v1\\.2.mass=5 g")).toEqual(["parts", "clip v1.2", "mass"]);
  expect(names(`parts.'5" disc'.mass=5 g`)).toEqual(["parts", '5" disc', "mass"]);
  expect(names('parts.5" disc.mass=5 g')).toEqual(["parts", '5" disc', "mass"]);
});

test("readKeyPath gives the place of a step, its quotes included, and of the equals sign", () => {
  expect(readKeyPath('parts."a=b".mass=5 g')).toEqual({
    ok: true,
    steps: [
      { name: "parts", start: 0, end: 5 },
      { name: "a=b", start: 6, end: 11 },
      { name: "mass", start: 12, end: 16 },
    ],
    equals: 16,
  });
});

test("readKeyPath says why it cannot read on", () => {
  expect(readKeyPath("parts.clip")).toEqual({ ok: false, at: 0, why: "no-equals" });
  expect(readKeyPath('parts."clip.mass=5 g')).toEqual({ ok: false, at: 6, why: "open-quote" });
  expect(readKeyPath('parts."clip"s.mass=5 g')).toEqual({ ok: false, at: 12, why: "after-quote" });
});

test("readKeyPath reads back what keyPathText writes, whatever the names", () => {
  expect(keyPathText(["parts", "clip v1.2", "mass"])).toBe('parts."clip v1.2".mass');
  fc.assert(
    fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), (list) => {
      expect(names(`${keyPathText(list)}=1`)).toEqual(list);
    }),
  );
});
