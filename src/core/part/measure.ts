import { done, error, type Fault, failed, type Outcome } from "../fault.js";
import { defaults } from "../model/defaults.js";
import { type Contact, contactOf, noticedShare } from "./contact/contact.js";
import { type MeshFormat, meshFormat } from "./format.js";
import type { MeshMeasure, MeshOptions } from "./mesh-measure.js";
import { meshWarnings } from "./mesh-warnings.js";
import { asciiTriangles } from "./stl/stl-ascii.js";
import { announcedTriangles, binaryLength, binaryLengthFault, binaryTriangles } from "./stl/stl-binary.js";
import { addTriangles, noSums } from "./sums.js";
import { shellFindings } from "./surface/shell-findings.js";
import { type Topology, topologyCollector, topologyWithin } from "./surface/topology.js";
import { eachChunk, type TriangleSource } from "./triangles.js";
import { type MeshUnit, mmPerUnit } from "./units.js";

interface Opened {
  readonly triangles: TriangleSource;
  readonly unit: MeshUnit;
}

async function open(bytes: Uint8Array, format: MeshFormat, unit: MeshUnit): Promise<Outcome<Opened>> {
  if (format === "3mf") return (await import("./three-mf/three-mf.js")).readThreeMf(bytes);
  if (format === "stl-ascii") return done({ triangles: asciiTriangles(bytes), unit });
  const fault = binaryLengthFault(bytes);
  return fault === undefined ? done({ triangles: binaryTriangles(bytes), unit }) : failed(fault);
}

// Of the largest coordinate: some eight steps of a float32.
const relativeTolerance = 1e-6;

/** The topology with corners taken as one within a tolerance, if that closes the surface. */
function closedNearly(source: TriangleSource, tolerance: number): Topology | undefined {
  if (!(tolerance > 0)) return undefined;
  const found = topologyWithin(source, tolerance);
  return "code" in found || found.left.open > 0 ? undefined : found;
}

/** The contact that changes a figure. Where all faces face others, bodies are there twice, one of them inside out. */
function noticed(
  { doubledArea, sharedArea }: Omit<Contact, "undecided"> = { doubledArea: 0, sharedArea: 0 },
  area: number,
): Omit<Contact, "undecided"> {
  if (sharedArea > (1 - noticedShare) * area) return { doubledArea: sharedArea, sharedArea: 0 };
  const least = noticedShare * area;
  return {
    doubledArea: doubledArea > least ? doubledArea : 0,
    sharedArea: sharedArea > least ? sharedArea : 0,
  };
}

/**
 * Measures a part from the bytes of its model file, STL (binary or text) or 3MF: area and volume by adding up
 * triangles [cm2, cm3], mass = volume x density [g], box [mm]. Errors name the byte or the line.
 */
export async function measureMesh(
  bytes: Uint8Array,
  options: MeshOptions = {},
): Promise<Outcome<MeshMeasure>> {
  const format = meshFormat(bytes);
  if (typeof format !== "string") return failed(format);
  const opened = await open(bytes, format, options.unit ?? defaults.part.meshUnit);
  if (!opened.ok) return opened;
  const { triangles: source, unit } = opened.value;

  const sums = noSums();
  const collector = topologyCollector(source.expected);
  const fault = eachChunk(source, (chunk, count, body) => {
    addTriangles(sums, chunk, count);
    collector.add(chunk, count, body);
  });
  if (fault !== undefined) return failed(fault);
  if (sums.triangles === 0)
    return failed(
      error(
        "mesh-empty",
        [],
        "the file holds no triangles",
        "export the model again, with the part selected",
      ),
    );
  const exact = collector.end();
  const reach = Math.max(...sums.low.map(Math.abs), ...sums.high.map(Math.abs));
  const tolerance = relativeTolerance * reach;
  const near = exact.left.open > 0 ? closedNearly(source, tolerance) : undefined;
  const topology = near ?? exact;
  const closed = topology.left.open === 0;
  const inverted = sums.volume < 0;
  const findings = closed ? shellFindings(source, topology, inverted ? -1 : 1, tolerance) : undefined;
  if (findings !== undefined && "code" in findings) return failed(findings);
  const contact = closed ? contactOf(source, topology, tolerance, findings?.overlapping ?? []) : undefined;
  if (contact !== undefined && "code" in contact) return failed(contact);
  const { doubledArea, sharedArea } = noticed(contact, sums.area);

  const mm = mmPerUnit[unit];
  const cm = mm / 10;
  const volumeCm3 = Math.abs(sums.volume) * cm ** 3;
  const cavities = findings?.cavities ?? [];
  const measure: MeshMeasure = {
    format,
    unit,
    triangles: sums.triangles,
    shells: topology.shells.groups,
    closed,
    volumeTrusted: closed && (findings?.inverted.length ?? 0) === 0 && doubledArea === 0,
    areaTrusted: doubledArea === 0 && sharedArea === 0,
    areaCm2: sums.area * cm ** 2,
    volumeCm3,
    massG: volumeCm3 * (options.densityGPerCm3 ?? defaults.part.densityGPerCm3),
    boxMm: sums.high.map((high, axis) => (high - sums.low[axis]!) * mm) as [number, number, number],
    openEdges: exact.left.open,
    flatTriangles: sums.flat,
    cavities: {
      count: cavities.length,
      areaCm2: cavities.reduce((sum, shell) => sum + shell.area, 0) * cm ** 2,
      volumeCm3: cavities.reduce((sum, shell) => sum + Math.abs(shell.volume), 0) * cm ** 3,
    },
    coincident: { doubledCm2: doubledArea * cm ** 2, sharedCm2: sharedArea * cm ** 2 },
  };
  if (![measure.areaCm2, volumeCm3, ...measure.boxMm].every(Number.isFinite))
    return failed(error("mesh-not-finite", [], "the coordinates are too large to compute with"));
  const trailing = format === "stl-binary" ? bytes.length - binaryLength(announcedTriangles(bytes)) : 0;
  const faults: Fault[] = meshWarnings(measure, {
    topology,
    findings,
    undecided: (findings?.undecided ?? false) || (contact?.undecided ?? false),
    inverted,
    weldedMm: near === undefined ? 0 : tolerance * mm,
    mmPerUnit: mm,
    trailingFrom: trailing > 0 ? bytes.length - trailing : undefined,
    otherUnit: options.unit !== undefined && options.unit !== unit ? options.unit : undefined,
  });
  return done(measure, [...opened.faults, ...faults]);
}
