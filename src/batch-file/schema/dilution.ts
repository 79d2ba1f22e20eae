import { error, failed, type Outcome } from "../../core/fault.js";
import {
  dilutionHelp,
  type ParsedDilution,
  parseDilution,
} from "../../core/quantity/parse/parse-dilution.js";
import { leaf, type Meaning, notA } from "./leaf.js";

const dilutionForms = "write 1:9, 10 %, 100 mL/L, or 20 g/L for a powder";

function read(input: unknown): Outcome<ParsedDilution> {
  if (typeof input === "string") return parseDilution(input);
  return failed(
    typeof input === "number"
      ? error("unit-missing", [], "a dilution needs a unit", dilutionHelp(input))
      : error("wrong-type", [], notA("a dilution", input), dilutionForms),
  );
}

/** Dye in water. */
export const dilution = (meaning: Meaning) =>
  leaf<ParsedDilution>({ type: "string", reads: "dilution", errorMessage: dilutionForms }, meaning, read);

const amountForms =
  "write mL of concentrate in a litre of the bath, such as 12 mL/L, or g of a powder, such as 2 g/L";

/** A dye in a mixed bath: the same forms are read, but a ratio of dye and water is not what its user means. */
export const mixAmount = (meaning: Meaning) =>
  leaf<ParsedDilution>(
    { type: "string", reads: "dilution", errorMessage: dilutionForms },
    meaning,
    (input) => {
      const amount = read(input);
      return amount.ok ? amount : failed(...amount.faults.map((fault) => ({ ...fault, help: amountForms })));
    },
  );
