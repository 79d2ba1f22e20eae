import { findIlluminant, findObserver, illuminantNames } from "../../core/colour/reading.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { IlluminantName, ObserverName, Reading } from "../../core/model/colour.js";
import type { Request } from "../command.js";
import { usage } from "../usage.js";
import { readReading } from "./read-reading.js";

/** What is asked of `colour`. */
export interface ColourTask {
  readonly what:
    | { readonly kind: "one"; readonly text: string; readonly spec?: string }
    | { readonly kind: "curves"; readonly file: string };
  /** What typed CIELAB was read under. */
  readonly reading?: Reading;
  /** What to report under; as read where absent. */
  readonly illuminant?: IlluminantName;
  readonly observer?: ObserverName;
}

/** Reads arguments and options of `colour`; every fault of them at once. */
export function readTask({ args, options, output }: Request): Outcome<ColourTask> {
  const text = (name: string): string | undefined => options[name] as string | undefined;
  const reading = readReading(text("reading"));
  const faults: Fault[] = [...reading.faults];
  const [file, spec, name, angle] = [text("reflectance"), text("spec"), text("illuminant"), text("observer")];
  const illuminant = findIlluminant(name ?? "");
  if (name !== undefined && illuminant === undefined)
    faults.push(
      usage("--illuminant", `"${name}" is not an illuminant`, `write one of ${illuminantNames.join(", ")}`),
    );
  const observer = findObserver(angle ?? "");
  if (angle !== undefined && observer === undefined)
    faults.push(usage("--observer", `"${angle}" is not an observer`, "write 2 or 10"));
  const [typed] = args;
  if (file !== undefined && typed !== undefined)
    faults.push(usage("--reflectance", "the curves come from the file", "leave out A"));
  if (file !== undefined && text("reading") !== undefined)
    faults.push(usage("--reading", "a curve is read under nothing", "write --illuminant and --observer"));
  if (file !== undefined && spec !== undefined)
    faults.push(usage("--spec", "a file of curves names no shades", "leave out --spec"));
  if (file === undefined && typed === undefined)
    faults.push(error("usage", [], "no colour is given", "write colour A, or colour --reflectance FILE.csv"));
  if (spec === undefined && output.set.length > 0)
    faults.push(usage("--set", "no batch file is read, so there is nothing to set", "add --spec FILE"));
  if (faults.length > 0 || !reading.ok) return failed(...faults);
  return done({
    what:
      file !== undefined
        ? { kind: "curves", file }
        : { kind: "one", text: typed!, ...(spec === undefined ? {} : { spec }) },
    ...(reading.value === undefined ? {} : { reading: reading.value }),
    ...(illuminant === undefined ? {} : { illuminant }),
    ...(observer === undefined ? {} : { observer }),
  });
}
