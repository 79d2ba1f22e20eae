import type { Execute } from "../command.js";

export const execute: Execute = async () => ({ complaints: [] });
