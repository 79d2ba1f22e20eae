import { type Fault, warning } from "../fault.js";
import { counted } from "../quantity/text/counted.js";
import type { MeshMeasure } from "./mesh-measure.js";
import type { ShellFindings } from "./surface/shell-findings.js";
import type { Topology } from "./surface/topology.js";
import type { MeshUnit } from "./units.js";

/** What was seen beside the numbers of a measure. */
export interface MeshSigns {
  readonly topology: Topology;
  /** Nothing if the surface is open, since then shells were not compared. */
  readonly findings: ShellFindings | undefined;
  readonly inverted: boolean;
  /** Within what distance corners were taken as one to close the surface; 0 if that was not needed. */
  readonly weldedMm: number;
  readonly mmPerUnit: number;
  /** First byte after the last triangle, if bytes follow. */
  readonly trailingFrom: number | undefined;
  /** A unit that was asked for and not used. */
  readonly otherUnit: MeshUnit | undefined;
}

/** What a message about a volume that means little ends in. */
export const volumeDoubted = ": the volume is not to be trusted";

/** Codes of what takes the meaning from volume and mass, and leaves it to the area. */
export const volumeDoubts: readonly string[] = ["mesh-turned", "mesh-open", "mesh-shell-inverted"];

const short = (value: number): string => String(Number(value.toPrecision(4)));

const edgeWarnings = ({ topology, mmPerUnit, weldedMm }: MeshSigns): (Fault | undefined)[] => {
  const { left, openAt } = topology;
  const where = openAt?.map((x) => short(x * mmPerUnit)).join(", ");
  const all = left.open > 0 && left.sameWay === left.open;
  return [
    all
      ? warning(
          "mesh-turned",
          [],
          `${counted(left.open, "edge")} where neighbouring triangles face opposite ways, one at ${where} mm${volumeDoubted}`,
          "make the normals of the model agree, or give volume and mass by hand",
        )
      : undefined,
    left.open > 0 && !all
      ? warning(
          "mesh-open",
          [],
          `the surface is open at ${counted(left.open, "edge")}, one at ${where} mm${volumeDoubted}`,
          "close the model, or give volume and mass by hand",
        )
      : undefined,
    weldedMm > 0
      ? warning(
          "mesh-welded",
          [],
          `the surface closes only with corners within ${short(weldedMm)} mm taken as one`,
        )
      : undefined,
  ];
};

const shellWarnings = (measure: MeshMeasure, signs: MeshSigns): (Fault | undefined)[] => {
  const { findings, inverted } = signs;
  const pairs = findings?.overlapping ?? [];
  return [
    inverted && measure.closed
      ? warning(
          "mesh-inverted",
          [],
          "the surface is inside out (its volume is negative); the volume is taken without its sign",
          "turn the normals of the model outwards",
        )
      : undefined,
    (findings?.inverted.length ?? 0) > 0
      ? warning(
          "mesh-shell-inverted",
          [],
          `${counted(findings!.inverted.length, "shell")} of ${measure.shells} inside out${volumeDoubted}`,
          "turn the normals of the model outwards",
        )
      : undefined,
    pairs.length > 0
      ? warning(
          "mesh-overlap",
          [],
          `${counted(pairs.length, "pair")} of shells overlap, the first shells ${pairs[0]![0] + 1} and ${pairs[0]![1] + 1}: area and volume count what they share twice`,
          "join the bodies of the model into one",
        )
      : undefined,
    findings?.undecided
      ? warning(
          "mesh-overlap-unknown",
          [],
          "the boxes of some shells overlap; whether the shells do was not examined",
        )
      : undefined,
    measure.cavities.count > 0
      ? warning(
          "mesh-cavity",
          [],
          `${counted(measure.cavities.count, "closed cavity", "closed cavities")}: ${short(measure.cavities.areaCm2)} cm2 of the area stay dry`,
          `give ${short(measure.areaCm2 - measure.cavities.areaCm2)} cm2 as the wetted area`,
        )
      : undefined,
  ];
};

/** Everything about a measured part that its user should know. */
export function meshWarnings(measure: MeshMeasure, signs: MeshSigns): Fault[] {
  const largest = Math.max(...measure.boxMm);
  const all = [
    ...edgeWarnings(signs),
    ...shellWarnings(measure, signs),
    measure.flatTriangles > 0
      ? warning(
          "mesh-flat",
          [],
          `${counted(measure.flatTriangles, "triangle")} without area; they add nothing`,
        )
      : undefined,
    largest > 1000 || largest < 1
      ? warning(
          "mesh-unit",
          [],
          `the box is ${measure.boxMm.map(short).join(" x ")} mm with ${measure.unit} as unit: wrong unit?`,
          "give the unit of the model, such as unit: inch",
        )
      : undefined,
    signs.trailingFrom === undefined
      ? undefined
      : warning(
          "mesh-trailing",
          [],
          `byte ${signs.trailingFrom}: bytes after the last triangle are passed over`,
        ),
    signs.otherUnit === undefined
      ? undefined
      : warning("mesh-unit", [], `the file names its unit, ${measure.unit}; ${signs.otherUnit} is not used`),
  ];
  return all.filter((one) => one !== undefined);
}
