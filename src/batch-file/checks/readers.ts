import type { Readers } from "../resources/resources.js";
import { entries, items, type PartlyRead, plainDyes, type Report } from "./report.js";

/** Files that the batch names need a reader. */
export const checkReaders =
  (readers: Readers) =>
  (batch: PartlyRead, report: Report): void => {
    if (readers.measure === undefined)
      for (const [name, part] of entries(batch.parts)) {
        if (!("mesh" in part) || ("mass" in part && "area" in part)) continue;
        const lacking = (["mass", "area"] as const).filter((key) => !(key in part));
        report(
          "mesh",
          ["parts", name, "mesh"],
          "model files are not read here",
          `give ${lacking.map((key) => (key === "mass" ? "mass: 6.4 g" : "area: 41 cm2")).join(" and ")}`,
        );
      }
    if (readers.reflectance === undefined)
      for (const [name, dye] of plainDyes(batch))
        for (const [i, swatch] of items(dye.swatches))
          if ("reflectance" in swatch)
            report(
              "reflectance",
              ["dyes", name, "swatches", i, "reflectance"],
              "reflectance files are not read here",
              "give lab: [73.5, 33.0, 15.9]",
            );
  };
