import type { Caution } from "../../core/plan/advice/cautions.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Rework } from "../../core/recipe/rework/rework-shade.js";
import { type Block, paragraph, type Report } from "../report.js";
import type { Column, Table } from "../table.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { decimals, trimmed } from "../words/digits.js";

/** What `rework` found, and what it was asked. */
export interface ReworkFacts {
  /** As typed. */
  readonly from: string;
  /** The base that the part is, where it is not dyed yet. */
  readonly base: string | null;
  /** The shade that was meant. */
  readonly meant: string | null;
  readonly shades: readonly Rework[];
  readonly cautions: readonly Caution[];
}

const places = (count: number) => (value: number) => decimals(value, count);

const hows: Readonly<Record<Rework["how"], string>> = {
  "as-it-is": "passes as it is",
  "goes-on": "goes on in its dye",
  "over-dyed": "over-dyed, an estimate",
  "too-dark": "too dark already",
};

/** The same of a part that is not dyed yet. */
const howsOfBase: Partial<Record<Rework["how"], string>> = {
  "goes-on": "on its own base",
  "over-dyed": "on another base, an estimate",
};

const howOf = ({ how }: Rework, base: string | null): string =>
  (base === null ? undefined : howsOfBase[how]) ?? hows[how];

const columns: readonly Column[] = [
  { key: "shade", title: "shade" },
  { key: "dye", title: "dye" },
  { key: "dip_s", title: "dip", digits: (value) => trimmed(value, 1), show: duration },
  ...["L", "a", "b"].map((key): Column => ({ key, title: key, digits: places(1) })),
  { key: "delta_E00", title: "off by", digits: places(1) },
  { key: "tolerance_E00", title: "allowed", digits: places(1) },
  { key: "reachable", title: "reached" },
  { key: "how", title: "how" },
];

const tableOf = (shades: readonly Rework[], base: string | null): Table => ({
  columns,
  rows: shades.map((one) => [
    one.shade,
    one.dye,
    one.seconds,
    ...one.lab,
    one.deltaE00,
    one.tolerance,
    one.reachable ? "yes" : "no",
    howOf(one, base),
  ]),
});

/** The same for people, short enough for a terminal. */
const shortTable = (shades: readonly Rework[], base: string | null): Table => ({
  columns: ["shade", "dye", "dip", "off by", "how"].map((title) => ({ key: title, title })),
  rows: shades.map((one) => [
    one.shade,
    one.dye,
    one.seconds === 0 ? "-" : duration(one.seconds),
    `${decimals(one.deltaE00, 1)} (${one.reachable ? "" : "over "}${trimmed(one.tolerance, 1)})`,
    howOf(one, base),
  ]),
});

const named = (shades: readonly Rework[]): string => shades.map(({ shade }) => shade).join(", ");

function verdicts({ shades, base, meant }: ReworkFacts): readonly string[] {
  const [reached, not] = [shades.filter((one) => one.reachable), shades.filter((one) => !one.reachable)];
  const what = base === null ? "The part" : `Base ${base}`;
  const own = shades.find(({ shade }) => shade === meant);
  return [
    ...(own === undefined ? [] : [ownVerdict(own)]),
    reached.length === 0
      ? `${what} can become none of these shades within its tolerance.`
      : `${what} can still become: ${named(reached)}.`,
    ...(not.length === 0
      ? []
      : [
          base === null
            ? `A new part is needed for: ${named(not)}.`
            : `Another base is needed for: ${named(not)}.`,
        ]),
  ];
}

function ownVerdict({ shade, how, seconds, reachable, deltaE00 }: Rework): string {
  if (how === "as-it-is") return `It passes as ${shade} already.`;
  if (how === "too-dark")
    return `It is darker than ${shade}, ${decimals(deltaE00, 1)} away: dye does not come off again.`;
  return reachable
    ? `For ${shade} dip it ${duration(seconds)} more, in a fresh bath.`
    : `${duration(seconds)} more bring it nearest to ${shade}, and leave ${decimals(deltaE00, 1)}.`;
}

/** Shades that a part can still become, in every format. */
export function reworkReport(facts: ReworkFacts): Report {
  const { from, base, meant, shades, cautions } = facts;
  const sorted = shades.toSorted(
    (one, other) => Number(other.reachable) - Number(one.reachable) || one.deltaE00 - other.deltaE00,
  );
  const of = base === null ? `a part of ${from.replaceAll(/,\s*/g, ", ")}` : `base ${base}`;
  const list: Block = { kind: "list", items: verdicts(facts) };
  return {
    name: "rework",
    data: { from, base, meant, shades, cautions },
    rows: withCautions(tableOf(shades, base), cautions),
    blocks: [
      { kind: "heading", level: 1, text: `What ${of} can become` },
      list,
      { kind: "table", table: shortTable(sorted, base) },
      paragraph(
        "Dips are for a fresh bath at the dye's own temperature. A weakened bath takes longer: dipwright shade --strength says how long, except for a mix.",
      ),
      cautionLine(),
    ],
  };
}
