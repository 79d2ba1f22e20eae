/**
 * A report's data as JSON, numbers unrounded, keys in the order given, `schema` first. A number that is not
 * finite is a defect of ours and thrown, since JSON would turn it into null in silence.
 */
export function json(name: string, data: Readonly<Record<string, unknown>>, indent = 2): string {
  const checked = (key: string, value: unknown): unknown => {
    if (typeof value === "number" && !Number.isFinite(value))
      throw new Error(`${name}: ${key} is ${value}, which JSON cannot hold`);
    return value instanceof Map ? Object.fromEntries(value) : value;
  };
  return `${JSON.stringify({ schema: `dipwright/${name}@1`, ...data }, checked, indent)}\n`;
}

/** Throws where data without Maps hold a number that is not finite: faster than looking at each while it is written. */
export function onlyFinite(name: string, data: unknown, key = ""): void {
  if (typeof data === "number") {
    if (!Number.isFinite(data)) throw new Error(`${name}: ${key} is ${data}, which JSON cannot hold`);
  } else if (Array.isArray(data)) for (const one of data) onlyFinite(name, one, key);
  else if (typeof data === "object" && data !== null)
    for (const own of Object.keys(data)) onlyFinite(name, (data as Record<string, unknown>)[own], own);
}
