import { error, type Fault } from "../../fault.js";
import { type MeshUnit, threeMfUnits } from "../units.js";
import { decimal, identity, readTransform, type Transform } from "./transform.js";
import { readXml, type XmlElement } from "./xml.js";
import type { ZipEntry } from "./zip.js";

/** An object placed by a component or a build item; `key` is its part and id. */
export interface Placement {
  readonly key: string;
  readonly transform: Transform;
  /** Its place, for messages. */
  readonly where: string;
}

/** An object of a 3MF model: a mesh, or other objects put together. */
export interface ModelObject {
  readonly type: string;
  vertices: Float64Array;
  triangles: Int32Array;
  vertexCount: number;
  triangleCount: number;
  readonly components: Placement[];
}

/** One model part of a 3MF package. */
export interface Model {
  unit: MeshUnit;
  readonly objects: Map<string, ModelObject>;
  readonly items: Placement[];
  /** Other parts that components or items refer to (production extension), with the place that does. */
  readonly parts: Map<string, string>;
}

const coreEnd = "/3dmanufacturing/core/2015/02";
const productionEnd = "/3dmanufacturing/production/2015/06";
// Extensions that leave the shape as the core says.
const harmless = [productionEnd, "/3dmanufacturing/material/2015/02"];
const help = "export the model again as plain 3MF or as STL";

/** The key of an object: its part without leading slash, in lower case, and its id. */
const keyOf = (part: string, id: string): string => `${part.replace(/^\//, "").toLowerCase()}#${id}`;

const newObject = (type: string): ModelObject => ({
  type,
  vertices: new Float64Array(96),
  triangles: new Int32Array(96),
  vertexCount: 0,
  triangleCount: 0,
  components: [],
});

function addVertex(object: ModelObject, element: XmlElement): string | undefined {
  const at = 3 * object.vertexCount++;
  if (at === object.vertices.length) {
    const room = new Float64Array(2 * at);
    room.set(object.vertices);
    object.vertices = room;
  }
  for (const [axis, name] of ["x", "y", "z"].entries()) {
    const text = element.attribute(name);
    const value = decimal(text);
    if (Number.isNaN(value))
      return `${name} of a vertex is ${JSON.stringify(text ?? "missing")}, no finite number`;
    object.vertices[at + axis] = value;
  }
  return undefined;
}

function addTriangle(object: ModelObject, element: XmlElement): string | undefined {
  const at = 3 * object.triangleCount++;
  if (at === object.triangles.length) {
    const room = new Int32Array(2 * at);
    room.set(object.triangles);
    object.triangles = room;
  }
  for (const [corner, name] of ["v1", "v2", "v3"].entries()) {
    const text = element.attribute(name)?.trim() ?? "";
    const index = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
    if (!(index < object.vertexCount))
      return `${name} of a triangle is ${JSON.stringify(text.slice(0, 24))}; the mesh has ${object.vertexCount} vertices, counted from 0`;
    object.triangles[at + corner] = index;
  }
  return undefined;
}

/** Reads one model part. Elements of other namespaces are passed over. */
export async function readModel(entry: ZipEntry): Promise<Model | Fault> {
  const model: Model = { unit: "mm", objects: new Map(), items: [], parts: new Map() };
  let object: ModelObject | undefined;
  let root = true;
  const at = (line: number): string => `line ${line} of ${entry.name}`;
  const fault = (code: string, line: number, message: string): Fault =>
    error(code, [], `${at(line)}: ${message}`, help);

  const begin = (element: XmlElement): Fault | undefined => {
    root = false;
    if (element.name !== "model" || !element.namespace.endsWith(coreEnd))
      return fault("mesh-unknown", element.line, `"${element.name}" is not the model element of 3MF core`);
    for (const prefix of (element.attribute("requiredextensions") ?? "").split(/\s+/).filter(Boolean)) {
      const namespace = element.namespaceOf(prefix);
      if (!harmless.some((end) => namespace.endsWith(end)))
        return fault("mesh-extension", element.line, `needs the extension "${prefix}", which is not read`);
    }
    const unit = element.attribute("unit") ?? "millimeter";
    const known = threeMfUnits[unit];
    if (known === undefined)
      return fault(
        "mesh-unit",
        element.line,
        `unit "${unit}"; 3MF knows ${Object.keys(threeMfUnits).join(", ")}`,
      );
    model.unit = known;
    return undefined;
  };

  const place = (element: XmlElement, into: Placement[]): Fault | undefined => {
    const path = element.attribute("path", productionEnd);
    const text = element.attribute("transform");
    const transform = text === undefined ? identity : readTransform(text);
    if (transform === undefined)
      return fault("mesh-syntax", element.line, "a transform needs twelve numbers");
    if (path !== undefined) model.parts.set(path, at(element.line));
    into.push({
      key: keyOf(path ?? entry.name, element.attribute("objectid") ?? ""),
      transform,
      where: at(element.line),
    });
    return undefined;
  };

  const open = (element: XmlElement): Fault | undefined => {
    if (root) return begin(element);
    if (!element.namespace.endsWith(coreEnd)) return undefined;
    let wrong: string | undefined;
    switch (element.name) {
      case "object": {
        const key = keyOf(entry.name, element.attribute("id") ?? "");
        if (model.objects.has(key)) return fault("mesh-syntax", element.line, "an object id is used twice");
        object = newObject(element.attribute("type") ?? "model");
        model.objects.set(key, object);
        return undefined;
      }
      case "vertex":
        wrong = object === undefined ? "a vertex outside an object" : addVertex(object, element);
        break;
      case "triangle":
        wrong = object === undefined ? "a triangle outside an object" : addTriangle(object, element);
        break;
      case "component":
        if (object !== undefined) return place(element, object.components);
        wrong = "a component outside an object";
        break;
      case "item":
        return place(element, model.items);
    }
    return wrong === undefined ? undefined : fault("mesh-syntax", element.line, wrong);
  };
  const close = (name: string): undefined => {
    if (name === "object") object = undefined;
  };
  return (await readXml(entry, { open, close })) ?? model;
}
