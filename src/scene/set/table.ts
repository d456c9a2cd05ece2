import type { Vec3 } from "../../core/vector.js";
import { blockPoint } from "../points.js";
import { sheet } from "../sheet.js";
import { assume, type Site } from "../site.js";
import { incomplete, nothing, type Piece, type PieceModel, sidesOf, surfaceStation } from "./piece.js";

/** A table top: a level rectangle, its width along x and its depth along y. Its station is its middle, looking up. */
export function buildTable(site: Site, table: PieceModel<"table">): Piece {
  const name = table.name ?? "table";
  if (table.size === undefined || table.at === undefined) {
    return incomplete(site, table, "its size and where it stands");
  }
  const at = blockPoint(site, table.origins, "at", table.at);
  if (at === null) return nothing;
  if (table.height === undefined) assume(site, `height of ${name}`, "75 cm", false);
  const [x, y, z] = [at.at[0], at.at[1], at.at[2] + (table.height?.value ?? 0.75)];
  const a = table.size.width.value / 2;
  const b = table.size.height.value / 2;
  const centre: Vec3 = [x, y, z];
  site.landmarks.set(name, { at: centre, ahead: null });
  const { front } = sidesOf(site, name, table.reflectance, undefined, undefined, 0.5, "50 %");
  return {
    polygons: [
      sheet({
        name,
        kind: "table",
        vertices: [
          [x - a, y - b, z],
          [x + a, y - b, z],
          [x + a, y + b, z],
          [x - a, y + b, z],
        ],
        normal: [0, 0, 1],
        frontReflectance: front,
        backReflectance: front,
      }),
    ],
    bodies: [],
    stations: [surfaceStation(name, centre, [0, 0, 1])],
  };
}
