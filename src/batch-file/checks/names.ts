import { undyed } from "../../core/model/undyed.js";
import { listed } from "../../core/quantity/text/listed.js";
import { nearest } from "../issues/nearest.js";
import { isBuild } from "../schema/blank.js";
import { mostListed, type NamedMap, namedMapKeys, namedMaps } from "../schema/named-maps.js";
import { isMap } from "../source/is-map.js";
import type { Path } from "../source/source.js";
import { isAmount } from "../to-batch/amounts.js";
import { amountsIn, entries, items, mixes, type PartlyRead, type Report } from "./report.js";

/** Control characters break terminals and tables; a name with space around it cannot be found, as uses of it are trimmed. */
function nameFault(name: string) {
  if (/\p{Cc}/u.test(name))
    return {
      code: "control-character",
      message: "the name contains a control character",
      help: "write letters, digits and signs only",
    };
  const bare = name.trim();
  if (bare === name && name !== "") return undefined;
  return bare === ""
    ? { code: "name-form", message: "the name is empty", help: "write a name" }
    : { code: "name-form", message: "the name has white space around it", help: `write ${bare}` };
}

/** Reports names of a bad form; returns their trimmed forms by kind. */
function checkForms(batch: PartlyRead, report: Report): ReadonlyMap<string, ReadonlySet<string>> {
  const bare = new Map<string, Set<string>>();
  for (const kind of namedMapKeys) {
    const map = batch[kind];
    if (!isMap(map)) continue;
    for (const name of Object.keys(map)) {
      const fault = nameFault(name);
      if (fault === undefined) continue;
      report(fault.code, [kind, name], fault.message, fault.help, "key");
      bare.set(kind, (bare.get(kind) ?? new Set()).add(name.trim()));
    }
  }
  return bare;
}

/** Of several dryers the first is used, and a name of digits comes first in the data, wherever the file has it. */
function checkDryerOrder({ dryers }: PartlyRead, report: Report): void {
  const names = isMap(dryers) ? Object.keys(dryers) : [];
  if (names.length < 2) return;
  for (const name of names.filter((one) => /^\d+$/.test(one)))
    report(
      "dryer-order",
      ["dryers", name],
      "of several dryers the first is used, and the place of a name of digits only is not known",
      `use a name with a letter, such as dryer-${name}`,
      "key",
    );
}

/** Every name that is used must be defined. */
export function checkNames(batch: PartlyRead, report: Report): void {
  const bare = checkForms(batch, report);
  checkDryerOrder(batch, report);
  if (isMap(batch.shades) && Object.hasOwn(batch.shades, undyed))
    report(
      "name-taken",
      ["shades", undyed],
      `${undyed} means undyed parts, so it cannot name a shade`,
      "use another name",
      "key",
    );
  const need = (kind: NamedMap, name: string | undefined, path: Path, part?: "key"): void => {
    const map = batch[kind];
    if (name === undefined || (map !== undefined && (!isMap(map) || Object.hasOwn(map, name)))) return;
    // The name has white space around it where it is defined, which is reported there.
    if (bare.get(kind)?.has(name)) return;
    const known = Object.keys(map ?? {});
    const near = nearest(name, known);
    const alike = known.some((one) => one.normalize() === name.normalize());
    const all =
      known.length === 0
        ? `no ${kind} are defined: add ${kind}: with ${name}: below it`
        : known.length <= mostListed
          ? `defined under ${kind}: ${listed(known, "and")}`
          : `${known.length} ${kind} are defined: add ${name} to them or use one of them`;
    report(
      "undefined-name",
      path,
      `the ${namedMaps[kind]} ${name} is not defined`,
      alike
        ? "a name that looks the same is defined with other Unicode characters: copy it from there"
        : near === undefined
          ? all
          : known.length === 1
            ? `did you mean ${near}?`
            : `did you mean ${near}? ${all}`,
      part,
    );
  };

  for (const [name, dye] of entries(batch.dyes)) need("bases", dye.base, ["dyes", name, "base"]);
  for (const [name, { mix, trials }] of mixes(batch)) {
    for (const dye of Object.keys(amountsIn(mix))) need("dyes", dye, ["dyes", name, "mix", dye], "key");
    for (const [i, trial] of items(trials))
      for (const dye of Object.keys(amountsIn(trial.mix)))
        need("dyes", dye, ["dyes", name, "trials", i, "mix", dye], "key");
  }
  for (const [name, shade] of entries(batch.shades)) need("dyes", shade.dye, ["shades", name, "dye"]);
  for (const [name, part] of entries(batch.parts)) {
    if (isMap(part.stock))
      for (const base of Object.keys(part.stock)) need("bases", base, ["parts", name, "stock", base], "key");
    if (typeof part.blank !== "object" || part.blank === null) continue;
    if (isAmount(part.blank) || isBuild(part.blank)) continue;
    for (const base of Object.keys(part.blank)) need("bases", base, ["parts", name, "blank", base], "key");
  }
  const dragOut = batch.handling?.dragOut;
  if (dragOut !== undefined && "evidence" in dragOut)
    for (const [i, item] of items(dragOut.evidence))
      need("parts", item.part, ["handling", "dragOut", "evidence", i, "part"]);
  for (const [i, bath] of items(batch.baths)) {
    need("tanks", bath.tank, ["baths", i, "tank"]);
    need("dyes", bath.dye, ["baths", i, "dye"]);
  }
  for (const [i, order] of items(batch.orders)) {
    need("parts", order.part, ["orders", i, "part"]);
    if (order.shade !== undyed) need("shades", order.shade, ["orders", i, "shade"]);
    need("bases", order.base, ["orders", i, "base"]);
  }
}
