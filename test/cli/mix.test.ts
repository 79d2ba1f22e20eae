import fc from "fast-check";
import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { makeUpArgs, runFake } from "./fake-io.js";

const topUpArgs = [
  "mix",
  "--from-volume",
  "5.6L",
  "--from-strength",
  "92%",
  "--volume",
  "6L",
  "--dilution",
  "1:9",
  "--temperature",
  "80C",
] as const;
const cases: Readonly<Record<string, readonly string[]>> = {
  "make-up": makeUpArgs,
  "make-up-powder": [
    "mix",
    "--volume",
    "2 US gal",
    "--dilution",
    "20 g/L",
    "--temperature",
    "176F",
    "--room",
    "68F",
  ],
  "top-up": topUpArgs,
  "top-up-too-full": [
    "mix",
    "--from-volume",
    "6L",
    "--from-strength",
    "50%",
    "--volume",
    "6L",
    "--dilution",
    "1:9",
    "--temperature",
    "60C",
  ],
  "top-up-too-strong": [
    "mix",
    "--from-volume",
    "5.6L",
    "--from-strength",
    "130%",
    "--volume",
    "6L",
    "--dilution",
    "1:9",
  ],
  "make-up-undiluted": ["mix", "--volume", "6000L", "--dilution", "1:0"],
  thinning: ["mix", "--from-volume", "300mL", "--from-strength", "70%", "--strength", "40%"],
  "on-weight": [
    "mix",
    "--goods",
    "250g",
    "--depth",
    "2%",
    "--stock",
    "1%",
    "--ratio",
    "1:20",
    "--dye-strength",
    "80%",
  ],
  "on-weight-dry": ["mix", "--goods", "100kg", "--depth", "4%", "--ratio", "10 L/kg"],
};

for (const [name, args] of Object.entries(cases))
  test(`mix gives the recorded report for ${name} in every format`, async () => {
    for (const [format, ending] of [
      ["text", "txt"],
      ["json", "json"],
      ["csv", "csv"],
      ["tsv", "tsv"],
      ["markdown", "md"],
    ] as const) {
      const { status, out } = await runFake([...args, "--format", format]);
      expect(status).toBe(0);
      await expect(out).toMatchFileSnapshot(`golden/mix/${name}.${ending}`);
    }
  });

test("mix gives no line wider than a terminal of 60 to 80 columns", async () => {
  for (const args of Object.values(cases))
    for (const columns of [60, 66, 72, 80, undefined]) {
      const { out } = await runFake(args, { columns });
      for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns ?? 80);
    }
});

test("mix carries the cautions that apply in data", async () => {
  for (const format of ["json", "csv", "tsv"]) {
    const { out } = await runFake([...makeUpArgs, "--format", format]);
    for (const text of [
      "scalds at once",
      "extraction",
      "gloves, goggles",
      "residual-current",
      "under 45 °C",
      "safety data sheet",
      "Label every jug",
      "water authority",
      "food, skin or toys",
      "licensed practice",
    ])
      expect([format, out]).toEqual([format, expect.stringContaining(text)]);
  }
});

test("mix points people to the cautions in one paragraph, whatever it computes", async () => {
  for (const args of Object.values(cases))
    for (const format of ["text", "markdown"]) {
      const { out } = await runFake([...args, "--format", format]);
      const said = out.trimEnd().split("\n\n").at(-1)!.replace(/\s+/g, " ");
      expect(said).toBe(
        "Amounts only: hot liquor scalds, its vapour, electricity near water and spent dye need care. dipwright plan lists the cautions; local rules, the supplier's data sheet and licensed practice come first.",
      );
    }
});

test("mix says a dilution of 1:9 as 1 part dye + 9 parts water = 10 % by volume in every format", async () => {
  for (const args of [makeUpArgs, topUpArgs])
    for (const format of ["text", "json", "csv", "tsv", "markdown"])
      expect((await runFake([...args, "--format", format])).out).toContain(
        "1 part dye + 9 parts water = 10 % by volume",
      );
});

const data = async (args: readonly string[]) =>
  JSON.parse((await runFake([...args, "--format", "json"])).out);

test("mix works out a cold bath without a temperature: 0.6 L of dye and 5.4 L of water for 6 L at 1:9", async () => {
  const { makeUp } = await data(["mix", "--volume", "6L", "--dilution", "1:9"]);
  expect(makeUp).toMatchObject({ fraction: 0.1, volumeHotL: 6, volumeColdL: 6 });
  expect(makeUp.concentrateMl).toBeCloseTo(600, 9);
  expect(makeUp.waterMl).toBeCloseTo(5400, 9);
});

test("mix reads the same dilution from 1:9, 10 % and 100 mL/L", async () => {
  const [ratio, share, volumes] = await Promise.all(
    ["1:9", "10 %", "100 mL/L"].map((dilution) => data(["mix", "--volume", "6L", "--dilution", dilution])),
  );
  expect(share).toEqual(ratio);
  expect(volumes).toEqual(ratio);
});

test("mix tops up so that dye balances, and from an empty tank gives the make-up", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 0, max: 100 }),
      fc.integer({ min: 10, max: 60 }),
      async (strength, tenths) => {
        const from = tenths / 10;
        const { topUp, volumeL } = await data([
          "mix",
          "--from-volume",
          `${from}L`,
          "--from-strength",
          `${strength}%`,
          "--volume",
          "6L",
          "--dilution",
          "1:9",
        ]);
        const dyeMl = 100 * (strength / 100) * (from - topUp.takeOutHotL) + topUp.concentrateMl;
        expect(dyeMl).toBeCloseTo(100 * topUp.strength * volumeL, 6);
        expect((from - topUp.takeOutHotL) * 1000 + topUp.concentrateMl + topUp.waterMl).toBeCloseTo(
          volumeL * 1000,
          6,
        );
        expect(topUp.strength).toBeCloseTo(1, 9);
      },
    ),
    { numRuns: 50 },
  );
});

