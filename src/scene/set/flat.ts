import type { Vec3 } from "../../core/vector.js";
import { rectangleCorners, uprightFrame } from "../frame.js";
import { blockDirection, blockPoint } from "../points.js";
import { sheet } from "../sheet.js";
import { ensure, placeOfBlock, report, type Site } from "../site.js";
import { hingedLeaf, type Leaf, leafAt, looksAtMark, onLeaf } from "./leaf.js";
import { incomplete, type Piece, type PieceModel, sidesOf, surfaceStation } from "./piece.js";

/** The leaf that a flat is, placed by itself or by its hinge; null, with a finding, where it cannot stand. */
function placeLeaf(
  site: Site,
  flat: PieceModel<"flat">,
  name: string,
  leaves: Map<string, Leaf>,
): Leaf | null {
  const width = flat.size?.width.value ?? 0;
  const height = flat.size?.height.value ?? 0;
  if (flat.hinge !== undefined) {
    const { of, edge } = flat.hinge;
    const owner = site.owners.get(of);
    site.place = placeOfBlock(flat.origins, "hinge");
    if (owner !== undefined) ensure(site, owner);
    const other = leaves.get(of);
    if (other !== undefined) {
      const opening = ((flat.opening?.value ?? 90) * Math.PI) / 180;
      return hingedLeaf(other, edge, opening, width, height);
    }
    // A flat that could not be built, or that hangs on this one, was told of already.
    const isFlat = site.recipe.set?.parts.some(
      (part) => part.block === "flat" && (part.name ?? "flat") === of,
    );
    if (isFlat !== true) report(site, "flat.hinge", { name, other: of });
    return null;
  }
  if (flat.opening !== undefined) {
    site.place = placeOfBlock(flat.origins, "opening");
    report(site, "flat.opening", { name });
  }
  if (flat.at === undefined) {
    incomplete(site, flat, "where it stands");
    return null;
  }
  const foot = blockPoint(site, flat.origins, "at", flat.at);
  if (foot === null) return null;
  const front =
    flat.faces === undefined
      ? null
      : blockDirection(site, flat.origins, "faces", name, flat.faces, foot.at, true);
  return leafAt(foot.at, front ?? [0, -1, 0], width, height);
}

/**
 * A flat: one two-sided polygon, a sheet at its front face, with the front's and the back's reflectance. Its places
 * are its centre (its name), the centres of the left and right third (`back.left`, `back.right`) and the middle of its
 * top edge (`back.top`), as the camera sees them; its stations lie on the side that looks towards the mark.
 */
export function buildFlat(site: Site, flat: PieceModel<"flat">, leaves: Map<string, Leaf>): Piece {
  const name = flat.name ?? "flat";
  if (flat.size === undefined) return incomplete(site, flat, "its size");
  const leaf = placeLeaf(site, flat, name, leaves);
  if (leaf === null) return { polygons: [], bodies: [], stations: [] };
  leaves.set(name, leaf);
  const middle = leaf.height / 2;
  const third = leaf.width / 3;
  const centre = onLeaf(leaf, 0, middle);
  const left = onLeaf(leaf, -third, middle);
  const right = onLeaf(leaf, third, middle);
  site.landmarks.set(name, { at: centre, ahead: null });
  site.landmarks.set(`${name}.left`, { at: left, ahead: null });
  site.landmarks.set(`${name}.right`, { at: right, ahead: null });
  site.landmarks.set(`${name}.top`, { at: onLeaf(leaf, 0, leaf.height), ahead: null });
  const sides = sidesOf(site, name, flat.reflectance, flat.front, flat.back, 0.85, "white board, 85 %");
  const { front } = leaf;
  const lit: Vec3 = looksAtMark(front, leaf.foot) ? front : [-front[0], -front[1], 0];
  return {
    polygons: [
      sheet({
        name,
        kind: "flat",
        vertices: rectangleCorners(centre, uprightFrame(front), leaf.width, leaf.height),
        normal: front,
        frontReflectance: sides.front,
        backReflectance: sides.back,
        thickness: flat.thickness?.value ?? 0.02,
      }),
    ],
    bodies: [],
    stations: [
      surfaceStation(`${name}.left`, left, lit),
      surfaceStation(name, centre, lit),
      surfaceStation(`${name}.right`, right, lit),
    ],
  };
}
