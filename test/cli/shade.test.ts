import { expect, test } from "vitest";
import { ciede2000 } from "../../src/core/colour/difference/ciede2000.js";
import { resolveLab } from "../../src/core/colour/resolve-colour.js";
import { widthOf } from "../../src/report/format/wrap.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const shade = (...args: string[]) => runFake(["shade", ...args], folderIo(examples));
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((match) => match[1]!);

/** A spec with one dye whose swatches are as given. */
const withSwatches = (swatches: string, more = "") =>
  new Map([
    [
      "dye.yaml",
      `batch: swatches\nbases: { white: { lab: [93.0, -0.3, 0.6] } }\ndyes:\n  brick: { dilution: 1:9, temperature: 80 °C, base: white, swatches: [${swatches}] }\n${more}`,
    ],
  ]);
const withDye = (swatches: string, ...args: string[]) =>
  runFake(["shade", "dye.yaml", ...args], folderIo(examples, withSwatches(swatches)));
const json = (out: string) => JSON.parse(out);
const four =
  "{ time: 15 s, lab: [63.6, 29.4, 8.1] }, { time: 30 s, lab: [56.2, 34.0, 10.1] }, { time: 60 s, lab: [49.2, 36.9, 12.2] }, { time: 180 s, lab: [41.8, 38.7, 13.9] }";

for (const format of ["text", "json", "csv", "markdown", "svg", "html"])
  test(`shade prints a target as ${format}`, async () => {
    const { status, out } = await shade(
      "restock.yaml",
      "--dye",
      "brick",
      "--target",
      "49,37,12",
      "--strength",
      "80%",
      "--format",
      format,
    );
    expect(status).toBe(0);
    await expect(out).toMatchFileSnapshot(`golden/shade/brick.${format === "text" ? "txt" : format}`);
  });

