import type { MeshMeasure } from "./mesh-measure.js";

/** Of a measured model, the surface that liquor reaches [cm2]: all but closed cavities and faces between bodies. */
export const wettedCm2 = ({
  areaCm2,
  cavities,
  coincident,
}: Pick<MeshMeasure, "areaCm2" | "cavities" | "coincident">): number =>
  areaCm2 - cavities.areaCm2 - coincident.sharedCm2;

/** What a measured model displaces [cm3]: its solid and its closed cavities. */
export const displacedCm3 = ({ volumeCm3, cavities }: Pick<MeshMeasure, "volumeCm3" | "cavities">): number =>
  volumeCm3 + cavities.volumeCm3;
