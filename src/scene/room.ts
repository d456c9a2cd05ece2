import type { Vec3 } from "../core/vector.js";
import type { PartModel, RoomModel } from "../model/types.js";
import { blockPoint } from "./points.js";
import { roomSize } from "./room-size.js";
import { assume, placeOfBlock, report, type Site } from "./site.js";
import type { ScenePolygon, SceneRoom } from "./types.js";
import { cutHoles, type WallArea } from "./wall-holes.js";

/** Default reflectances of a room's surfaces (lighting handbooks' usual 80 / 50 / 20). */
export const roomDefaults = { ceiling: 0.8, walls: 0.5, floor: 0.2 } as const;

type Opening = Extract<PartModel<"room">, { block: "opening" }>;
type Side = "left" | "right" | "back" | "front";

/** The four walls: inward normal, and how a place in the wall's plane (along, height) becomes a place in the room. */
interface WallPlane {
  readonly side: Side;
  readonly normal: Vec3;
  readonly from: number;
  readonly to: number;
  /** The axis that runs along the wall. */
  readonly axis: 0 | 1;
  readonly put: (along: number, z: number) => Vec3;
  /** True where corners counted up the axis run clockwise for one inside the room. */
  readonly turned: boolean;
}

function wallPlanes(room: SceneRoom): readonly WallPlane[] {
  const { left, right, front, back } = room;
  return [
    {
      side: "left",
      normal: [1, 0, 0],
      from: front,
      to: back,
      axis: 1,
      put: (y, z) => [left, y, z],
      turned: false,
    },
    {
      side: "right",
      normal: [-1, 0, 0],
      from: front,
      to: back,
      axis: 1,
      put: (y, z) => [right, y, z],
      turned: true,
    },
    {
      side: "back",
      normal: [0, -1, 0],
      from: left,
      to: right,
      axis: 0,
      put: (x, z) => [x, back, z],
      turned: false,
    },
    {
      side: "front",
      normal: [0, 1, 0],
      from: left,
      to: right,
      axis: 0,
      put: (x, z) => [x, front, z],
      turned: true,
    },
  ];
}

/** The hole that an opening makes in its wall; null, with a finding, where it does not fit. */
function holeOf(site: Site, opening: Opening, wall: WallPlane, height: number): WallArea | null {
  if (opening.at === undefined || opening.size === undefined) {
    site.place = placeOfBlock(opening.origins);
    report(site, "scene.incomplete", { name: opening.name ?? "opening", what: "where it is and how large" });
    return null;
  }
  const at = blockPoint(site, opening.origins, "at", opening.at);
  if (at === null) return null;
  const half = opening.size.width.value / 2;
  const along = at.at[wall.axis];
  const low = at.at[2];
  const hole: WallArea = {
    left: along - half,
    right: along + half,
    low,
    high: low + opening.size.height.value,
  };
  const slack = 1e-9;
  if (
    hole.left < wall.from - slack ||
    hole.right > wall.to + slack ||
    hole.low < -slack ||
    hole.high > height + slack
  ) {
    site.place = placeOfBlock(opening.origins, "at");
    report(site, "opening.outside", { name: opening.name ?? "opening", wall: wall.side });
    return null;
  }
  const centre = wall.put(along, (hole.low + hole.high) / 2);
  if (opening.name !== null) site.landmarks.set(opening.name, { at: centre, ahead: null });
  return hole;
}

/** Where the tint of a part of the room is kept: by wall, else by kind. */
function tintKey(part: PartModel<"room">): string {
  return part.block === "wall" ? (part.name ?? "wall") : part.block;
}

/** Whether a surface is set to the picture: a wall by itself, else by its kind. */
function setsOf(model: RoomModel): (...keys: readonly string[]) => Pick<ScenePolygon, "asSet"> {
  const said = new Map<string, string>();
  for (const part of model.parts) {
    if (part.block !== "opening" && part.belongs_to !== undefined) said.set(tintKey(part), part.belongs_to);
  }
  return (...keys) => {
    const first = keys.map((key) => said.get(key)).find((word) => word !== undefined);
    return first === "set" ? { asSet: true } : {};
  };
}