test("shade has the keys that scripts rely on", async () => {
  const report = json((await shade("restock.yaml", "--target", "brick-deep", "--format", "json")).out);
  expect(report).toMatchObject({
    schema: "dipwright/shade@1",
    law: "first-order",
    ratePerSecond: expect.any(Number),
  });
  expect(report.leaveOneOut).toEqual({ median: expect.any(Number), max: expect.any(Number) });
  expect(report.curve[0]).toMatchObject({
    seconds: 5,
    lab: [expect.any(Number), expect.any(Number), expect.any(Number)],
    hex: expect.stringMatching(/^#/),
  });
  expect(report.target).toMatchObject({
    seconds: expect.any(Number),
    deltaE00: expect.any(Number),
    reachable: true,
    extrapolated: false,
  });
  expect(report.target.windowSeconds[0]).toBeLessThan(report.target.seconds);
  expect(report.target.windowSeconds[1]).toBeGreaterThan(report.target.seconds);
  expect(report.target.interval95[0]).toBeLessThan(report.target.seconds);
  expect(report.target.interval95[1]).toBeGreaterThan(report.target.seconds);
});

test("shade asks for more time in a weaker or cooler bath, and for a swatch's own time in a fresh one", async () => {
  const seconds = async (...args: string[]): Promise<number> =>
    json(
      (
        await shade(
          "restock.yaml",
          "--dye",
          "brick",
          "--target",
          "49.2,36.9,12.2",
          "--format",
          "json",
          ...args,
        )
      ).out,
    ).target.seconds;
  expect(await seconds()).toBeCloseTo(60, 1);
  expect(await seconds("--strength", "70%")).toBeGreaterThan(90);
  expect(await seconds("--temperature", "75C")).toBeGreaterThan(70);
});

test("shade gives status 1 for a colour out of reach, and a weak bath its time", async () => {
  const far = await shade("restock.yaml", "--dye", "teal", "--target", "#00ff88");
  expect([far.status, far.out]).toEqual([1, expect.stringContaining("does not reach")]);
  const weak = await shade("restock.yaml", "--target", "brick-deep", "--strength", "40%");
  expect([weak.status, weak.out]).toEqual([0, expect.stringContaining("over the longest dip")]);
});

test("shade gives the dilution and the temperature that bring a quick dip to a minute", async () => {
  const { target } = json(
    (await shade("restock.yaml", "--dye", "teal", "--target", "67.5,-14.4,-26", "--format", "json")).out,
  );
  expect(target).toMatchObject({ tooQuick: true, wayOut: { seconds: 60 } });
  const slower = async (...args: string[]) =>
    json(
      (
        await shade(
          "restock.yaml",
          "--dye",
          "teal",
          "--target",
          "67.5,-14.4,-26",
          "--format",
          "json",
          ...args,
        )
      ).out,
    ).target.seconds;
  expect(await slower("--strength", `${100 * target.wayOut.strength}%`)).toBeCloseTo(60, 3);
  expect(await slower("--temperature", `${target.wayOut.celsius}C`)).toBeCloseTo(60, 3);
});

test("shade marks another base as an estimate", async () => {
  const { out } = await shade("restock.yaml", "--dye", "brick", "--base", "grey");
  expect(out).toContain("An estimate");
});

test("a base given as hex is taken under the reading of the dye", async () => {
  // The dye is read under A/2: what the screen shows under D65/2 is not what is read there.
  const curve = async (base: string) => {
    const dye = `batch: b\nbases: { white: { lab: [93.0, -0.3, 0.6] }, other: { ${base} } }\ndyes:\n  brick: { dilution: 1:9, temperature: 80 °C, base: white, reading: A/2, swatches: [${four}] }\n`;
    const { out } = await runFake(
      ["shade", "dye.yaml", "--dye", "brick", "--base", "other", "--format", "json"],
      folderIo(examples, new Map([["dye.yaml", dye]])),
    );
    return json(out).curve.map(({ lab }: { lab: number[] }) => lab);
  };
  const carried = resolveLab({ kind: "hex", hex: "#8f8a80" }, { illuminant: "A", observer: 2 });
  const asRead = resolveLab({ kind: "hex", hex: "#8f8a80" }, { illuminant: "D65", observer: 10 });
  if (!carried.ok || !asRead.ok) throw new Error("the hex is a colour");
  const hex = await curve('hex: "#8f8a80"');
  expect(hex).toEqual(await curve(`lab: [${carried.value.join(", ")}]`));
  expect(hex).not.toEqual(await curve(`lab: [${asRead.value.join(", ")}]`));
});

test("shade --trial multiplies all times by that of the trial, from CIELAB or hex, and says so", async () => {
  const at = async (...args: string[]) =>
    json((await shade("restock.yaml", "--target", "brick-deep", ...args, "--format", "json")).out);
  const plain = await at("--strength", "70%");
  const tried = await at("--strength", "70%", "--trial", "90 s, 49.2,36.9,12.2");
  expect(tried.target.seconds / plain.target.seconds).toBeCloseTo(tried.trial.factor, 9);
  const same = await at(
    "--strength",
    "70%",
    "--trial",
    `${plain.target.seconds} s, ${plain.target.lab.join(",")}`,
  );
  expect(same.trial.factor).toBeCloseTo(1, 4);
  expect(tried.target.intervalFrom).not.toBe("temperature");
  const hex = await at("--trial", `60 s, ${plain.target.hex}`);
  expect(hex.trial.factor).toBeGreaterThan(0);
  for (const bad of ["49,36,12", "60 s", "soon, 49,36,12"])
    expect((await shade("restock.yaml", "--target", "brick-deep", "--trial", bad)).status).toBe(2);
});

test("two swatches give first-order and say that nothing checks it", async () => {
  const { status, out } = await withDye(
    "{ time: 30 s, lab: [56.2, 34.0, 10.1] }, { time: 60 s, lab: [49.2, 36.9, 12.2] }",
    "--format",
    "json",
  );
  expect(status).toBe(0);
  expect(json(out)).toMatchObject({ law: "first-order", rateFrom: "fitted", leaveOneOut: null });
});

test("one swatch gives an assumed rate, and its own colour at its own time", async () => {
  const { out } = await withDye(
    "{ time: 60 s, lab: [49.2, 36.9, 12.2] }",
    "--target",
    "49.2,36.9,12.2",
    "--format",
    "json",
  );
  expect(json(out)).toMatchObject({ law: "first-order", rateFrom: "assumed" });
  expect(json(out).target.seconds).toBeCloseTo(60, 0);
});

test("no swatch, or a rate alone, has no curve and says what to add", async () => {
  expect(codes((await withDye("")).err)).toEqual(["no-rate"]);
  const rated = await runFake(["shade", "minimal.yaml"], folderIo(examples));
  expect([rated.status, codes(rated.err)]).toEqual([2, ["no-swatches"]]);
});

test("swatches that are all alike, or like their base, are refused", async () => {
  const alike = "{ time: 15 s, lab: [50, 30, 10] }, { time: 60 s, lab: [50, 30, 10] }";
  expect(codes((await withDye(alike)).err)).toEqual(["swatches-alike"]);
  expect(codes((await withDye("{ time: 15 s, lab: [93.0, -0.3, 0.6] }")).err)).toEqual([
    "swatches-like-base",
  ]);
});

test("a swatch that is darker at a shorter time is a warning, and the curve is drawn all the same", async () => {
  const swapped =
    "{ time: 30 s, lab: [49.2, 36.9, 12.2] }, { time: 60 s, lab: [56.2, 34.0, 10.1] }, { time: 180 s, lab: [41.8, 38.7, 13.9] }";
  const { status, err } = await withDye(swapped);
  expect([status, codes(err)]).toEqual([0, ["swatch-order"]]);
});

test("swatches of an exhausted dye that look alike need not darken with time", async () => {
  const last = (lab: string) =>
    `{ time: 30 s, lab: [56.2, 34.0, 10.1] }, { time: 60 s, lab: [41.8, 38.7, 13.9] }, { time: 180 s, lab: [${lab}] }`;
  expect(codes((await withDye(last("42.6, 38.4, 13.6"))).err)).toEqual([]);
  expect(codes((await withDye(last("43.0, 38.3, 13.5"))).err)).toEqual(["swatch-order"]);
});

test("swatches in any order of the file give the same curve", async () => {
  const list = four.split("}, ").map((text) => (text.endsWith("}") ? text : `${text}}`));
  const straight = await withDye(list.join(", "), "--format", "json");
  const turned = await withDye([...list].reverse().join(", "), "--format", "json");
  expect(turned.out).toBe(straight.out);
});

test("swatches as hex from a phone are carried from D65/2 to the dye's reading", async () => {
  const { status, out } = await withDye(
    '{ time: 15 s, hex: "#d88f94" }, { time: 60 s, hex: "#b75961" }, { time: 180 s, hex: "#a94850" }',
    "--format",
    "json",
  );
  expect(status).toBe(0);
  expect(json(out).swatches.map((swatch: { hex: string }) => swatch.hex)).toEqual([
    "#d88f94",
    "#b75961",
    "#a94850",
  ]);
});

test("shade refuses an unknown dye, target, base, strength and temperature, all in one run where it can", async () => {
  const first = async (...args: string[]) => (await shade("restock.yaml", ...args)).err.split("\n")[0];
  expect(await first()).toContain("--dye is needed");
  expect(await first("--dye", "brik")).toContain('no dye is named "brik"');
  expect(await first("--target", "brick-deap")).toContain('no shade or colour is named "brick-deap"');
  expect(await first("--dye", "teal", "--target", "brick-deep")).toContain("is dyed with brick");
  const many = await shade(
    "restock.yaml",
    "--dye",
    "teal",
    "--strength",
    "0%",
    "--temperature",
    "80",
    "--base",
    "gray",
  );
  expect(many.err.match(/error/g)?.length).toBeGreaterThanOrEqual(3);
});

for (const columns of [60, 80])
  test(`shade keeps its lines within ${columns} columns`, async () => {
    const { out } = await runFake(
      ["shade", "restock.yaml", "--target", "brick-deep", "--trial", "60 s, 49,37,12"],
      {
        ...folderIo(examples),
        columns,
        outIsTerminal: true,
        env: { NO_COLOR: "1" },
      },
    );
    for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns);
  });

