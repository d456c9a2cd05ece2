import type { Vec3 } from "../../core/vector.js";
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
  const patch = litPatch(head, polygons, surfaceOf(name), faceOfSubject(site)?.at ?? [0, 0, 0]);
  if (patch === null) {
    site.place = placeOfBlock(light.origins, "into");
    report(site, "light.misses", { name: head.name, surface: surfaceOf(name) });
    return head;
  }
  return shining(head, patch);
}

/** A head with its patch; alone where the surface gives nothing back. */
const shining = (head: Source, patch: LitPatch | null): Source => ({
  ...head,
  patch: patch !== null && patch.share > 0 ? patch : undefined,
});

/** The patch that a head lights on a surface; null where it gives it no light. */
function litPatch(
  head: Source,
  polygons: readonly ScenePolygon[],
  surface: string,
  aim: Vec3,
): LitPatch | null {
  const own = polygonsOf(polygons, surface);
  const lit = litArea(head, own, "light");
  const first = own[0];
  if (lit === null || first === undefined) return null;
  return {
    surface,
    centre: lit.centre,
    normal: lit.normal,
    across: lit.across,
    along: lit.along,
    width: lit.width,
    height: lit.height,
    aim,
    share: lit.flux * (lit.front ? first.frontReflectance : first.backReflectance),
  };
}

/**
 * A head that has been moved or turned, with the patch that it lights from where it is now on the same surface; without
 * one where it no longer gives that surface light. Any other light itself.
 */
export function relit(head: Source, polygons: readonly ScenePolygon[]): Source {
  const { patch } = head;
  return patch === undefined ? head : shining(head, litPatch(head, polygons, patch.surface, patch.aim));
}
