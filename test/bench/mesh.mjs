// Speed and memory of measuring parts from model files. Use: node test/bench/mesh.mjs [MILLIONS OF TRIANGLES]
// The file is made in memory. Every line is the best of several runs; the floor, reading all floats of the
// file and adding them up, is measured in the same run.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { strToU8, zipSync } from "fflate";

const folder = mkdtempSync(join(tmpdir(), "bench-"));
const from = (name) =>
  `export * from ${JSON.stringify(fileURLToPath(new URL(`../../src/core/part/${name}.ts`, import.meta.url)))};`;
await build({
  stdin: {
    contents: ["measure", "stl/stl-binary", "sums", "surface/topology", "triangles"].map(from).join("\n"),
    resolveDir: fileURLToPath(new URL("../../", import.meta.url)),
  },
  bundle: true,
  platform: "node",
  format: "esm",
  outfile: join(folder, "mesh.mjs"),
  logLevel: "warning",
});
const { measureMesh, binaryTriangles, eachChunk, addTriangles, noSums, topologyCollector } = await import(
  join(folder, "mesh.mjs")
);
rmSync(folder, { recursive: true });

/** A torus of n by n pieces: n * n places, 2 n * n triangles. */
function place(n, i, j) {
  const [u, v] = [(2 * Math.PI * (i % n)) / n, (2 * Math.PI * (j % n)) / n];
  const out = 30 + 10 * Math.cos(v);
  return [out * Math.cos(u), out * Math.sin(u), 10 * Math.sin(v)];
}

function binaryTorus(n) {
  const triangles = 2 * n * n;
  const bytes = new Uint8Array(84 + 50 * triangles);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, triangles, true);
  let at = 84;
  const write = (...corners) => {
    at += 12;
    for (const x of corners.flat()) {
      view.setFloat32(at, x, true);
      at += 4;
    }
    at += 2;
  };
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      write(place(n, i, j), place(n, i + 1, j), place(n, i + 1, j + 1));
      write(place(n, i, j), place(n, i + 1, j + 1), place(n, i, j + 1));
    }
  return bytes;
}

/** The same triangles in an order that no program writes: the worst case for tables. */
function shuffled(bytes) {
  const copy = bytes.slice();
  const triangles = (bytes.length - 84) / 50;
  let state = 1;
  for (let t = triangles - 1; t > 0; t--) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const other = Math.floor((state / 2 ** 32) * (t + 1));
    const kept = copy.slice(84 + 50 * t, 134 + 50 * t);
    copy.copyWithin(84 + 50 * t, 84 + 50 * other, 134 + 50 * other);
    copy.set(kept, 84 + 50 * other);
  }
  return copy;
}

function asciiTorus(n) {
  const facet = (...corners) =>
    `facet normal 0 0 0\n outer loop\n${corners.map((p) => `  vertex ${p.map((x) => x.toFixed(6)).join(" ")}\n`).join("")} endloop\nendfacet\n`;
  let text = "solid torus\n";
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      text +=
        facet(place(n, i, j), place(n, i + 1, j), place(n, i + 1, j + 1)) +
        facet(place(n, i, j), place(n, i + 1, j + 1), place(n, i, j + 1));
  return strToU8(`${text}endsolid\n`);
}

function packedTorus(n) {
  const at = (i, j) => (i % n) * n + (j % n);
  let vertices = "";
  let triangles = "";
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [x, y, z] = place(n, i, j).map((c) => c.toFixed(6));
      vertices += `<vertex x="${x}" y="${y}" z="${z}"/>\n`;
      triangles += `<triangle v1="${at(i, j)}" v2="${at(i + 1, j)}" v3="${at(i + 1, j + 1)}"/>\n<triangle v1="${at(i, j)}" v2="${at(i + 1, j + 1)}" v3="${at(i, j + 1)}"/>\n`;
    }
  const end = "/3dmanufacturing";
  return zipSync({
    "_rels/.rels": strToU8(`<R><Relationship Type="urn:x${end}/2013/01/3dmodel" Target="/3D/a.model"/></R>`),
    "3D/a.model": strToU8(
      `<model xmlns="urn:x${end}/core/2015/02"><resources><object id="1"><mesh><vertices>${vertices}</vertices><triangles>${triangles}</triangles></mesh></object></resources><build><item objectid="1"/></build></model>`,
    ),
  });
}

const memoryMB = () => {
  const { arrayBuffers, heapUsed } = process.memoryUsage();
  return (arrayBuffers + heapUsed) / 1e6;
};

/** Best of some runs in million triangles/s, and the most memory seen beside the file. */
async function bench(name, triangles, work, runs = 5) {
  let best = Infinity;
  let most = 0;
  for (let run = 0; run < runs; run++) {
    globalThis.gc?.();
    const before = memoryMB();
    const sampled = { peak: before };
    const start = performance.now();
    await work(() => {
      sampled.peak = Math.max(sampled.peak, memoryMB());
    });
    best = Math.min(best, performance.now() - start);
    sampled.peak = Math.max(sampled.peak, memoryMB());
    most = Math.max(most, sampled.peak - before);
  }
  console.log(
    `${name.padEnd(58)} ${(triangles / best / 1000).toFixed(2).padStart(7)} M triangles/s  + ${most.toFixed(1).padStart(6)} MB`,
  );
  return triangles / best / 1000;
}

const n = Math.round(Math.sqrt(((Number(process.argv[2]) || 3) * 1e6) / 2));
const count = 2 * n * n;
const bytes = binaryTorus(n);
const view = new DataView(bytes.buffer);
console.log(
  `${count} triangles, ${(bytes.length / 1e6).toFixed(0)} MB as a binary STL${globalThis.gc ? "" : " (node --expose-gc makes the memory figures sharper)"}`,
);
let kept = 0;
const floor = await bench("floor: reading and adding up all floats", count, () => {
  let sum = 0;
  for (let at = 96; at < bytes.length; at += 50)
    for (let i = 0; i < 36; i += 4) sum += view.getFloat32(at + i, true);
  kept += Math.abs(sum);
});
const model = binaryTriangles(bytes);
const sums = await bench("area, volume, box", count, (sample) => {
  const all = noSums();
  eachChunk(model, (chunk, size) => addTriangles(all, chunk, size));
  sample();
  kept += all.area;
});
const closedness = async (name, source) =>
  bench(name, count, (sample) => {
    const collector = topologyCollector(source.expected);
    eachChunk(source, collector.add);
    sample();
    if (collector.end().left.open !== 0) throw new Error("the torus is closed");
  });
await closedness("closed, shells", model);
await closedness("closed, shells, triangles in random order", binaryTriangles(shuffled(bytes)));
await bench("measureMesh, binary STL, all together", count, async () => {
  const found = await measureMesh(bytes);
  if (!found.ok || !found.value.closed) throw new Error("the torus is closed");
});
const m = Math.round(Math.sqrt(150_000));
for (const [name, file] of [
  ["measureMesh, text STL", asciiTorus(m)],
  ["measureMesh, 3MF", packedTorus(m)],
])
  await bench(
    `${name}, ${2 * m * m} triangles, ${(file.length / 1e6).toFixed(1)} MB`,
    2 * m * m,
    async () => {
      const found = await measureMesh(file);
      if (!found.ok || !found.value.closed) throw new Error("the torus is closed");
    },
  );
console.log(
  `area, volume, box: ${sums >= 3 ? "at least" : "UNDER"} 3 M triangles/s, ${((100 * sums) / floor).toFixed(0)} % of the floor; peak resident ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB in all (${kept > 0 ? "sum kept" : ""})`,
);
if (sums < 3) process.exitCode = 1;
