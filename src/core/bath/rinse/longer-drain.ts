import { drainingFilmMlPerDm2 } from "./drain-film.js";

/** Draining longer than this saves nothing that weighing shows [s]. */
export const drainEndSeconds = 40;

/** The least and the most that an assumed law allows. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** An estimate: `law` names what it assumes. */
export interface DrainSaving {
  readonly law: "film drains with 1/√t, to 40 s";
  /** Share of the drag-out that a longer drain leaves in the bath. */
  readonly share: Range;
  readonly dragOutMlPerDm2: Range;
  readonly extraSeconds: number;
}

/**
 * What a longer drain would leave in the bath, from the drag-out at the present drain time.
 *
 * The liquor on a part is a film that runs down with 1/√t and liquor held by pockets, edges and the rough surface,
 * which does not. How much is which is not known, so the estimate has two ends: only the film of a smooth wall
 * runs (least), or all of it does, as 1 - sqrt(t₀/t₁) (most). From 40 s on nothing runs. Both are assumed, not
 * measured on the part: weighing it at both times replaces them.
 * @source jeffreys1930
 * @source drainWeighings
 * @example
 * longerDrain({ dragOutMlPerDm2: 0.8, fromSeconds: 10, toSeconds: 40, celsius: 80, heightDm: 1 }).share.high // => 0.5
 * longerDrain({ dragOutMlPerDm2: 0.8, fromSeconds: 40, toSeconds: 90, celsius: 80, heightDm: 1 }).share.high // => 0
 */
export function longerDrain(part: {
  readonly dragOutMlPerDm2: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly celsius: number;
  /** Height of the parts as they hang. */
  readonly heightDm: number;
}): DrainSaving {
  const { dragOutMlPerDm2, fromSeconds, toSeconds, celsius, heightDm } = part;
  const from = Math.min(fromSeconds, drainEndSeconds);
  const to = Math.max(from, Math.min(toSeconds, drainEndSeconds));
  const film = (seconds: number): number => drainingFilmMlPerDm2({ seconds, celsius, heightDm });
  const high = 1 - Math.sqrt(from / to);
  // A drag-out below that of a smooth wall is all film.
  const low = from < to && film(from) < dragOutMlPerDm2 ? (film(from) - film(to)) / dragOutMlPerDm2 : high;
  return {
    law: "film drains with 1/√t, to 40 s",
    share: { low, high },
    dragOutMlPerDm2: { low: dragOutMlPerDm2 * (1 - high), high: dragOutMlPerDm2 * (1 - low) },
    extraSeconds: Math.max(0, toSeconds - fromSeconds),
  };
}
