import type { PropertyRow } from "../../vocabulary/property.js";
import type { SweepTarget } from "./types.js";

/** A property of a placed lamp (by its name) or of the camera (null) is changed in the model itself, every other one in the text. */
export function targetOf(kind: string, name: string | null, property: PropertyRow): SweepTarget {
  if (kind === "light" && name !== null && property.type !== "calibration")
    return { kind: "property", block: "light", name, property: property.name };
  if (kind === "camera" && property.type !== "photo")
    return { kind: "property", block: "camera", name: null, property: property.name };
  return { kind: "text" };
}
