import { curveGrid, wavelengthsOf } from "../../../../src/core/colour/spectrum/grid.js";
import { kOverS, reflectanceOf } from "../../../../src/core/colour/spectrum/kubelka-munk.js";
import { curveLab } from "../../../../src/core/colour/spectrum/spectrum.js";
import type { Lab } from "../../../../src/core/model/batch.js";
import { rateFactor } from "../../../../src/core/uptake/law/arrhenius.js";

// Invented dyes that follow none of the uptake laws: two components of different speed diffuse through a surface film
// into a layer of finite thickness, which holds them in proportion to the liquor, the bath is emptied a little while a
// load is in it, and part of the light is reflected at the surface before it meets any dye.

/** A dip in a bath as it is. */
export interface Dip {
  readonly seconds: number;
  readonly strength: number;
  readonly celsius: number;
}

export interface LayerDye {
  readonly baseLab: Lab;
  /** True colour after a dip. */
  readonly colour: (dip: Dip) => Lab;
}

const reading = { illuminant: "D65", observer: 10 } as const;
const wavelengths = wavelengthsOf(curveGrid);
const lastSecond = 900;
const nodes = 28;

/** Fine at the surface, where a short dip stays. */
const places = Array.from({ length: nodes + 1 }, (_, i) => (i / nodes) ** 2);

interface Component {
  /** D/l² at 80 °C [1/s]. */
  readonly turnover: number;
  /** Film against layer, h l/(K D). */
  readonly biot: number;
  readonly layerJPerMol: number;
  readonly filmJPerMol: number;
}

/** Step [s] of the solution at a time. */
const stepAt = (t: number): number => (t < 20 ? 0.25 : t < 120 ? 1 : 4);

/**
 * Uptake of a component over time, as [seconds, uptake] pairs: implicit steps of the diffusion equation in a layer that
 * is closed at the back, with the film's resistance at its face.
 */
function uptakeOver(
  { turnover, biot, layerJPerMol, filmJPerMol }: Component,
  bath: { readonly strength: number; readonly celsius: number; readonly emptying: number },
): readonly (readonly [number, number])[] {
  const hot = (activationEnergyJPerMol: number): number =>
    rateFactor({ celsius: bath.celsius, referenceCelsius: 80, activationEnergyJPerMol });
  const diffusion = turnover * hot(layerJPerMol);
  const film = turnover * biot * hot(filmJPerMol);
  const c = new Float64Array(nodes);
  const width = places.slice(1).map((x, i) => x - places[i]!);
  const nearness = width.slice(1).map((w, i) => 2 / (w + width[i]!));
  const table: [number, number][] = [[0, 0]];
  let uptake = 0;
  const [upper, right] = [new Float64Array(nodes), new Float64Array(nodes)];
  for (let t = 0; t < lastSecond; ) {
    const dt = stepAt(t);
    const strength = Math.max(0, bath.strength * (1 - bath.emptying * uptake));
    const throughHalf = 1 / (1 / film + width[0]! / 2 / diffusion);
    const flow = (i: number): number => dt * diffusion * nearness[i]!;
    for (let i = 0; i < nodes; i++) {
      const left = i > 0 ? flow(i - 1) / width[i]! : 0;
      const next = i < nodes - 1 ? flow(i) / width[i]! : 0;
      let diagonal = 1 + left + next;
      let known = c[i]!;
      if (i === 0) {
        const taken = (dt * throughHalf) / width[0]!;
        diagonal += taken;
        known += taken * strength;
      }
      const pivot = diagonal - left * (i > 0 ? upper[i - 1]! : 0);
      upper[i] = next / pivot;
      right[i] = (known + left * (i > 0 ? right[i - 1]! : 0)) / pivot;
    }
    for (let i = nodes - 1; i >= 0; i--) c[i] = right[i]! + (i < nodes - 1 ? upper[i]! * c[i + 1]! : 0);
    uptake = c.reduce((sum, value, i) => sum + value * width[i]!, 0);
    t += dt;
    table.push([t, uptake]);
  }
  return table;
}

