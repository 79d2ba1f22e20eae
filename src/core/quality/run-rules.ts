/** So many of the last readings beyond so many σ, all on one side. */
export interface RunRule {
  readonly count: number;
  readonly of: number;
  readonly beyondSigma: number;
  readonly said: string;
}

/** Rules by which single readings are out of control, each more than once in a few hundred readings of chance alone. */
export const runRules = {
  beyond: { count: 1, of: 1, beyondSigma: 3, said: "one reading beyond 3 σ" },
  two: { count: 2, of: 3, beyondSigma: 2, said: "2 of 3 readings beyond 2 σ on one side" },
  four: { count: 4, of: 5, beyondSigma: 1, said: "4 of 5 readings beyond 1 σ on one side" },
  eight: { count: 8, of: 8, beyondSigma: 0, said: "8 readings in a row on one side" },
} as const satisfies Record<string, RunRule>;
export type RunRuleName = keyof typeof runRules;

/**
 * Whether the last of some readings breaks a rule. Each rule that is added finds small shifts sooner and gives more
 * false alarms: the first alone one in 370 readings, with the last one in 153.
 * @param deviations readings in the order of time, from the centre [σ]
 * @source champWoodall1987
 * @example breaksRule([0.1, 2.2, -0.4, 2.5], "two") // => true
 * @example breaksRule([2.2, 0.1, -0.4, 2.5], "two") // => false
 */
export function breaksRule(deviations: readonly number[], rule: RunRuleName): boolean {
  const { count, of, beyondSigma } = runRules[rule];
  const last = deviations.slice(-of);
  const beyond = (side: 1 | -1): number => last.filter((value) => side * value > beyondSigma).length;
  return beyond(1) >= count || beyond(-1) >= count;
}
