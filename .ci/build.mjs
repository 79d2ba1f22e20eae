// Builds dist: the command in a few files, the library as ES modules with declarations, and the licences of all
// packages whose code is in either.
import { rmSync } from "node:fs";
import { buildCommand } from "./build/command.mjs";
import { buildDeclarations } from "./build/declarations.mjs";
import { buildLibrary } from "./build/library.mjs";
import { writeLicences } from "./build/licences.mjs";
import { dist } from "./build/places.mjs";

rmSync(dist, { recursive: true, force: true });
const [command, library] = await Promise.all([buildCommand(), buildLibrary(), buildDeclarations()]);
writeLicences([...command, ...library]);
