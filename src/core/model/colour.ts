/** CIELAB: L* [0..100], a*, b*. A `Reading` beside it says what it was read under. */
export type Lab = readonly [L: number, a: number, b: number];

/** Tristimulus values, Y of the perfect reflecting diffuser = 100. */
export type Xyz = readonly [X: number, Y: number, Z: number];

/** L*, chroma C*ab, hue angle h_ab [degrees, 0..360). */
export type Lch = readonly [L: number, C: number, h: number];

export type IlluminantName = "A" | "D50" | "D65" | "F2" | "F11" | "LED-B3";

/** Field of view of the standard observer [degrees]: 2 (CIE 1931) or 10 (CIE 1964). */
export type ObserverName = 2 | 10;

/** What colour values were read under; values of unlike readings are not comparable. */
export interface Reading {
  readonly illuminant: IlluminantName;
  readonly observer: ObserverName;
}

/** A colour as it was given; a `Reading` beside it says what `lab` was read under. Reflectance is sampled at `wavelengthsNm`, 0..1. */
export type Colour =
  | { readonly kind: "lab"; readonly lab: Lab }
  | { readonly kind: "hex"; readonly hex: string }
  | {
      readonly kind: "reflectance";
      readonly wavelengthsNm: readonly number[];
      readonly reflectance: readonly number[];
    };

/** Two readings are the same. */
export const sameReading = (one: Reading, other: Reading): boolean =>
  one.illuminant === other.illuminant && one.observer === other.observer;
