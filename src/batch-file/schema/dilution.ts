import { error, failed } from "../../core/fault.js";
import {
  dilutionHelp,
  type ParsedDilution,
  parseDilution,
} from "../../core/quantity/parse/parse-dilution.js";
import { leaf, type Meaning, notA } from "./leaf.js";

const dilutionForms = "write 1:9, 10 %, 100 mL/L, or 20 g/L for a powder";

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
              ? error("unit-missing", [], "a dilution needs a unit", dilutionHelp(input))
              : error("wrong-type", [], notA("a dilution", input), dilutionForms),
          ),
  );
