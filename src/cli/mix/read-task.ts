import { error, type Outcome } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import { type OptionReader, optionReader, settled } from "../option-reader.js";
import type { MixKind, MixTask, Warmth } from "./task.js";

const heat = ["temperature", "room"];
const wants: Record<
  MixKind,
  { readonly said: string; readonly needs: readonly string[]; readonly takes: readonly string[] }
> = {
  "make-up": { said: "a make-up", needs: ["volume", "dilution"], takes: heat },
  "top-up": {
    said: "a top-up",
    needs: ["from-volume", "from-strength", "volume", "dilution"],
    takes: ["strength", ...heat],
  },
  thinning: { said: "thinning", needs: ["from-volume", "from-strength", "strength"], takes: heat },
  "on-weight": {
    said: "an on-weight recipe",
    needs: ["goods", "depth"],
    takes: ["stock", "ratio", "dye-strength"],
  },
};
const every = [...new Set(Object.values(wants).flatMap(({ needs, takes }) => [...needs, ...takes]))];

function kindOf(given: ReadonlySet<string>): MixKind | undefined {
  if (["goods", "depth", "stock", "ratio", "dye-strength"].some((option) => given.has(option)))
    return "on-weight";
  if (given.has("from-volume") || given.has("from-strength"))
    return given.has("volume") || given.has("dilution") || !given.has("strength") ? "top-up" : "thinning";
  return given.size > 0 ? "make-up" : undefined;
}

const some = { above: 0 };
const positive = (what: string) => ({ ...some, must: `${what} must be more than nothing` });

function warmth(read: OptionReader): Warmth {
  const liquid = { from: 0, to: 100, must: "water is liquid from 0 to 100 °C" };
  const roomCelsius = read.quantity("room", "temperature", liquid, { most: 50 }) ?? defaults.room.celsius;
  const celsius = read.quantity("temperature", "temperature", liquid);
  return { roomCelsius, celsius: celsius ?? roomCelsius, celsiusAssumed: celsius === undefined };
}

/** The options of `mix` as a task: which of the four it is follows from what was given. */
export function readTask(typed: (option: string) => string | undefined): Outcome<MixTask> {
  const read = optionReader(typed);
  const given = new Set(every.filter((option) => typed(option) !== undefined));
  const kind = kindOf(given);
  if (kind === undefined) {
    read.faults.push(
      error(
        "usage",
        [],
        "nothing to mix is given",
        "write for example: dipwright mix --volume 6L --dilution 1:9 --temperature 80C",
      ),
    );
    return settled<MixTask>(read, undefined);
  }
  const { said, needs, takes } = wants[kind];
  const missing = needs.filter((option) => !given.has(option)).map((option) => `--${option}`);
  if (missing.length > 0)
    read.faults.push(
      error(
        "usage",
        [],
        `${said} also needs ${missing.join(" and ")}`,
        "dipwright mix --help shows examples",
      ),
    );
  for (const option of given)
    if (!needs.includes(option) && !takes.includes(option))
      read.faults.push(
        error(
          "usage",
          [`--${option}`],
          `has no part in ${said}`,
          `${said} takes ${[...needs, ...takes].map((o) => `--${o}`).join(", ")}`,
        ),
      );
  const share = (option: string, must: string, to?: number) =>
    read.quantity(option, "percent", { above: 0, ...(to === undefined ? {} : { to }), must });
  const volume = (option: string) => read.quantity(option, "volume", positive("a volume"));
  const task = (): Partial<MixTask> => {
    switch (kind) {
      case "make-up":
        return {
          kind,
          volumeL: volume("volume"),
          dilution: read.dilution("dilution"),
          ...warmth(read),
        } as Partial<MixTask>;
      case "top-up":
      case "thinning":
        return {
          kind,
          fromVolumeL: volume("from-volume"),
          fromStrength: read.quantity("from-strength", "percent", {
            from: 0,
            must: "a strength is 0 % or more",
          }),
          ...(kind === "top-up" ? { volumeL: volume("volume"), dilution: read.dilution("dilution") } : {}),
          strength: share("strength", "a strength to reach is more than 0 %") ?? 1,
          ...warmth(read),
        } as Partial<MixTask>;
      case "on-weight": {
        const stock = read.stock("stock");
        const ratio = read.ratio("ratio");
        return {
          kind,
          goodsG: read.quantity("goods", "mass", positive("a mass")),
          depth: share("depth", "a depth is more than 0 % and at most 100 % of the goods", 1),
          dyeStrength: share("dye-strength", "a dye's strength is more than 0 %") ?? 1,
          ...(stock === undefined ? {} : { stockGPerL: stock }),
          ...(ratio === undefined ? {} : { ratioLPerKg: ratio }),
        } as Partial<MixTask>;
      }
    }
  };
  return settled(read, task() as MixTask);
}
