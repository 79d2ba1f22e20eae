/** The maps of a batch whose keys are names that the user gives, and the word for one thing in each. */
export const namedMaps = {
  tanks: "tank",
  dryers: "dryer",
  bases: "base",
  dyes: "dye",
  parts: "part",
  shades: "shade",
} as const;

export type NamedMap = keyof typeof namedMaps;

/** Their keys, in the order of a batch file. */
export const namedMapKeys = Object.keys(namedMaps) as readonly NamedMap[];

export const isNamedMap = (key: string): key is NamedMap => Object.hasOwn(namedMaps, key);

/** Most names in a help line, so that it stays readable. Common practice, no source. */
export const mostListed = 8;
