import type { ScenePolygon } from "./types.js";

/** A flat surface with all its keys, also those without a value: so all surfaces are of one kind to the engine. */
export const sheet = (given: ScenePolygon): ScenePolygon => ({
  name: given.name,
  kind: given.kind,
  vertices: given.vertices,
  normal: given.normal,
  frontReflectance: given.frontReflectance,
  backReflectance: given.backReflectance,
  thickness: given.thickness,
  tint: given.tint,
  asSet: given.asSet,
});