const firstError = async (...args: string[]) => {
  const { status, out, err } = await runFake(["mix", ...args]);
  expect([args, status, out]).toEqual([args, 2, ""]);
  return err.replace(/\s+/g, " ");
};

test("mix says what is missing, what does not belong, and what cannot be", async () => {
  expect(
    await firstError("--from-volume", "5L", "--from-strength", "300%", "--volume", "6L", "--dilution", "1:1"),
  ).toContain("300 % is more than undiluted concentrate has");
  expect(await firstError()).toContain("nothing to mix is given");
  expect(await firstError("--volume", "6L")).toContain("a make-up also needs --dilution");
  expect(await firstError("--from-volume", "6L")).toContain(
    "a top-up also needs --from-strength and --volume and --dilution",
  );
  expect(await firstError("--volume", "6L", "--dilution", "1:9", "--strength", "50%")).toContain(
    "--strength: has no part in a make-up",
  );
  expect(await firstError("--goods", "1kg", "--depth", "2%", "--volume", "6L")).toContain(
    "--volume: has no part in an on-weight recipe",
  );
  expect(await firstError("--volume", "6L", "--dilution", "1:9", "--temperature", "120C")).toContain(
    "water is liquid from 0 to 100 °C",
  );
  expect(await firstError("--volume", "0L", "--dilution", "1:9")).toContain(
    "a volume must be more than nothing",
  );
  expect(await firstError("--volume", "6L ± 1L", "--dilution", "1:9")).toContain("no ± is taken here");
  expect(await firstError("--from-volume", "6L", "--from-strength", "40%", "--strength", "70%")).toContain(
    "thinning cannot make a bath stronger",
  );
  expect(await firstError("--goods", "1kg", "--depth", "2%", "--stock", "1 g/L", "--ratio", "1:5")).toContain(
    "is more than the 5.00 L of liquor",
  );
  expect(
    await firstError(
      "--from-volume",
      "5L",
      "--from-strength",
      "50%",
      "--volume",
      "6L",
      "--dilution",
      "1:1",
      "--strength",
      "300%",
    ),
  ).toContain("more than undiluted concentrate gives");
  expect(await firstError("--volume", "6L", "--dilution", "1:9", "--set", "a=b")).toContain("nothing to set");
});

test("mix says of a bath that is too strong what to take out so that water brings it to strength", async () => {
  const args = "mix --from-volume 5L --from-strength 130% --volume 6L --dilution 1:9".split(" ");
  const { toReachStrength, topUp } = await data(args);
  // 5 L - 6 L / 1.3 go out; what stays is a third more than it should be, in 6 L just right.
  expect(topUp.strength).toBeCloseTo(6.5 / 6, 9);
  expect(toReachStrength.takeOutHotL).toBeCloseTo(5 - 6 / 1.3, 9);
  expect(toReachStrength.waterMl).toBeCloseTo(6000 - 6000 / 1.3, 6);
  expect(1.3 * (5 - toReachStrength.takeOutHotL)).toBeCloseTo(6, 9);
  const hot = await data([...args, "--temperature", "80C"]);
  expect(hot.toReachStrength.takeOutHotL).toBeCloseTo(5 - 6 / 1.3, 9);
  expect(hot.toReachStrength.waterMl).toBeLessThan(toReachStrength.waterMl);
});

test("mix says that volumes are the room's where no temperature is given, and only then", async () => {
  for (const args of ["--volume 6L --dilution 1:9", "--from-volume 5L --from-strength 90% --strength 80%"]) {
    const cold = ["mix", ...args.split(" "), "--room", "18C"];
    expect((await data(cold)).assumptions).toEqual([
      "volumes are measured at the room's 18 °C, as no --temperature is given; a bath measured hot takes less.",
    ]);
    expect((await runFake(cold)).out).toContain("Assumed: volumes are measured at the room's 18 °C");
    expect((await data([...cold, "--temperature", "80C"])).assumptions).toEqual([]);
  }
});

test("mix leaves out a step that comes to nothing", async () => {
  const undiluted = await runFake(["mix", "--volume", "2L", "--dilution", "1:0"]);
  expect(undiluted.out).toMatch(/\n1 {2}concentrate +2\.00 L\n/);
  expect(undiluted.out).not.toContain("water  ");
  const same = await runFake("mix --from-volume 2L --from-strength 70% --strength 70%".split(" "));
  expect(same.out).toContain("Nothing to add: the bath is as asked for.");
});

test("mix measures large volumes as large vessels do", async () => {
  const amounts = async (volume: string) =>
    (await runFake(["mix", "--volume", volume, "--dilution", "1:9"])).out.match(/(?<= {2})[\d.]+ m?L$/gm);
  expect(await amounts("6000L")).toEqual(["5400 L", "600.0 L"]);
  expect(await amounts("600L")).toEqual(["540.0 L", "60.00 L"]);
});

test("mix takes a temperature without a unit for °F where that alone is likely", async () => {
  const hot = ["--volume", "6L", "--dilution", "1:9", "--temperature", "175"];
  expect(await firstError(...hot)).toContain("help: write 175 °F");
  expect(await firstError(...hot.slice(0, 4), "--room", "68")).toContain("help: write 68 °F");
  expect(await firstError("--volume", "6L", "--dilution", "1-9")).toContain("write 1:9");
});
