import { error, failed } from "../../core/fault.js";
import {
  dilutionForms,
  type ParsedDilution,
  parseDilution,
  unitMissing,
} from "../../core/quantity/parse/parse-dilution.js";
import { leaf, type Meaning, notA } from "./leaf.js";

/** Dye in water. */
export const dilution = (meaning: Meaning) =>
  leaf<ParsedDilution>(
    { type: "string", reads: "dilution", errorMessage: dilutionForms },
    meaning,
    (input) =>
      typeof input === "string"
        ? parseDilution(input)
        : failed(
            typeof input === "number"
              ? unitMissing(input)
              : error("wrong-type", [], notA("a dilution", input), dilutionForms),
          ),
  );
