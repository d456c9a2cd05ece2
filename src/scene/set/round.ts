import type { Vec3 } from "../../core/vector.js";
import { blockPoint } from "../points.js";
import { metres, placeOfBlock, report, type Site } from "../site.js";
import { incomplete, nothing, type Piece, type PieceModel, sidesOf } from "./piece.js";

/** A sphere by its centre. */
export function buildSphere(site: Site, sphere: PieceModel<"sphere">): Piece {
  const name = sphere.name ?? "sphere";
  if (sphere.diameter === undefined || sphere.at === undefined) {
    return incomplete(site, sphere, "its diameter and where it is");
  }
  const centre = blockPoint(site, sphere.origins, "at", sphere.at);
  if (centre === null) return nothing;
  site.landmarks.set(name, { at: centre.at, ahead: null });
  const { front } = sidesOf(site, name, sphere.reflectance, undefined, undefined, 0.3, "30 %");
  const radius = sphere.diameter.value / 2;
  return {
    polygons: [],
    bodies: [{ kind: "sphere", of: undefined, name, centre: centre.at, radius, reflectance: front }],
    stations: [],
  };
}

/** An upright round post with rounded ends, by the middle of its foot; one that is lower than wide is a sphere, with a finding. */
export function buildCapsule(site: Site, post: PieceModel<"capsule">): Piece {
  const name = post.name ?? "capsule";
  if (post.diameter === undefined || post.height === undefined || post.at === undefined) {
    return incomplete(site, post, "its diameter, its height and where it stands");
  }
  const foot = blockPoint(site, post.origins, "at", post.at);
  if (foot === null) return nothing;
  const [x, y, z] = foot.at;
  const radius = post.diameter.value / 2;
  if (post.height.value < 2 * radius - 1e-9) {
    site.place = placeOfBlock(post.origins, "height");
    report(site, "capsule.low", { name, height: metres(post.height.value), width: metres(2 * radius) });
  }
  const height = Math.max(post.height.value, 2 * radius);
  site.landmarks.set(name, { at: [x, y, z + height / 2], ahead: null });
  const { front } = sidesOf(site, name, post.reflectance, undefined, undefined, 0.3, "30 %");
  const from: Vec3 = [x, y, z + radius];
  const to: Vec3 = [x, y, z + height - radius];
  return {
    polygons: [],
    bodies: [{ kind: "capsule", of: undefined, name, from, to, radius, reflectance: front }],
    stations: [],
  };
}
