import type { Vec3 } from "../../core/vector.js";
import { uprightFrame } from "../frame.js";
import { blockDirection, blockPoint } from "../points.js";
import { sheet } from "../sheet.js";
import type { Site } from "../site.js";
import { alongFrame, incomplete, nothing, type Piece, type PieceModel, sidesOf } from "./piece.js";

/** Corners of the polygon that stands for a disc. */
const corners = 24;
/** Radius of the corners of a regular polygon with the area of a unit circle. */
const stretch = /* @__PURE__ */ Math.sqrt(Math.PI / ((corners / 2) * Math.sin((2 * Math.PI) / corners)));

/** A flat round disc: a regular polygon of 24 corners with the same area. */
export function buildDisc(site: Site, disc: PieceModel<"disc">): Piece {
  const name = disc.name ?? "disc";
  if (disc.diameter === undefined || disc.at === undefined) {
    return incomplete(site, disc, "its diameter and where it is");
  }
  const centre = blockPoint(site, disc.origins, "at", disc.at);
  if (centre === null) return nothing;
  site.landmarks.set(name, { at: centre.at, ahead: null });
  const normal =
    (disc.faces === undefined
      ? null
      : blockDirection(site, disc.origins, "faces", name, disc.faces, centre.at, false)) ??
    ([0, -1, 0] as const);
  const frame = uprightFrame(normal);
  const radius = (disc.diameter.value / 2) * stretch;
  const vertices: Vec3[] = [];
  for (let i = 0; i < corners; i++) {
    const angle = ((i + 0.5) * 2 * Math.PI) / corners;
    vertices.push(alongFrame(centre.at, frame, radius * Math.cos(angle), radius * Math.sin(angle)));
  }
  const { front } = sidesOf(site, name, disc.reflectance, undefined, undefined, 0.3, "30 %");
  return {
    polygons: [
      sheet({ name, kind: "disc", vertices, normal, frontReflectance: front, backReflectance: front }),
    ],
    bodies: [],
    stations: [],
  };
}
