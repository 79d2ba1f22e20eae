/** What decides whether a stream gets colour. */
export interface ColourFacts {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isTerminal: boolean;
  /** `--no-color` was given. */
  readonly refused: boolean;
}

/**
 * Whether to write colour: the one place that decides. `--no-color` and NO_COLOR win over FORCE_COLOR, which
 * wins over what the stream is; an empty variable counts as unset.
 */
export function wantsColour({ env, isTerminal, refused }: ColourFacts): boolean {
  if (refused || env.NO_COLOR) return false;
  if (env.FORCE_COLOR) return env.FORCE_COLOR !== "0" && env.FORCE_COLOR !== "false";
  return isTerminal && env.TERM !== "dumb";
}

/** Whether 24-bit colours may be written: colour is on, and COLORTERM or FORCE_COLOR=3 says so. */
export const wantsTrueColour = (facts: ColourFacts): boolean =>
  wantsColour(facts) &&
  (/^(truecolor|24bit)$/i.test(facts.env.COLORTERM ?? "") || facts.env.FORCE_COLOR === "3");
