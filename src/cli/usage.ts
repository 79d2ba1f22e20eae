import { error, type Fault } from "../core/fault.js";

/** An option or argument that cannot be used so. */
export const usage = (option: string, message: string, help?: string): Fault =>
  error("usage", [option], message, help);