function between(table: readonly (readonly [number, number])[], seconds: number): number {
  let low = 0;
  let high = table.length - 1;
  while (high - low > 1) {
    const half = (low + high) >> 1;
    if (table[half]![0] <= seconds) low = half;
    else high = half;
  }
  const [a, b] = [table[low]!, table[high]!];
  return a[1] + ((b[1] - a[1]) * (Math.min(seconds, b[0]) - a[0])) / (b[0] - a[0]);
}

/** Light reflected at the face from outside and from inside: common practice for polymers, no source. */
const [outside, inside] = [0.04, 0.55];
const measured = (r: number): number => outside + ((1 - outside) * (1 - inside) * r) / (1 - inside * r);

/**
 * Times [s] between which the film, which carries the first moments, hands over to the layer: (K² D)/h², K partition 100
 * to 500, D 1e-14 to 1e-13 m²/s in the layer, h = 1.2e-9 m²/s / 20 µm of still liquor in a stirred bath. Common
 * practice, no source.
 */
export const stirred = [0.05, 5] as const;
/** The same in a bath that hardly moves, with ten times as much still liquor. */
export const still = [5, 500] as const;

export function layerDye(random: () => number, changeOver: readonly [number, number] = stirred): LayerDye {
  const uniform = (low: number, high: number): number => low + (high - low) * random();
  const spread = (low: number, high: number): number => Math.exp(uniform(Math.log(low), Math.log(high)));
  const turnover = spread(0.03, 1) / 180;
  const biot = 1 / Math.sqrt(turnover * spread(...changeOver));
  const [layerJPerMol, filmJPerMol] = [uniform(50e3, 110e3), uniform(15e3, 30e3)];
  const main: Component = { turnover, biot, layerJPerMol, filmJPerMol };
  const second: Component = { ...main, turnover: turnover * spread(0.4, 2.5), biot: biot * spread(0.6, 1.6) };
  /** Share of the bath's dye that a dip of 180 s takes. */
  const taken = uniform(0, 0.05);
  const bands = Array.from({ length: random() < 0.5 ? 1 : 2 }, () => ({
    centre: uniform(420, 640),
    width: uniform(25, 60),
    height: spread(0.4, 1),
  }));
  const shift = uniform(-25, 25);
  const share = uniform(0, 0.35);
  const foot = uniform(0.004, 0.03);
  const spectrum = (by: number): number[] =>
    wavelengths.map((nm) =>
      bands.reduce(
        (sum, { centre, width, height }) => sum + height * Math.exp(-0.5 * ((nm - centre - by) / width) ** 2),
        foot,
      ),
    );
  const [first, other] = [spectrum(0), spectrum(shift)];
  const whiteness = uniform(0.86, 0.93);
  const base = wavelengths.map((nm) => kOverS(whiteness - 0.0006 * Math.max(0, 470 - nm)));
  const deepest = spread(2, 12);
  const emptying = taken / between(uptakeOver(main, { strength: 1, celsius: 80, emptying: 0 }), 180);
  const kept = new Map<string, readonly (readonly (readonly [number, number])[])[]>();
  const tables = (strength: number, celsius: number) => {
    const key = `${strength} ${celsius}`;
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = [main, second].map((one) => uptakeOver(one, { strength, celsius, emptying }));
    kept.set(key, made);
    return made;
  };
  const whole = [0, 1].map((i) => between(tables(1, 80)[i]!, 180));
  const lab = (amounts: readonly number[]): Lab =>
    curveLab(
      base.map((ks, i) =>
        measured(
          reflectanceOf(
            ks + deepest * ((1 - share) * first[i]! * amounts[0]! + share * other[i]! * amounts[1]!),
          ),
        ),
      ),
      reading,
    );
  return {
    baseLab: lab([0, 0]),
    colour: ({ seconds, strength, celsius }) =>
      lab(tables(strength, celsius).map((table, i) => between(table, seconds) / whole[i]!)),
  };
}
