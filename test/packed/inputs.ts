import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse, stringify } from "yaml";
import { asciiStl, binaryStl, meshXml, modelXml, packed } from "../core/part/tools/files.js";
import { box } from "../core/part/tools/solids.js";

const examples = fileURLToPath(new URL("../../examples/", import.meta.url));
const curves = fileURLToPath(new URL("../../fixtures/good/curves/", import.meta.url));
const tile = box([0, 0, 0], [60, 40, 4]);

/** Parts from an STL and a 3MF file, a dye with swatches from CSV files. */
const withModels = `
batch: models
include: workshop.yaml
dyes:
  rust:
    price: 40.00 /L
    dilution: 1:9
    temperature: 80 °C
    base: white
    swatches:
      - { time: 60 s, reflectance: curves/rust-60s.csv }
      - { time: 120 s, reflectance: curves/rust-120s.csv }
parts:
  tile: { mesh: tile.stl, blank: 2.10 }
  tag: { mesh: tile.3mf, blank: 2.10 }
shades:
  rust-light: { dye: rust, time: 60 s }
baths:
  - { tank: six, dye: rust, topUp: strength, every: 7 d }
orders:
  - { part: tile, shade: rust-light, base: white, quantity: 20 }
  - { part: tag, shade: rust-light, base: white, quantity: 20 }
`;

const pairs = "id,L1,a1,b1,L2,a2,b2\nleft,50,10,20,51,11,19\nright,62,-8,4,61,-8,5\n";
const readings = `time_s,uptake\n${[15, 30, 60, 120, 240].map((t) => `${t},${1 - Math.exp(-0.012 * t)}\n`).join("")}`;

/** The day of restock.yaml with the files that it includes, as one file. */
const { include: _, ...day } = Object.assign(
  {},
  ...["workshop", "dyes", "restock"].map((name) =>
    parse(readFileSync(join(examples, `${name}.yaml`), "utf8")),
  ),
);

/** What commands can be given on standard input. */
export const streams = {
  batch: Buffer.from(stringify(day)),
  model: packed(modelXml(`<object id="1">${meshXml(tile)}</object>`, '<item objectid="1"/>')),
  pairs: Buffer.from(pairs),
  readings: Buffer.from(readings),
  curve: readFileSync(join(curves, "rust-60s.csv")),
};

/** Writes a file of every kind that a command reads. */
export function writeInputs(folder: string): void {
  cpSync(examples, folder, { recursive: true });
  cpSync(curves, join(folder, "curves"), { recursive: true });
  const write = (name: string, data: string | Uint8Array): void => writeFileSync(join(folder, name), data);
  write("models.yaml", withModels);
  write("day.json", JSON.stringify(day));
  write("tile.stl", binaryStl(tile));
  write("tile-text.stl", asciiStl(tile));
  write("tile.3mf", streams.model);
  write("pairs.csv", pairs);
  write("readings.csv", readings);
  write("swatches.csv", "time_s;L;a;b\r\n0;92,1;-0,6;-2,3\r\n15;80,2;21,7;9,8\r\n60;65,9;44,6;23,0\r\n");
  write(
    "days.csv",
    [
      "time,bath,event,dye,part,shade,base,parts,seconds,celsius,L,a,b,powderLot",
      "2027-04-16T08:00,six,made-up,brick,,,,,,,,,,",
      "2027-04-16T10:00,six,load,,clip,brick-light,white,42,30,79.5,56.4,33.8,10.2,P-16",
      "2027-04-16T10:08,six,load,,clip,brick-light,white,42,30,79.4,56.9,33.5,10.1,P-17",
      "2027-04-16T10:16,six,load,,clip,brick-light,white,42,30,79.6,56.2,33.9,10.4,P-17",
      "",
    ].join("\r\n"),
  );
  write(
    "tiles.csv",
    [
      "time,bath,event,dye,part,shade,base,parts,seconds,celsius",
      "2027-04-16T08:00,six,made-up,rust,,,,,,",
      "2027-04-16T10:00,six,load,,tile,rust-light,white,20,60,79.5",
      "",
    ].join("\r\n"),
  );
  write("baths.csv", "time;bath;event;part;parts;seconds\r\n2027-04-16T09:00;six;load;clip;42;30,5\r\n");
  mkdirSync(join(folder, "week"));
  write("week/monday.json", JSON.stringify(day));
  write("week/tuesday.yaml", streams.batch);
}
