import { append } from "../../core/append.js";
import type { Evidence } from "../../core/bath/evidence/forms.js";
import { areaOfMass } from "../../core/bath/evidence/forms.js";
import { mostAssumedShare } from "../../core/bath/evidence/most-assumed-share.js";
import { logDeviation } from "../../core/bath/evidence/observation.js";
import { type Assumed, type Estimate, reconcile, usualAssumed } from "../../core/bath/evidence/reconcile.js";
import { strengthOfSlowerDip } from "../../core/bath/evidence/strength-of-slower-dip.js";
import { coldPerHot } from "../../core/bath/water.js";
import { error, type Fault, isError } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import { halfWidth95 } from "../../core/maths/sampling/half-width-95.js";
import type { Batch, Dye } from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import { figureOf } from "../../core/quantity/dye/dilution.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import type { FittedDyes } from "../../core/uptake/shade/fitted-dyes.js";
import type { Amount } from "../schema/quantities.js";
import type { Path } from "../source/source.js";
import type { Spec } from "./complete.js";
import { toBatch } from "./to-batch.js";

type SpecDye = Spec["dyes"][string];
type Item = SpecDye["uptakeEvidence"][number];

const usual = defaults.evidence;

/** A piece of evidence in the form that `reconcile` takes, with its place in the file. */
interface Placed {
  readonly evidence: Evidence;
  readonly path: Path;
}

const shareOf = (uncertain: Amount | undefined): { readonly relative?: number } =>
  uncertain === undefined ? {} : { relative: uncertain.value };

const amountOf = ({ value, interval95, assumedShare }: Estimate): Amount => ({
  value,
  factor: Math.sqrt(interval95[1] / interval95[0]),
  interval95,
  assumedShare,
  assumed: assumedShare > mostAssumedShare,
});

/** The prior: the amount as given or assumed. */
const before = ({ value, plusMinus, assumed }: Amount, { deviation }: Assumed): Assumed => ({
  value,
  deviation:
    assumed === true
      ? deviation
      : logDeviation(plusMinus === undefined ? 0.01 : Math.max(1e-3, plusMinus / halfWidth95 / value)),
});

function uptakeItem(item: Item, dye: Dye, batch: Batch, dyes: FittedDyes, path: Path): Placed | Fault[] {
  const perColdL = dyeKinds[dye.dilution.kind].inFill(figureOf(dye.dilution), 1);
  const dyePerL = perColdL * coldPerHot(dye.celsius, batch.room.celsius);
  const common = { dyePerL, depth: item.depth ?? usual.depth, ...shareOf(item.uncertain) };
  if (item.yield !== undefined) {
    const { value, per } = item.yield;
    const areaDm2 = per === "area" ? value : areaOfMass(value, item.area!.value);
    const usedShare = item.used?.value ?? usual.usedShare;
    return { path, evidence: { kind: "yield", dye: 1, areaDm2, usedShare, ...common } };
  }
  const areaDm2 = item.dyed!.value;
  if (item.bought !== undefined) {
    const [left, dumped] = [item.left?.value ?? 0, item.dumped?.value ?? 0];
    return {
      path,
      evidence: { kind: "purchases", bought: item.bought.value, left, dumped, areaDm2, ...common },
    };
  }
  const fitted = dyes.fit(dye, batch.handling);
  if (!fitted.ok) return [...fitted.faults];
  const told = strengthOfSlowerDip(
    fitted.value.model.uptake,
    common.depth,
    item.slower!,
    item.uncertain?.value,
  );
  if (told === undefined)
    return [
      error(
        "evidence-impossible",
        [...path, "slower"],
        `by the dye's uptake law, no bath strength makes a dip to depth ${common.depth} take ${item.slower} times as long`,
        "give depth: the mean depth of those dips, below 1",
      ),
    ];
  return {
    path,
    evidence: {
      kind: "slower",
      ...told,
      areaDm2,
      depth: common.depth,
      dyePerL,
      volumeL: item.volume!.value,
      evaporatedL: item.evaporated?.value ?? usual.evaporatedL,
      refill: item.refilled ?? usual.refilled,
    },
  };
}

