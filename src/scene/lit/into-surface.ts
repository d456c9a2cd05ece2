import type { LightModel } from "../../model/types.js";
import { faceOfSubject, placeOfBlock, report, type Site } from "../site.js";
import type { LitPatch, ScenePolygon, Source } from "../types.js";
import { litArea } from "./lit-area.js";
import { polygonsOf, surfaceOf } from "./surfaces.js";

/**
 * A head that shines into a surface, with the lit patch that is seen as the light. The head itself and all that the
 * surface does stay what they are: the patch carries size and place, and no light is added.
 */
export function intoSurface(
  site: Site,
  light: LightModel,
  head: Source,
  polygons: readonly ScenePolygon[],
): Source {
  const name = light.into;
  if (name === undefined) return head;
  const surface = polygonsOf(polygons, name);
  const lit = litArea(head, surface, "light");
  const first = surface[0];
  if (lit === null || first === undefined) {
    site.place = placeOfBlock(light.origins, "into");
    report(site, "light.misses", { name: head.name, surface: surfaceOf(name) });
    return head;
  }
  const patch: LitPatch = {
    surface: surfaceOf(name),
    centre: lit.centre,
    normal: lit.normal,
    across: lit.across,
    along: lit.along,
    width: lit.width,
    height: lit.height,
    aim: faceOfSubject(site)?.at ?? [0, 0, 0],
    share: lit.flux * (lit.front ? first.frontReflectance : first.backReflectance),
  };
  return { ...head, patch };
}
