import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linesOf } from "../../../src/batch-file/source/lines.js";
import type { Path } from "../../../src/batch-file/source/source.js";
import { composeYaml } from "../../../src/batch-file/yaml/yaml-compose.js";
import { YamlPlaces } from "../../../src/batch-file/yaml/yaml-places.js";
import { yamlPlain } from "../../../src/batch-file/yaml/yaml-plain.js";
import { readYaml } from "../../../src/batch-file/yaml/yaml-read.js";
import { type YamlNode, yamlTree } from "../../../src/batch-file/yaml/yaml-tree.js";
import { readFile, readText } from "../read.js";

const root = new URL("../../../", import.meta.url).pathname;
const texts = ["examples", "fixtures/good", "fixtures/bad"]
  .flatMap((folder) => readdirSync(`${root}${folder}`).map((name) => `${folder}/${name}`))
  .filter((name) => /\.ya?ml$/.test(name))
  .map((name) => readFile(name).replace(/^\uFEFF/, ""))
  // A carriage return alone ends a line by YAML 1.2, which the yaml package has not.
  .filter((text) => !/\r(?!\n)/.test(text) && text.length < 100_000);

const lines = linesOf("batch.yaml", "");
const plainOf = (tree: YamlNode | null) => yamlPlain(tree, lines, () => false);

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const keys = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [path, ...keys.flatMap((key) => pathsOf((value as never)[key], [...path, key]))];
}

/** What the two readers make of one text; undefined where one of them refuses it. */
function both(text: string) {
  const one = yamlTree(text);
  const other = composeYaml(text, linesOf("batch.yaml", text));
  return one !== undefined && "root" in other ? { one: one.root, other: other.root } : undefined;
}

describe("the two readers of YAML", () => {
  test("give the same data, and the same place of each key and value, of all examples and fixtures", () => {
    let read = 0;
    for (const text of texts) {
      const trees = both(text);
      if (trees === undefined) continue;
      const { plain, diagnostics } = plainOf(trees.one);
      expect(plainOf(trees.other).plain, text).toEqual(plain);
      // A duplicate key has two places, and one of them only in the data.
      if (diagnostics.length > 0) continue;
      read++;
      const [one, other] = [new YamlPlaces(trees.one, text), new YamlPlaces(trees.other, text)];
      for (const path of pathsOf(plain).slice(1)) {
        const { key, value, short } = one.ranges(path);
        const theirs = other.ranges(path);
        expect(key, `${path}`).toEqual(theirs.key);
        expect(short, `${path}`).toBe(theirs.short);
        if (short) expect(value?.[0], `${path}`).toBe(theirs.value?.[0]);
      }
    }
    expect(read).toBeGreaterThan(100);
  });

  test("give the same data of texts that typing errors were put into", () => {
    const bits = [
      "\n",
      "  ",
      ":",
      ": ",
      "- ",
      ",",
      "{",
      "}",
      "[",
      "]",
      "#",
      " #",
      "'",
      '"',
      "\t",
      "&a ",
      "*a",
    ];
    const more = [
      "!!str ",
      "!!int ",
      "|\n",
      ">-\n",
      "...\n",
      "~",
      "1.10",
      "007",
      "\\",
      "<<: ",
      "6,5",
      "é",
      "\n\n",
    ];
    let same = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.nat(),
        fc.integer({ min: 1, max: 8 }),
        fc.array(fc.tuple(fc.nat(), fc.constantFrom(...bits, ...more), fc.nat(3)), { maxLength: 3 }),
        (whole, at, count, typed) => {
          const rows = whole.split("\n");
          const from = at % rows.length;
          let text = rows.slice(from, from + count).join("\n");
          for (const [place, bit, gone] of typed) {
            const here = place % (text.length + 1);
            text = text.slice(0, here) + bit + text.slice(here + gone);
          }
          if (/\r/.test(text)) return;
          const trees = both(text);
          if (trees === undefined) return;
          expect(plainOf(trees.one).plain).toEqual(plainOf(trees.other).plain);
          same++;
        },
      ),
      { numRuns: 4000, seed: 7 },
    );
    expect(same).toBeGreaterThan(1000);
  });

  const plainRead = async (text: string): Promise<unknown> => {
    const read = await readYaml(text, linesOf("batch.yaml", text));
    return read.diagnostics ?? plainOf(read.root).plain;
  };

  test("read a tab between brackets, which the first of them refuses", async () => {
    expect(yamlTree("a: { b: 1,\tc: 2 }")).toBeUndefined();
    expect(await plainRead("a: { b: 1,\tc: [2, {d: e}], f: &x 3, g: *x, h }\ni: !!str 12\n")).toEqual({
      a: { b: 1, c: [2, { d: "e" }], f: 3, g: 3, h: null },
      i: "12",
    });
  });

  test("read scalars by the core schema of YAML 1.2, and its tags", async () => {
    const text = `{ a: ~, b: no, c: 1:30, d: 012, e: 1e3, f: 0x1F, g: .inf, h: 2026-01-02, i: !!str 12, j: !!int "3",
      k: 'it''s', l: "a\\tb", m: True, n: , o: 0o17, p: -0, q: "", r: ! 5, s: 1_000, t: <<, u: +12 }`;
    expect(await plainRead(text)).toEqual({
      a: null,
      b: "no",
      c: "1:30",
      d: 12,
      e: 1000,
      f: 31,
      g: Number.POSITIVE_INFINITY,
      h: "2026-01-02",
      i: "12",
      j: 3,
      k: "it's",
      l: "a\tb",
      m: true,
      n: null,
      o: 15,
      p: -0,
      q: "",
      r: "5",
      s: "1_000",
      t: "<<",
      u: 12,
    });
  });

  test("give empty values and block texts a place inside the text", () => {
    for (const [text, start] of [
      ["...\n>", 5],
      ["a: |\n  x\n", 3],
      ["- >-  # folded\n  x\n", 2],
    ] as const) {
      const { root } = yamlTree(text)!;
      const node =
        root?.kind === "map" ? root.entries[0]!.value : root?.kind === "list" ? root.items[0] : root;
      expect([text, node?.start]).toEqual([text, start]);
    }
    expect(yamlTree("a:\n-\n- b\n")!.root).toMatchObject({
      entries: [
        {
          value: {
            items: [
              { start: 4, end: 4 },
              { start: 7, end: 8 },
            ],
          },
        },
      ],
    });
  });

  test("refuse what a batch file does not need", async () => {
    for (const text of [
      "a: !tank 6 L",
      "%YAML 1.1\n---\na: 1",
      "a: 1\n---\nb: 2",
      "? [a]\n: 1",
      "a: [1",
      "a: !!int x",
    ])
      expect(await plainRead(text), text).toMatchObject([{ severity: "error" }]);
  });
});

