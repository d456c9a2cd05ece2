import type { Vec3 } from "../../core/vector.js";
import { rectangleCorners, uprightFrame } from "../frame.js";
import { blockDirection, blockPoint } from "../points.js";
import { sheet } from "../sheet.js";
import type { Site } from "../site.js";
import type { ScenePolygon } from "../types.js";
import { incomplete, nothing, type Piece, type PieceModel, sidesOf } from "./piece.js";

/** An upright box: six rectangles that face outwards, black inside. Its place is its middle. */
export function buildBox(site: Site, box: PieceModel<"box">): Piece {
  const name = box.name ?? "box";
  if (box.size === undefined || box.at === undefined) {
    return incomplete(site, box, "its size and where it stands");
  }
  const foot = blockPoint(site, box.origins, "at", box.at);
  if (foot === null) return nothing;
  const width = box.size.width.value;
  const depth = box.size.depth.value;
  const height = box.size.height.value;
  const middle: Vec3 = [foot.at[0], foot.at[1], foot.at[2] + height / 2];
  site.landmarks.set(name, { at: middle, ahead: null });
  const front =
    (box.faces === undefined
      ? null
      : blockDirection(site, box.origins, "faces", name, box.faces, foot.at, true)) ?? ([0, -1, 0] as const);
  const { front: share } = sidesOf(site, name, box.reflectance, undefined, undefined, 0.3, "30 %");
  const side: Vec3 = [-front[1], front[0], 0];
  const polygons: ScenePolygon[] = [];
  const face = (normal: Vec3, out: number, across: number, along: number): void => {
    const centre: Vec3 = [
      middle[0] + normal[0] * out,
      middle[1] + normal[1] * out,
      middle[2] + normal[2] * out,
    ];
    // A level face keeps the box's own direction, not the room's.
    const frame =
      normal[2] === 0
        ? uprightFrame(normal)
        : { across: side, along: [-front[0] * normal[2], -front[1] * normal[2], 0] as const };
    polygons.push(
      sheet({
        name: polygons.length === 0 ? name : `${name}.${polygons.length}`,
        kind: "box",
        vertices: rectangleCorners(centre, frame, across, along),
        normal,
        frontReflectance: share,
        backReflectance: 0,
      }),
    );
  };
  face(front, depth / 2, width, height);
  face(side, width / 2, depth, height);
  face([-front[0], -front[1], 0], depth / 2, width, height);
  face([-side[0], -side[1], 0], width / 2, depth, height);
  face([0, 0, 1], height / 2, width, depth);
  face([0, 0, -1], height / 2, width, depth);
  return { polygons, bodies: [], stations: [] };
}
