import { error, failed, type Outcome } from "../../core/fault.js";
import type { ReadFile } from "../source/include.js";
import type { Reflectance } from "./parse-reflectance.js";

/** Reads reflectance files through the same function that reads batch files. */
export const reflectanceReader =
  (readFile: ReadFile) =>
  async (file: string): Promise<Outcome<Reflectance>> => {
    let text: string;
    try {
      text = await readFile(file);
    } catch {
      return failed(
        error("reflectance", [], `${file} cannot be read`, "the name is relative to the file that holds it"),
      );
    }
    return (await import("./parse-reflectance.js")).parseReflectance(file, text);
  };
