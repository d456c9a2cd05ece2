import type { Vec3 } from "../core/vector.js";
import type { PartModel, RoomModel } from "../model/types.js";
import { blockPoint } from "./points.js";
import { roomSize } from "./room-size.js";
import { sheet } from "./sheet.js";
import { assume, placeOfBlock, report, type Site } from "./site.js";
import type { ScenePolygon, SceneRoom } from "./types.js";
import { cutHoles, type WallArea } from "./wall-holes.js";

/** Default reflectances of a room's surfaces (lighting handbooks' usual 80 / 50 / 20). */
export const roomDefaults = { ceiling: 0.8, walls: 0.5, floor: 0.2 } as const;

type Opening = Extract<PartModel<"room">, { block: "opening" }>;
type Side = "left" | "right" | "back" | "front";

/** A wall: its inward normal, and where it runs. */
interface WallPlane {
  readonly side: Side;
  readonly normal: Vec3;
  readonly from: number;
  readonly to: number;
  /** The axis that runs along the wall. */
  readonly axis: 0 | 1;
  /** Where the wall stands on the other level axis. */
  readonly at: number;
  /** True where corners counted up the axis run clockwise for one inside the room. */
  readonly turned: boolean;
}

function wallPlanes({ left, right, front, back }: SceneRoom): readonly WallPlane[] {
  return [
    { side: "left", normal: [1, 0, 0], from: front, to: back, axis: 1, at: left, turned: false },
    { side: "right", normal: [-1, 0, 0], from: front, to: back, axis: 1, at: right, turned: true },
    { side: "back", normal: [0, -1, 0], from: left, to: right, axis: 0, at: back, turned: false },
    { side: "front", normal: [0, 1, 0], from: left, to: right, axis: 0, at: front, turned: true },
  ];
}

/** A place in the plane of a wall as a place in the room. */
const onWall = ({ axis, at }: WallPlane, along: number, z: number): Vec3 =>
  axis === 0 ? [along, at, z] : [at, along, z];

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
  const centre = onWall(wall, along, (hole.low + hole.high) / 2);
  if (opening.name !== null) site.landmarks.set(opening.name, { at: centre, ahead: null });
  return hole;
}

/** What a recipe says of the surfaces of its room; of a wall by its side, else by the kind of surface. */
interface Said {
  readonly reflectances: Map<string, number>;
  readonly tints: Map<string, string>;
  /** Whether they count as set or as surroundings. */
  readonly belongings: Map<string, string>;
  readonly openings: Opening[];
}

function saidOf(model: RoomModel): Said {
  const said: Said = { reflectances: new Map(), tints: new Map(), belongings: new Map(), openings: [] };
  for (const part of model.parts) {
    if (part.block === "opening") {
      said.openings.push(part);
      continue;
    }
    const key = part.block === "wall" ? (part.name ?? "wall") : part.block;
    if (part.reflectance !== undefined) said.reflectances.set(key, part.reflectance.value);
    if (part.tint !== undefined) said.tints.set(key, part.tint);
    if (part.belongs_to !== undefined) said.belongings.set(key, part.belongs_to);
  }
  return said;
}

/** A surface of the room, with what is said of it by the first of two names that says it. */
function surfaceOf(
  { reflectances, tints, belongings }: Said,
  first: string,
  second: string,
  given: Pick<ScenePolygon, "name" | "kind" | "vertices" | "normal">,
  usual: number,
): ScenePolygon {
  const { name, kind, vertices, normal } = given;
  const tint = tints.get(first) ?? tints.get(second);
  const set = (belongings.get(first) ?? belongings.get(second)) === "set";
  return sheet({
    name,
    kind,
    vertices,
    normal,
    frontReflectance: reflectances.get(first) ?? reflectances.get(second) ?? usual,
    backReflectance: 0,
    tint,
    asSet: set ? true : undefined,
  });
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
  const said = saidOf(model);
  const { reflectances } = said;
  const walls = wallPlanes(room);
  if (!reflectances.has("ceiling")) assume(site, "ceiling", "80 %", true);
  if (!reflectances.has("walls") && walls.some(({ side }) => !reflectances.has(side)))
    assume(site, "walls", "50 %", true);
  if (!reflectances.has("floor")) assume(site, "floor", "20 %", true);
  const floor: readonly Vec3[] = [
    [left, front, 0],
    [right, front, 0],
    [right, back, 0],
    [left, back, 0],
  ];
  const ceiling: readonly Vec3[] = [
    [left, back, height],
    [right, back, height],
    [right, front, height],
    [left, front, height],
  ];
  polygons.push(
    surfaceOf(
      said,
      "floor",
      "floor",
      { name: "floor", kind: "floor", vertices: floor, normal: [0, 0, 1] },
      roomDefaults.floor,
    ),
    surfaceOf(
      said,
      "ceiling",
      "ceiling",
      { name: "ceiling", kind: "ceiling", vertices: ceiling, normal: [0, 0, -1] },
      roomDefaults.ceiling,
    ),
  );
  for (const wall of walls) addWall(site, said, wall, height, polygons);
}

/** Adds a wall, in rectangles round its openings. */
function addWall(site: Site, said: Said, wall: WallPlane, height: number, polygons: ScenePolygon[]): void {
  const { side, normal, turned } = wall;
  const whole: WallArea = { left: wall.from, right: wall.to, low: 0, high: height };
  const holes: WallArea[] = [];
  for (const opening of said.openings) {
    if (opening.wall !== side) continue;
    const hole = holeOf(site, opening, wall, height);
    if (hole !== null) holes.push(hole);
  }
  const parts = holes.length === 0 ? [whole] : cutHoles(whole, holes);
  for (let i = 0; i < parts.length; i++) {
    const { left, right, low, high } = parts[i] as WallArea;
    const a = turned ? right : left;
    const b = turned ? left : right;
    const vertices = [
      onWall(wall, a, low),
      onWall(wall, b, low),
      onWall(wall, b, high),
      onWall(wall, a, high),
    ];
    const name = i === 0 ? `wall ${side}` : `wall ${side}.${i}`;
    polygons.push(
      surfaceOf(said, side, "walls", { name, kind: "wall", vertices, normal }, roomDefaults.walls),
    );
  }
}
