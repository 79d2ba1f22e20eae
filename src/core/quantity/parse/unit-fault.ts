import { error, type Fault } from "../../fault.js";
import { type Kind, kindOf } from "../kinds.js";
import { findUnitAnyCase, kindsOfUnit, tidyUnit } from "./find-unit.js";
import { tidyNumber } from "./number-text.js";
import type { Propose } from "./proposal.js";

type Path = readonly (string | number)[];

const isPrice = (kind: Kind): boolean => kind.what.startsWith("a price");

/** Whether a kind is money, which a file writes without its currency. */
export const isMoney = (kind: Kind): boolean => isPrice(kind) || kind === kindOf("amount");

/** The fault of a text that does not name a unit of the kind. */
export function unitFault(kind: Kind, number: number, text: string, path: Path, propose: Propose): Fault {
  const example = propose(number);
  const name = tidyUnit(text);
  const candidates = kindsOfUnit(text)
    .map(kindOf)
    .filter((other) => other !== kind);
  const other = candidates.find((o) => isPrice(o) === isPrice(kind)) ?? candidates[0];
  if (/^(?:uk|imp(?:erial)?)\.? ?/i.test(name))
    return error(
      "unit-unknown",
      path,
      `${name} is an imperial measure, which is not read`,
      "an imperial gallon is 4.54609 L, an imperial fluid ounce 28.413 mL: write litres",
    );
  if (/[€$£¥]|^[A-Z]{3}\b/.test(name) && isMoney(kind))
    return error(
      "currency-in-price",
      path,
      "the price contains a currency",
      `write ${example}; only the key currency names the currency`,
    );
  if (other !== undefined)
    return error(
      "unit-wrong",
      path,
      `${tidyNumber(number)} ${name} is ${other.what}, not ${kind.what}`,
      name === "oz" && kind === kindOf("volume")
        ? `a fluid ounce is written fl oz: write ${tidyNumber(number)} fl oz`
        : `write ${kind.what} such as ${example}`,
    );
  const nearest = findUnitAnyCase(kind, text);
  return error(
    "unit-unknown",
    path,
    `${name} is not a known unit`,
    nearest === undefined
      ? `write ${kind.what} such as ${example}`
      : `capitals matter in units: write ${tidyNumber(number)} ${nearest}`,
  );
}
