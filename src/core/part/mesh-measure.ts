import type { MeshFormat } from "./format.js";
import type { MeshUnit } from "./units.js";

/** What a model file says about a part. */
export interface MeshMeasure {
  readonly format: MeshFormat;
  /** Unit that the coordinates were read in. */
  readonly unit: MeshUnit;
  readonly triangles: number;
  /** Triangles that share corners. */
  readonly shells: number;
  /** Whether every edge is run through equally often both ways. */
  readonly closed: boolean;
  /** Whether volume and mass mean anything: the surface is closed, no shell is inside out, no body is there twice. */
  readonly volumeTrusted: boolean;
  /** Whether no face lies exactly on another, so that none counts twice; not examined in an open surface. */
  readonly areaTrusted: boolean;
  /** All of the surface, closed cavities included. */
  readonly areaCm2: number;
  readonly volumeCm3: number;
  readonly massG: number;
  readonly boxMm: readonly [x: number, y: number, z: number];
  /** Edges whose directions do not balance, before corners that nearly coincide are taken as one. */
  readonly openEdges: number;
  /** Triangles without area. */
  readonly flatTriangles: number;
  /** Hollows closed all round, which no liquor reaches; they are part of area, and not of volume. */
  readonly cavities: { readonly count: number; readonly areaCm2: number; readonly volumeCm3: number };
  /**
   * Area of the faces that lie exactly on others, both counted: of bodies that are there twice, and of bodies that
   * touch, where no liquor comes.
   */
  readonly coincident: { readonly doubledCm2: number; readonly sharedCm2: number };
}

/** How to take the numbers in a model file. */
export interface MeshOptions {
  /** Unit of an STL, mm unless given. A 3MF file names its own. */
  readonly unit?: MeshUnit;
  /** Density of the solid part, that of sintered nylon unless given. */
  readonly densityGPerCm3?: number;
}
