import { error, type Fault } from "../../fault.js";
import { type Kind, kindOf } from "../kinds.js";
import { numberFault, numberPattern } from "./number-text.js";
import type { Propose } from "./proposal.js";
import { isMoney } from "./unit-fault.js";

type Path = readonly (string | number)[];

const currencySign = new RegExp(`^\\s*[€$£¥]\\s*(${numberPattern})`);
const clock = /^\s*(\d+):(\d\d)(:\d\d)?\s*$/;
const curly = /[“”„‘’«»]/;

/** Longest text to read as a quantity: the time of the patterns may grow with the square of its length. */
const longest = 100;

/** Why a text cannot be a quantity, whatever its unit; undefined if it can. */
export function textFault(kind: Kind, text: string, path: Path, propose: Propose): Fault | undefined {
  const example = propose(kind.example);
  if (text.length > longest)
    return error(
      "quantity-form",
      path,
      `the text is too long for ${kind.what}`,
      `write ${kind.what} such as ${example}`,
    );
  if (curly.test(text)) {
    const straight = text.replace(new RegExp(curly, "g"), "").trim();
    return error(
      "quantity-form",
      path,
      "the value contains curly quotes",
      `use straight quotes or none: write ${straight === "" ? example : straight}`,
    );
  }
  const sign = currencySign.exec(text);
  if (sign !== null && isMoney(kind))
    return error(
      "currency-in-price",
      path,
      "the value begins with a currency sign",
      `write ${propose(Number(sign[1]))}; only the key currency names the currency`,
    );
  const time = clock.exec(text);
  if (time !== null && kind === kindOf("time"))
    return error(
      "quantity-form",
      path,
      `"${text.trim()}" can be read in two ways`,
      `write ${Number(time[1])} min ${Number(time[2])} s, or ${Number(time[1])} h ${Number(time[2])} min`,
    );
  return numberFault(text, path);
}
