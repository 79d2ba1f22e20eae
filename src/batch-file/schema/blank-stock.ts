import * as z from "zod";
import { isMap } from "../source/is-map.js";
import { chosen } from "./chosen.js";
import { count } from "./plain-values.js";

/** Undyed parts on the shelf: one count, or one for each base. */
export const blankStock = () =>
  chosen(
    z
      .union([
        count(
          { description: "undyed parts on the shelf, whatever their base", examples: [150] },
          { least: 0 },
        ),
        z.record(
          z.string(),
          count({ description: "undyed parts of that base on the shelf", examples: [150] }, { least: 0 }),
        ),
      ])
      .meta({ description: "undyed parts on the shelf, for week: one count, or one per base" }),
    (value) => (isMap(value) ? 1 : 0),
  );
