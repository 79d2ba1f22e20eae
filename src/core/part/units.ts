/** Millimetres in one of each unit of length that a model may be drawn in. */
export const mmPerUnit = {
  micron: 0.001,
  mm: 1,
  cm: 10,
  inch: 25.4,
  foot: 304.8,
  m: 1000,
} as const;

/** A unit of length for models. */
export type MeshUnit = keyof typeof mmPerUnit;

/** The units of a 3MF file by their names there. */
export const threeMfUnits: Readonly<Record<string, MeshUnit>> = {
  micron: "micron",
  millimeter: "mm",
  centimeter: "cm",
  inch: "inch",
  foot: "foot",
  meter: "m",
};
