import { SaxesParser } from "saxes";
import { expect, test } from "vitest";
import { html } from "../../../src/report/format/html.js";
import { escapeMarkup } from "../../../src/report/plot/markup.js";
import { svgPicture, svgPlot } from "../../../src/report/plot/svg-plot.js";
import { bare, samplePlot } from "./sample.js";

interface Found {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
}
/** The elements of a document, in order; throws where it is not well-formed. */
function elements(source: string): Found[] {
  const found: Found[] = [];
  const open: Found[] = [];
  const parser = new SaxesParser();
  parser.on("error", (fault) => {
    throw fault;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const one = { name, attributes, text: "" };
    found.push(one);
    open.push(one);
  });
  parser.on("text", (text) => {
    const last = open.at(-1);
    if (last !== undefined) last.text += text;
  });
  parser.on("closetag", () => void open.pop());
  parser.write(source).close();
  return found;
}
const named = (list: readonly Found[], name: string): Found[] => list.filter((one) => one.name === name);

test("a plot as svg is the recorded document, byte for byte, each time", async () => {
  const drawn = svgPlot(samplePlot);
  expect(svgPlot(structuredClone(samplePlot))).toBe(drawn);
  await expect(drawn).toMatchFileSnapshot("../golden/plot/sample.svg");
});

test("the svg is well-formed, names itself to a screen reader, and holds all that was handed in", () => {
  const list = elements(svgPlot(samplePlot));
  const [svg] = list;
  expect(svg!.attributes).toMatchObject({ role: "img", "aria-labelledby": "dw-title dw-desc" });
  expect(named(list, "title")).toMatchObject([{ attributes: { id: "dw-title" }, text: samplePlot.title }]);
  expect(named(list, "desc")).toMatchObject([
    { attributes: { id: "dw-desc" }, text: samplePlot.description },
  ]);
  const texts = named(list, "text").map(({ text }) => text);
  for (const said of ["fresh bath", "weak bath", "swatches", "within tolerance", "time (min)", "depth"])
    expect(texts).toContain(said);
  expect(named(list, "rect").map(({ attributes }) => attributes.fill)).toEqual(
    expect.arrayContaining(["#f2d9b0", "#8a3324"]),
  );
  const dots = list.filter(({ attributes }) => attributes.transform?.startsWith("translate") && attributes.d);
  // Four readings and the mark beside their name.
  expect(dots.length).toBe(5);
});

test("the svg loads nothing, runs nothing, and stays within its frame", () => {
  const source = svgPlot(samplePlot);
  expect(source).not.toMatch(/<script|<image|<foreignObject|href|url\(|@import|\son\w+=/i);
  for (const { attributes } of elements(source))
    for (const [key, limit] of [
      ["x", 680],
      ["x1", 680],
      ["x2", 680],
      ["y", 420],
      ["y1", 420],
      ["y2", 420],
    ] as const) {
      const value = Number(attributes[key] ?? 0);
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThanOrEqual(limit);
    }
});

test("lines differ by dashes and dots by shape, not by colour alone", () => {
  const series = (["line", "line", "line", "dots", "dots", "dots"] as const).map((kind, i) => ({
    name: `series ${i}`,
    kind,
    points: [
      [i, i],
      [i + 1, i],
    ] as const,
  }));
  const list = elements(svgPlot({ ...bare([]), series }));
  const lines = named(list, "path").filter(({ attributes }) => attributes["stroke-linejoin"]);
  expect(new Set(lines.map(({ attributes }) => attributes["stroke-dasharray"] ?? "")).size).toBe(3);
  const shapes = named(list, "path").filter(({ attributes }) => attributes.transform);
  expect(new Set(shapes.map(({ attributes }) => attributes.d)).size).toBe(3);
});

test("text is escaped, and characters that XML cannot hold are replaced", () => {
  expect(escapeMarkup(`<a b="c">&'`)).toBe("&lt;a b=&quot;c&quot;&gt;&amp;&#39;");
  expect(escapeMarkup("a\u0000b\u001bc\ud800d\uffffe\u{1f600}")).toBe(
    "a\ufffdb\ufffdc\ufffdd\ufffde\u{1f600}",
  );
  const list = elements(svgPlot({ ...bare([[0, 1]]), title: `</title><script>"'&\u0001` }));
  expect(named(list, "script")).toEqual([]);
  expect(named(list, "title")[0]!.text).toBe(`</title><script>"'&\ufffd`);
});

test("a plot without points is an empty frame", () => {
  expect(svgPlot(bare([]))).not.toMatch(/NaN|undefined|Infinity/);
  expect(() => elements(svgPlot(bare([])))).not.toThrow();
});

test("a page of html holds the blocks, escaped, and the picture once", () => {
  const table = {
    columns: [
      { key: "a", title: "a <b>" },
      { key: "n", title: "n", unit: "mL", digits: (n: number) => n.toFixed(1) },
    ],
    rows: [
      ["x & y", 2],
      [null, 3.25],
    ],
  };
  const blocks = [
    { kind: "heading", level: 1, text: "A & B" },
    { kind: "paragraph", text: "<p>" },
    { kind: "list", items: ["one", "<two>"], ordered: true },
    { kind: "table", table },
  ] as const;
  for (const parts of [blocks, [...blocks, { kind: "plot", plot: samplePlot } as const]]) {
    const page = html(parts, [samplePlot]);
    expect(page.match(/<svg /g)).toHaveLength(1);
    for (const said of [
      "<h1>A &amp; B</h1>",
      "<p>&lt;p&gt;</p>",
      "<ol>\n<li>one</li>\n<li>&lt;two&gt;</li>\n</ol>",
      '<th>a &lt;b&gt;</th><th class="number">n mL</th>',
      '<tr><td>x &amp; y</td><td class="number">2.0</td></tr>',
      '<tr><td></td><td class="number">3.3</td></tr>',
    ])
      expect(page).toContain(said);
  }
});

test("several plots are one document, below one another, each with ids of its own", () => {
  const list = elements(svgPicture([samplePlot, bare([[0, 1]]), samplePlot]));
  const drawings = named(list, "svg");
  expect(drawings.map(({ attributes }) => attributes.y)).toEqual([undefined, "0", "420", "840"]);
  expect(drawings[0]!.attributes).toMatchObject({ width: "680", height: "1260" });
  const ids = list.flatMap(({ attributes }) => attributes.id ?? []);
  expect(new Set(ids).size).toBe(6);
  expect(drawings.slice(1).map(({ attributes }) => attributes["aria-labelledby"])).toEqual([
    "dw-title dw-desc",
    "dw-title-2 dw-desc-2",
    "dw-title-3 dw-desc-3",
  ]);
  expect(svgPicture([samplePlot])).toBe(svgPlot(samplePlot));
});

test("a page of several plots shows each once, where its block is or at the end, and is named by its heading", () => {
  const other = bare([[0, 1]]);
  const blocks = [
    { kind: "heading", level: 1, text: "Baths" },
    { kind: "plot", plot: other },
    { kind: "paragraph", text: "then" },
  ] as const;
  const page = html(blocks, [samplePlot, other]);
  expect(page).toContain("<title>Baths</title>");
  expect(page.match(/<svg /g)).toHaveLength(2);
  expect(page.indexOf("dw-title-2")).toBeGreaterThan(page.indexOf("<p>then</p>"));
});
