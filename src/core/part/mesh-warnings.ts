import { type Fault, warning } from "../fault.js";
import { counted } from "../quantity/text/counted.js";
import { shortNumber } from "../quantity/text/short-number.js";
import type { MeshMeasure } from "./mesh-measure.js";
import type { ShellFindings } from "./surface/shell-findings.js";
import type { Topology } from "./surface/topology.js";
import type { MeshUnit } from "./units.js";
import { wettedCm2 } from "./wetted.js";

/** What was seen beside the numbers of a measure. */
export interface MeshSigns {
  readonly topology: Topology;
  /** Nothing if the surface is open, since then shells were not compared. */
  readonly findings: ShellFindings | undefined;
  /** Whether shells or faces were not compared, since there were too many. */
  readonly undecided: boolean;
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

/** Codes of what takes the meaning from volume and mass; the area keeps it but where bodies are there twice. */
export const volumeDoubts: readonly string[] = [
  "mesh-turned",
  "mesh-open",
  "mesh-shell-inverted",
  "mesh-doubled",
];

/** Beyond these sizes of the box the unit of a model is likely wrong. Common practice, no source. */
const largestMm = 1000;
const smallestMm = 1;

const edgeWarnings = ({ topology, mmPerUnit, weldedMm }: MeshSigns): (Fault | undefined)[] => {
  const { left, openAt } = topology;
  const where = openAt?.map((x) => shortNumber(x * mmPerUnit)).join(", ");
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
          `the surface closes only with corners within ${shortNumber(weldedMm)} mm taken as one`,
        )
      : undefined,
  ];
};

const shellWarnings = (measure: MeshMeasure, signs: MeshSigns): (Fault | undefined)[] => {
  const { findings, inverted } = signs;
  const pairs = findings?.overlapping ?? [];
  const { doubledCm2, sharedCm2 } = measure.coincident;
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
    doubledCm2 > 0
      ? warning(
          "mesh-doubled",
          [],
          `${shortNumber(doubledCm2)} of ${shortNumber(measure.areaCm2)} cm2 of the surface belong to bodies that lie exactly on each other; area and volume count each of them${volumeDoubted}`,
          "remove the body that is there twice, or give area, volume and mass by hand",
        )
      : undefined,
    sharedCm2 > 0
      ? warning(
          "mesh-shared-face",
          [],
          `${shortNumber(sharedCm2)} of ${shortNumber(measure.areaCm2)} cm2 of the surface lie between bodies that touch, and stay dry`,
          `join the bodies of the model into one, or give ${shortNumber(wettedCm2(measure))} cm2 as the wetted area`,
        )
      : undefined,
    signs.undecided
      ? warning(
          "mesh-overlap-unknown",
          [],
          "some bodies are too many or too large to compare; whether they overlap or touch was not examined",
        )
      : undefined,
    measure.cavities.count > 0
      ? warning(
          "mesh-cavity",
          [],
          `${counted(measure.cavities.count, "closed cavity", "closed cavities")}: ${shortNumber(measure.cavities.areaCm2)} cm2 of the area stay dry`,
          `give ${shortNumber(wettedCm2(measure))} cm2 as the wetted area`,
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
    largest > largestMm || largest < smallestMm
      ? warning(
          "mesh-unit",
          [],
          `the box is ${measure.boxMm.map((side) => shortNumber(side)).join(" x ")} mm with ${measure.unit} as unit: wrong unit?`,
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