test("shade says what moves a target and what each must be held to: the window in seconds, a dip at the edge of each at the tolerance", async () => {
  const { target } = json((await shade("restock.yaml", "--target", "brick-light", "--format", "json")).out);
  const { seconds, celsius, strengthPercent, makeUpDye } = target.sensitivity;
  const [from, to] = target.windowSeconds;
  expect(target.seconds - seconds.hold.less).toBeCloseTo(from, 3);
  expect(target.seconds + seconds.hold.more).toBeCloseTo(to, 3);
  expect(seconds.hold.within).toBe(Math.min(seconds.hold.less, seconds.hold.more));
  expect(Math.abs(seconds.perUnit)).toBeCloseTo(target.slopePerSecond, 2);
  // 584 mL in the 6 L tank: one per cent of them is as much as one per cent of the strength.
  expect([makeUpDye.unit, makeUpDye.volumeL]).toEqual(["mL", 6]);
  expect(strengthPercent.perUnit / makeUpDye.perUnit).toBeCloseTo(5.84, 1);
  const off = async (...args: string[]) => {
    const { curve } = json((await shade("restock.yaml", "--dye", "brick", ...args, "--format", "json")).out);
    const { lab } = curve.find((point: { seconds: number }) => point.seconds === 30);
    return ciede2000(lab, target.lab);
  };
  expect(await off("--temperature", `${80 + celsius.hold.more}C`)).toBeCloseTo(1.5, 2);
  expect(await off("--strength", `${100 - strengthPercent.hold.less}%`)).toBeCloseTo(1.5, 2);
});

