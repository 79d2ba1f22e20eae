import { defaults } from "../../core/model/defaults.js";
import { describeQuantity } from "../../core/quantity/text/describe.js";
import type { RawSpec } from "../schema/batch.js";
import type { Told } from "../schema/leaf.js";
import { isMap } from "../source/is-map.js";
import type { Path } from "../source/source.js";

/** A batch in which every value with a fault is undefined, at any depth. */
export type Partly<T> = T extends object ? { readonly [K in keyof T]?: Partly<T[K]> | undefined } : T;

export type PartlyRead = Partly<RawSpec>;

export type Report = (code: string, path: Path, message: string, help: string, part?: Told["part"]) => void;

/** Entries of a map that may be missing or have faults. */
export const entries = <T>(map: { readonly [name: string]: T | undefined } | undefined): [string, T][] =>
  Object.entries(Array.isArray(map) ? {} : (map ?? {})).filter(
    (entry): entry is [string, T] => typeof entry[1] === "object" && entry[1] !== null,
  );

type RawDyes = NonNullable<RawSpec["dyes"]>[string];
type Plain = Partly<Exclude<RawDyes, { mix: unknown }>>;
export type PartlyMix = Partly<Extract<RawDyes, { mix: unknown }>>;

/** The dyes of a batch that are no mixes, and the mixes. */
export const plainDyes = ({ dyes }: PartlyRead): [string, Plain][] =>
  entries(dyes as { readonly [name: string]: Plain | undefined } | undefined).filter(
    ([, dye]) => !("mix" in dye),
  );
export const mixes = ({ dyes }: PartlyRead): [string, PartlyMix][] =>
  entries(dyes as { readonly [name: string]: PartlyMix | undefined } | undefined).filter(
    ([, dye]) => "mix" in dye,
  );

/** Amounts by dye, where they are a map. */
export const amountsIn = (mix: PartlyMix["mix"] | null): NonNullable<PartlyMix["mix"]> =>
  isMap(mix) ? (mix as NonNullable<PartlyMix["mix"]>) : {};

/** Items of a list that may be missing or have faults, with their indices. */
export const items = <T>(list: readonly (T | undefined)[] | undefined): [number, T][] =>
  (Array.isArray(list) ? list : []).flatMap((item: T | undefined, i) =>
    typeof item === "object" && item !== null ? [[i, item] as [number, T]] : [],
  );

/** The own entry of a map; never an inherited one such as constructor. */
export const own = <T>(
  map: { readonly [name: string]: T | undefined } | undefined,
  name: string | undefined,
): T | undefined =>
  map !== undefined && map !== null && name !== undefined && Object.hasOwn(map, name) ? map[name] : undefined;

/** The temperature of the room [°C]. */
export const roomOf = ({ room }: PartlyRead): number => room?.temperature?.value ?? defaults.room.celsius;

export const degrees = (celsius: number): string => describeQuantity("temperature", { value: celsius });
