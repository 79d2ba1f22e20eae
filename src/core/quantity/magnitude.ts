import { error, type Fault } from "../fault.js";

/** No figure of a workshop is larger or, but for 0, smaller than these, and arithmetic with any of them stays finite. */
const largest = 1e18;
const smallest = 1e-18;

/** The fault of a number so large or so small that it can only be a slip; undefined where there is none. */
export function magnitudeFault(value: number, path: Fault["path"], help?: string): Fault | undefined {
  const size = Math.abs(value);
  return size === 0 || (size >= smallest && size <= largest)
    ? undefined
    : error("magnitude", path, `${value} is too ${size > 1 ? "large" : "small"} a number to be meant`, help);
}
