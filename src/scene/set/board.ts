import { rectangleCorners, uprightFrame } from "../frame.js";
import { blockDirection, blockPoint } from "../points.js";
import type { Site } from "../site.js";
import { incomplete, nothing, type Piece, type PieceModel, type Sides, sidesOf } from "./piece.js";

/** The reflectances of a free flat rectangle by its kind. */
function boardSides(site: Site, board: PieceModel<"card" | "panel" | "scrim">, name: string): Sides {
  if (board.block === "scrim") {
    return sidesOf(site, name, board.reflectance, undefined, undefined, 0.4, "40 %");
  }
  const [fallback, words] = board.block === "card" ? [0.85, "white board, 85 %"] : [0.3, "30 %"];
  return sidesOf(site, name, board.reflectance, board.front, board.back, fallback as number, words as string);
}

/** A card, panel or scrim: a free rectangle round its centre, which may tilt. */
export function buildBoard(site: Site, board: PieceModel<"card" | "panel" | "scrim">): Piece {
  const name = board.name ?? board.block;
  if (board.size === undefined || board.at === undefined) {
    return incomplete(site, board, "its size and where it is");
  }
  const centre = blockPoint(site, board.origins, "at", board.at);
  if (centre === null) return nothing;
  site.landmarks.set(name, { at: centre.at, ahead: null });
  const normal =
    (board.faces === undefined
      ? null
      : blockDirection(site, board.origins, "faces", name, board.faces, centre.at, false)) ??
    ([0, -1, 0] as const);
  const sides = boardSides(site, board, name);
  return {
    polygons: [
      {
        name,
        kind: board.block,
        vertices: rectangleCorners(
          centre.at,
          uprightFrame(normal),
          board.size.width.value,
          board.size.height.value,
        ),
        normal,
        frontReflectance: sides.front,
        backReflectance: sides.back,
      },
    ],
    bodies: [],
    stations: [],
  };
}
