import type { ScenePolygon } from "./types.js";

/** A flat surface with all its keys, also those without a value: so all surfaces are of one kind to the engine. */
export const sheet = ({
  name,
  kind,
  vertices,
  normal,
  frontReflectance,
  backReflectance,
  thickness,
  tint,
  asSet,
}: ScenePolygon): ScenePolygon => ({
  name,
  kind,
  vertices,
  normal,
  frontReflectance,
  backReflectance,
  thickness,
  tint,
  asSet,
});