/**
 * Replaces assumed uptakes and drag-out by those found from evidence. Weighings come first; then each dye in turn is
 * reconciled with the drag-out known so far, which its evidence narrows further if the file gives none.
 */
export function withEvidence(spec: Spec, fitted: FittedDyes): { spec: Spec; faults: readonly Fault[] } {
  const told = Object.entries(spec.dyes).filter(([, dye]) => dye.uptakeEvidence.length > 0);
  const weighings = spec.handling.dragOutEvidence;
  const faults: Fault[] = [];
  const batch = toBatch(spec);
  const part = (name: string) => batch.parts.find((one) => one.name === name)!;
  const weighed = mapped(
    weighings,
    (item, i): Placed => ({
      path: ["handling", "dragOut", "evidence", i],
      evidence: {
        kind: "weighing",
        dryG: item.dry.value,
        wetG: item.wet.value,
        areaDm2: (item.count ?? usual.weighedParts) * part(item.part).areaDm2,
        ...shareOf(item.uncertain),
      },
    }),
  );
  const settle = (placed: readonly Placed[], uptake: Assumed, dragOut: Assumed, home: Path) => {
    const outcome = reconcile(
      mapped(placed, ({ evidence }) => evidence),
      { uptakePerDm2: uptake, dragOutMlPerDm2: dragOut },
    );
    for (const fault of outcome.faults)
      faults.push({
        help: "check the figures of this item",
        ...fault,
        path:
          placed[Number(fault.path[0])]?.path ??
          (fault.path[0] === "assumed-drag-out" && weighed.length > 0 ? ["handling", "dragOut"] : home),
      });
    return outcome.ok ? outcome.value : undefined;
  };

  const given = before(spec.handling.dragOut, usualAssumed.dragOutMlPerDm2);
  const first = settle(weighed, usualAssumed.uptakePerDm2, given, ["handling", "dragOut"]);
  if (first === undefined) return { spec, faults };
  let dragOut: Estimate = first.dragOutMlPerDm2;
  const dyes = { ...spec.dyes };
  const asPrior = ({ value, factor }: Estimate): Assumed => ({
    value,
    deviation: Math.log(factor),
    ...(weighed.length > 0 ? { said: "drag-out as weighed" } : {}),
  });
  const placedOf = new Map<string, readonly Placed[]>();
  for (const [name, dye] of told) {
    const inBatch = batch.dyes.find((one) => one.name === name)!;
    const items = mapped(dye.uptakeEvidence, (item, i) =>
      uptakeItem(item, inBatch, batch, fitted, ["dyes", name, "uptake", "evidence", i]),
    );
    for (const item of items) if (Array.isArray(item)) append(faults, item);
    placedOf.set(
      name,
      items.flatMap((item) => (Array.isArray(item) ? [] : [item as Placed])),
    );
  }
  if (faults.some(isError)) return { spec, faults };
  for (const [name, dye] of told) {
    const home = ["dyes", name, "uptake"];
    const prior = before(dye.uptake, usualAssumed.uptakePerDm2);
    const found = settle(placedOf.get(name)!, prior, asPrior(dragOut), home);
    if (found === undefined) return { spec, faults };
    dyes[name] = { ...dye, uptake: { ...dye.uptake, ...amountOf(found.uptakePerDm2) }, uptakeEvidence: [] };
    // The share of the figure assumed at first, not of the one that other evidence has narrowed.
    const { assumedShare } = found.dragOutMlPerDm2;
    dragOut = { ...found.dragOutMlPerDm2, assumedShare: assumedShare * dragOut.assumedShare };
  }
  const dragOutFound = weighed.length > 0 || spec.handling.dragOut.assumed === true;
  return {
    spec: {
      ...spec,
      dyes,
      handling: {
        ...spec.handling,
        ...(dragOutFound ? { dragOut: amountOf(dragOut) } : {}),
        dragOutEvidence: [],
      },
    },
    faults,
  };
}