test("joinCutNumbers puts together a number that commas cut into many", () => {
  const { root } = yamlTree("a: { volume: 1,234,567 L, 8,7: 9, b: 6,5, c: x,5 }")!;
  expect(plainOf(root).plain).toEqual({
    a: { volume: "1,234,567 L", 8: null, 7: 9, b: "6,5", c: "x", 5: null },
  });
});

test("a key of more than 1024 characters is refused as too long", async () => {
  const text = `${"x".repeat(1025)}: 1`;
  const read = await readYaml(text, linesOf("batch.yaml", text));
  expect(read.diagnostics).toMatchObject([{ code: "yaml", message: "the key is too long" }]);
  expect(yamlTree(`${"x".repeat(1024)}: 1`)).toBeDefined();
});

describe("a file that is far too large", () => {
  const read = async (name: string, text: string) => (await readText(text, { name })).diagnostics;

  test("names the list or map that has more than 20,000 entries", async () => {
    for (const text of [
      `batch: x\norders:\n${"  - 1\n".repeat(20_001)}`,
      `{ batch: x, orders: [${"1,".repeat(20_001)}] }`,
    ])
      expect(await read("batch.yaml", text)).toMatchObject([
        { code: "too-many", message: "orders has more than 20,000 entries", spans: [{ file: "batch.yaml" }] },
      ]);
    const orders = Array(300_000).fill(1);
    expect(await read("batch.json", JSON.stringify({ batch: "x", orders }))).toMatchObject([
      { code: "too-many" },
    ]);
    const keys = Array.from({ length: 20_001 }, (_, i) => `k${i}: 1`).join("\n");
    expect(await read("batch.yaml", keys)).toMatchObject([
      { code: "too-many", message: "the file has more than 20,000 entries" },
    ]);
    const most = await read("batch.yaml", `batch: x\norders:\n${"  - 1\n".repeat(20_000)}`);
    expect(most.every(({ code }) => code === "wrong-type")).toBe(true);
    expect(most).toHaveLength(20_000);
  });

  test("may repeat up to 20,000 values by aliases", async () => {
    const repeats = async (count: number) => {
      const half = Math.floor(count / 2);
      const list = (aliases: number) => `[${Array(aliases).fill("*x").join(",")}]`;
      const text = `x: &x 1\na: ${list(half)}\nb: ${list(count - half)}\n`;
      return (await read("batch.yaml", text)).map(({ code }) => code);
    };
    expect(await repeats(20_000)).not.toContain("alias");
    expect(await repeats(20_001)).toEqual(["alias"]);
  });

  test("shows its first 200 faults of form, and how many are left out", async () => {
    const found = await read("batch.yaml", `batch: x\nparts: {${"b,".repeat(300_000)}}`);
    expect(found.map(({ code }) => code)).toEqual([...Array(200).fill("duplicate-key"), "more-faults"]);
    expect(found.at(-1)!.message).toBe("299799 more faults are not shown");
    const [first] = await read("batch.yaml", `a: [${",".repeat(2000)}]`);
    expect(first).toMatchObject({ code: "yaml", message: "the comma has nothing before it" });
  });
});