test("shade leaves the make-up out where no tank holds the dye, and all of it where the shade is out of reach", async () => {
  const bare = json((await withDye(four, "--target", "49,37,12", "--format", "json")).out);
  expect(bare.target.sensitivity).toMatchObject({
    makeUpDye: null,
    seconds: { perUnit: expect.any(Number) },
  });
  const far = json((await withDye(four, "--target", "20,0,0", "--format", "json")).out);
  expect(far.target.sensitivity).toBeNull();
});

test("a base that changed since the swatches were dyed gives a warning, how far colours move, and the times that bring them back", async () => {
  const lines = [
    "{ time: 0 s, lab: [91.0, -0.4, -0.6] }",
    "{ time: 15 s, lab: [80.2, 21.7, 9.8] }",
    "{ time: 60 s, lab: [65.9, 44.6, 23.0] }",
    "{ time: 180 s, lab: [55.2, 55.9, 31.8] }",
  ].join(", ");
  const moved = await withDye(lines, "--format", "json");
  expect(moved.err).toContain("base-moved");
  const { movedBase, estimated } = json(moved.out);
  expect(estimated).toBe(true);
  expect(movedBase.colours).toHaveLength(3);
  for (const { deltaE00, correctedDeltaE00 } of movedBase.colours)
    expect(correctedDeltaE00).toBeLessThanOrEqual(deltaE00 + 1e-9);
  expect((await withDye(lines)).out).toContain("dip instead");
});

test("one swatch gives no verdict on another colour, and says what to dip next", async () => {
  const other = await withDye("{ time: 60 s, lab: [49.2, 36.9, 12.2] }", "--target", "60,30,9");
  expect([other.status, other.out]).toEqual([2, ""]);
  expect(other.err).toContain("one-swatch");
  const curve = await withDye("{ time: 60 s, lab: [49.2, 36.9, 12.2] }");
  expect(curve.out).toContain("One swatch tells only its own colour");
});