function tinted(tint: string | undefined): Pick<ScenePolygon, "tint"> {
  return tint === undefined ? {} : { tint };
}

/** Measures the room, without its surfaces; null where there is none. */
export function measureRoom(site: Site): SceneRoom | null {
  if (site.recipe.room === null) {
    assume(site, "surroundings", "open and black, since there is no room", true);
    return null;
  }
  return roomSize(site, site.recipe.room);
}

/**
 * The surfaces of the room: floor, ceiling and the walls left, right, back and front, each facing inwards and black
 * behind. A wall with openings comes as several rectangles round them; an opening gives no light back.
 */
export function buildRoom(site: Site, model: RoomModel, room: SceneRoom, polygons: ScenePolygon[]): void {
  const { left, right, front, back, height } = room;
  let ceiling: number | undefined;
  let floor: number | undefined;
  let walls: number | undefined;
  const own = new Map<string, number>();
  const tints = new Map<string, string>();
  const openings: Opening[] = [];
  const asSet = setsOf(model);
  for (const part of model.parts) {
    if (part.block !== "opening" && part.tint !== undefined) tints.set(tintKey(part), part.tint);
    if (part.block === "ceiling") ceiling = part.reflectance?.value;
    else if (part.block === "floor") floor = part.reflectance?.value;
    else if (part.block === "walls") walls = part.reflectance?.value;
    else if (part.block === "opening") openings.push(part);
    else if (part.block === "wall" && part.name !== null && part.reflectance !== undefined) {
      own.set(part.name, part.reflectance.value);
    }
  }
  if (ceiling === undefined) assume(site, "ceiling", "80 %", true);
  if (walls === undefined && own.size < 4) assume(site, "walls", "50 %", true);
  if (floor === undefined) assume(site, "floor", "20 %", true);
  polygons.push(
    {
      name: "floor",
      kind: "floor",
      vertices: [
        [left, front, 0],
        [right, front, 0],
        [right, back, 0],
        [left, back, 0],
      ],
      normal: [0, 0, 1],
      frontReflectance: floor ?? roomDefaults.floor,
      backReflectance: 0,
      ...tinted(tints.get("floor")),
      ...asSet("floor"),
    },
    {
      name: "ceiling",
      kind: "ceiling",
      vertices: [
        [left, back, height],
        [right, back, height],
        [right, front, height],
        [left, front, height],
      ],
      normal: [0, 0, -1],
      frontReflectance: ceiling ?? roomDefaults.ceiling,
      backReflectance: 0,
      ...tinted(tints.get("ceiling")),
      ...asSet("ceiling"),
    },
  );
  for (const wall of wallPlanes(room)) {
    const whole: WallArea = { left: wall.from, right: wall.to, low: 0, high: height };
    const holes: WallArea[] = [];
    for (const opening of openings) {
      if (opening.wall !== wall.side) continue;
      const hole = holeOf(site, opening, wall, height);
      if (hole !== null) holes.push(hole);
    }
    const parts = holes.length === 0 ? [whole] : cutHoles(whole, holes);
    const reflectance = own.get(wall.side) ?? walls ?? roomDefaults.walls;
    for (let i = 0; i < parts.length; i++) {
      const part = parts[i] as WallArea;
      const [a, b] = wall.turned ? [part.right, part.left] : [part.left, part.right];
      polygons.push({
        name: i === 0 ? `wall ${wall.side}` : `wall ${wall.side}.${i}`,
        kind: "wall",
        vertices: [
          wall.put(a, part.low),
          wall.put(b, part.low),
          wall.put(b, part.high),
          wall.put(a, part.high),
        ],
        normal: wall.normal,
        frontReflectance: reflectance,
        backReflectance: 0,
        ...tinted(tints.get(wall.side) ?? tints.get("walls")),
        ...asSet(wall.side, "walls"),
      });
    }
  }
}
