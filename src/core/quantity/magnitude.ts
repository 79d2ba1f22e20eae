import { error, type Fault } from "../fault.js";

/** Every figure of a workshop but 0 lies between these, and arithmetic with any of them stays finite. */
const largest = 1e18;
const smallest = 1e-18;

/** The fault of a number so large or so small that it can only be a slip; undefined for any other. */
export function magnitudeFault(value: number, path: Fault["path"], help?: string): Fault | undefined {
  const size = Math.abs(value);
  return size === 0 || (size >= smallest && size <= largest)
    ? undefined
    : error("magnitude", path, `${value} is too ${size > 1 ? "large" : "small"}`, help);
}
