import type { CommandDeclaration } from "./command.js";
import { mix } from "./mix/declaration.js";

/** Every command, in the order of the help. */
export const commands: readonly CommandDeclaration[] = [mix];
