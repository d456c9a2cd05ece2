import { exp2 } from "../../core/exp2.js";
import { rectangleCorners, uprightFrame } from "../frame.js";
import { clothLoss } from "../lit/cloth.js";
import { blockDirection, blockPoint } from "../points.js";
import { sheet } from "../sheet.js";
import { assume, type Site } from "../site.js";
import { frontIsSeen } from "./leaf.js";
import {
  alongFrame,
  incomplete,
  nothing,
  type Piece,
  type PieceModel,
  type Sides,
  sidesOf,
} from "./piece.js";

/** The reflectance of a cloth: with what goes through it is never more than the light that comes. */
function clothSides(site: Site, board: PieceModel<"scrim">, name: string): Sides {
  const through = exp2(-(board.loses?.value ?? clothLoss));
  if (board.loses === undefined) assume(site, `loss of ${name}`, "1 stop", true);
  const usual = Math.min(0.4, 0.8 * (1 - through));
  const words = `${Math.round(100 * usual)} %`;
  const sides = sidesOf(site, name, board.reflectance, undefined, undefined, usual, words);
  const most = 1 - through;
  if (sides.front <= most) return sides;
  const rest = Math.round(100 * most);
  assume(site, `reflectance of ${name}`, `${rest} %, since ${100 - rest} % go through`, true);
  return { front: most, back: most };
}

/** The reflectances of a free flat rectangle by its kind. */
function boardSides(site: Site, board: PieceModel<"card" | "panel" | "scrim">, name: string): Sides {
  if (board.block === "scrim") return clothSides(site, board, name);
  const [fallback, words] = board.block === "card" ? [0.85, "white board, 85 %"] : [0.3, "30 %"];
  return sidesOf(site, name, board.reflectance, board.front, board.back, fallback as number, words as string);
}

/**
 * A card, panel or scrim: a free rectangle round its centre, which may tilt. Its places are its centre, the centres of
 * its left and right third and the middle of its top edge.
 */
export function buildBoard(site: Site, board: PieceModel<"card" | "panel" | "scrim">): Piece {
  const name = board.name ?? board.block;
  if (board.size === undefined || board.at === undefined) {
    return incomplete(site, board, "its size and where it is");
  }
  const centre = blockPoint(site, board.origins, "at", board.at);
  if (centre === null) return nothing;
  const normal =
    (board.faces === undefined
      ? null
      : blockDirection(site, board.origins, "faces", name, board.faces, centre.at, false)) ??
    ([0, -1, 0] as const);
  const frame = uprightFrame(normal);
  const width = board.size.width.value;
  const height = board.size.height.value;
  const third = ((frontIsSeen(normal, centre.at) ? 1 : -1) * width) / 3;
  const put = (part: string, side: number, up: number): void => {
    site.landmarks.set(name + part, { at: alongFrame(centre.at, frame, side, up), ahead: null });
  };
  put("", 0, 0);
  put(".left", -third, 0);
  put(".right", third, 0);
  put(".top", 0, height / 2);
  const sides = boardSides(site, board, name);
  return {
    polygons: [
      sheet({
        name,
        kind: board.block,
        vertices: rectangleCorners(centre.at, frame, width, height),
        normal,
        frontReflectance: sides.front,
        backReflectance: sides.back,
      }),
    ],
    bodies: [],
    stations: [],
  };
}
