/**
 * A pure function of an object that keeps its result for as long as the object lives. The others of its
 * arguments must be the same too for a result to be given again.
 */
export function rememberBy<Of extends object, Others extends readonly unknown[], Result>(
  compute: (of: Of, ...others: Others) => Result,
): (of: Of, ...others: Others) => Result {
  const known = new WeakMap<Of, { readonly others: Others; readonly result: Result }>();
  return (of, ...others) => {
    const kept = known.get(of);
    if (kept?.others.every((other, i) => other === others[i])) return kept.result;
    const result = compute(of, ...others);
    known.set(of, { others, result });
    return result;
  };
}
