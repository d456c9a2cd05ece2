import type { Vec3 } from "../../core/vector.js";
import type { PartModel } from "../../model/types.js";
import type { SurfaceValue } from "../../model/values.js";
import type { Frame } from "../frame.js";
import { assume, placeOfBlock, report, type Site } from "../site.js";
import type { Body, ScenePolygon, Station } from "../types.js";

/** A piece of the set of one kind. */
export type PieceModel<K extends PartModel<"set">["block"]> = Extract<PartModel<"set">, { block: K }>;

/** What one piece of the set puts into the scene. */
export interface Piece {
  readonly polygons: ScenePolygon[];
  readonly bodies: Body[];
  readonly stations: Station[];
}

/** A piece that could not be built. */
export const nothing: Piece = { polygons: [], bodies: [], stations: [] };

/** A station on a surface: a disc along its normal, the natural reading of the surface. */
export function surfaceStation(name: string, at: Vec3, facing: Vec3): Station {
  return {
    name,
    subject: null,
    at,
    facing,
    receptor: "disc",
    looks: "along its surface",
    natural: true,
    before: undefined,
  };
}

/** Reports that a piece lacks something it cannot be built without. */
export function incomplete(site: Site, piece: PartModel<"set">, what: string): Piece {
  site.place = placeOfBlock(piece.origins);
  report(site, "scene.incomplete", { name: piece.name ?? piece.block, what });
  return nothing;
}

/** The reflectances of the two sides of a flat thing. */
export interface Sides {
  readonly front: number;
  readonly back: number;
}

/** Front and back from what the recipe says; a default is listed. */
export function sidesOf(
  site: Site,
  name: string,
  whole: SurfaceValue | undefined,
  front: SurfaceValue | undefined,
  back: SurfaceValue | undefined,
  fallback: number,
  words: string,
): Sides {
  const first = front ?? whole;
  if (first === undefined) assume(site, `surface of ${name}`, words, true);
  const value = first?.reflectance.value ?? fallback;
  return { front: value, back: back?.reflectance.value ?? value };
}

/** The level or tilted place of a thing: a point moved along the width and height of its frame. */
export function alongFrame(centre: Vec3, { across, along }: Frame, a: number, b: number): Vec3 {
  return [
    centre[0] + a * across[0] + b * along[0],
    centre[1] + a * across[1] + b * along[1],
    centre[2] + a * across[2] + b * along[2],
  ];
}
