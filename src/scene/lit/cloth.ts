import { exp2 } from "../../core/exp2.js";
import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, subtract } from "../../math/vector.js";
import type { LightModel } from "../../model/types.js";
import { emittingArea, rectangleSource } from "../../physics/source-shape.js";
import { faceOfSubject, placeOfBlock, report, type Site } from "../site.js";
import type { ScenePolygon, Source } from "../types.js";
import { litArea } from "./lit-area.js";
import { polygonsOf } from "./surfaces.js";

/** Loss of a cloth that does not say its own, stops. */
export const clothLoss = 1;

/** How far before the cloth its light is taken to start, m, so that the cloth does not hide it. */
const BEFORE = 1e-3;

/**
 * A head behind a scrim: the lit cloth as a light of its own, under the light's name, and the bare head under
 * `NAME spill`, for which the cloth is an opaque sheet. The cloth shines evenly (Lambertian) from the rectangle with
 * the same light and spread as what falls on it, away from the head, and gives on what is left after its loss. A head
 * that does not reach the cloth stays what it is, and a finding says so.
 */
export function throughCloth(
  site: Site,
  light: LightModel,
  head: Source,
  polygons: readonly ScenePolygon[],
): readonly Source[] {
  const name = light.through;
  if (name === undefined) return [head];
  const cloth = polygonsOf(polygons, name).filter((polygon) => polygon.kind === "scrim");
  const lit = litArea(head, cloth, "surface");
  if (lit === null) {
    site.place = placeOfBlock(light.origins, "through");
    report(site, "light.misses", { name: head.name, surface: name });
    return [head];
  }
  const scrim = site.recipe.set?.parts.find((part) => part.block === "scrim" && part.name === name);
  const loses = scrim?.block === "scrim" ? (scrim.loses?.value ?? clothLoss) : clothLoss;
  const share = lit.flux * exp2(-loses);
  const spill = `${head.name} spill`;
  const away = [-lit.normal[0], -lit.normal[1], -lit.normal[2]] as const;
  const centre = addScaled(lit.centre, away, BEFORE);
  // Seen from the other side the width runs the other way, so that the axis stays across x along.
  const across = [-lit.across[0], -lit.across[1], -lit.across[2]] as const;
  const shape = { kind: "rectangle", width: lit.width, height: lit.height } as const;
  const patch: Source = {
    ...head,
    shape,
    centre,
    axis: away,
    across,
    along: lit.along,
    beam: { kind: "lambertian" },
    area: emittingArea(rectangleSource(centre, across, lit.along, lit.width, lit.height)),
    energy: head.energy * share,
    fullEnergy: head.fullEnergy * share,
    known: `${head.known}, through ${name}`,
    aim: aimOf(site, head, centre, away),
    stand: null,
    headHeight: lit.fullHeight,
    hotModellingLamp: false,
    cloth: {
      scrim: name,
      spill,
      width: lit.fullWidth,
      height: lit.fullHeight,
      caught: lit.flux,
      loses,
    },
  };
  return [patch, { ...head, name: spill, role: null, spillOf: head.name }];
}

/**
 * What the light of a cloth is aimed at: the aim of its head where that lies beyond the cloth. A head that is only
 * aimed at the cloth leaves it open: then the first subject's face where it lies there, else a metre straight on.
 */
function aimOf(site: Site, head: Source, centre: Vec3, away: Vec3): Vec3 {
  const face = faceOfSubject(site)?.at ?? null;
  const beyond = [head.aim, face].find((at) => at !== null && dot(subtract(at, centre), away) > 0.01);
  return beyond ?? addScaled(centre, away, 1);
}
