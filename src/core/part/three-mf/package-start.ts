import { error, type Fault } from "../../fault.js";
import { readXml } from "./xml.js";
import { leavesArchive, type ZipEntry } from "./zip.js";

const help = "export the model again as 3MF";

/** The part that a package path names (from its root, any case), or what is wrong with the path. */
export function partAt(
  entries: ReadonlyMap<string, ZipEntry>,
  path: string,
  where: string,
): ZipEntry | Fault {
  const steps: string[] = [];
  const relative = path.replace(/^\//, "");
  if (leavesArchive(relative))
    return error(
      "mesh-archive-path",
      [],
      `${where}: the path ${JSON.stringify(path)} leaves the archive`,
      help,
    );
  for (const step of relative.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "." && step !== "") steps.push(step);
  }
  const entry = entries.get(steps.join("/").toLowerCase());
  return (
    entry ??
    error("mesh-part-missing", [], `${where}: the archive holds no part ${JSON.stringify(path)}`, help)
  );
}

/** The part of a 3MF package that holds the model, as its root relationships say. */
export async function modelPart(entries: ReadonlyMap<string, ZipEntry>): Promise<ZipEntry | Fault> {
  const relations = entries.get("_rels/.rels");
  if (relations === undefined)
    return error(
      "mesh-part-missing",
      [],
      "byte 0: a zip archive, but without _rels/.rels, so no 3MF file",
      help,
    );
  let target: string | undefined;
  let line = 1;
  const fault = await readXml(relations, {
    open: (element) => {
      const type = element.attribute("Type") ?? "";
      if (element.name !== "Relationship" || !type.endsWith("/3dmanufacturing/2013/01/3dmodel"))
        return undefined;
      target ??= element.attribute("Target");
      line = element.line;
      return undefined;
    },
  });
  if (fault !== undefined) return fault;
  if (target === undefined)
    return error(
      "mesh-part-missing",
      [],
      `line ${line} of ${relations.name}: no relationship names a 3D model`,
      help,
    );
  return partAt(entries, target, `line ${line} of ${relations.name}`);
}
