export type { Fault, Outcome } from "./core/fault.js";
