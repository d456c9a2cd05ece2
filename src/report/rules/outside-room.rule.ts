import type { Vec3 } from "../../core/vector.js";
import { dot, scale } from "../../math/vector.js";
import type { RoomModel } from "../../model/types.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import { hasOpening, type WallSide } from "../geometry/openings.js";
import { cornersOf, overlapOf, reachAlong } from "../geometry/overlap.js";
import { firmParts, type Thing, thingsOf } from "../geometry/things.js";
import { sayLength } from "../say/quantity.js";
import { sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** A side of the room: its surfaces, the way out through it, and how far out it lies. */
interface Side {
  readonly name: string;
  readonly out: Vec3;
  readonly offset: number;
  readonly sheets: readonly ScenePolygon[];
  /** Whether it is a wall with a window or door. */
  readonly open: boolean;
  /** The way back into the room, in words. */
  readonly back: string;
}

function sidesOf({ room, polygons }: Scene, model: RoomModel | null): readonly Side[] {
  const side = (name: string, out: Vec3, offset: number, back: string, wall?: WallSide): Side => {
    const sheets = polygons.filter((row) => row.name === name || row.name.startsWith(`${name}.`));
    return { name, out, offset, sheets, open: wall !== undefined && hasOpening(model, wall), back };
  };
  const floor = side("floor", [0, 0, -1], 0, "up");
  if (room === null) return [floor];
  return [
    floor,
    side("ceiling", [0, 0, 1], room.height, "down"),
    side("wall left", [-1, 0, 0], -room.left, "to camera-right", "left"),
    side("wall right", [1, 0, 0], room.right, "to camera-left", "right"),
    side("wall front", [0, -1, 0], -room.front, "away from the camera's side", "front"),
    side("wall back", [0, 1, 0], room.back, "towards the camera's side", "back"),
  ];
}

/** How far a thing reaches along a way at most, and how far it reaches at least. */
function extent({ parts }: Thing, way: Vec3): readonly [most: number, least: number] {
  const opposite = scale(way, -1);
  return [
    Math.max(...parts.map((part) => reachAlong(part, way))),
    Math.min(...parts.map((part) => -reachAlong(part, opposite))),
  ];
}

/** How long a thing is along a way, m. */
function lengthOf(thing: Thing, way: Vec3): number {
  const [most, least] = extent(thing, way);
  return most - least;
}

/** Whether a thing lies wholly beyond a side of the room, or reaches back through it by no more than `enough`. */
function isBeyond(thing: Thing, side: Side, enough: number): boolean {
  const [, least] = extent(thing, side.out);
  return least >= side.offset - enough;
}

/**
 * The sides of the room that hold for a thing: for what lies wholly beyond a wall that has an opening, and is seen through
 * it, only the floor, which goes on outside.
 */
function sidesFor(thing: Thing, sides: readonly Side[], enough: number): readonly Side[] {
  const isOutside = sides.some((side) => side.open && isBeyond(thing, side, enough));
  return isOutside ? sides.filter(({ name }) => name === "floor") : sides;
}

/** How far a thing reaches through a side of the room, m; 0 for up to `enough`, and for what an opening lets through. */
function through(thing: Thing, side: Side, enough: number): number {
  const [most] = extent(thing, side.out);
  const by = most - side.offset;
  if (!(by > enough)) return 0;
  if (!side.open) return by;
  const walls = side.sheets.map((sheet) => cornersOf(sheet.name, [sheet]));
  return thing.parts.some((part) => walls.some((wall) => overlapOf(part, wall, enough) > enough)) ? by : 0;
}

/** What to do with a thing that is longer than the room. */
function tooLong(thing: Thing, side: Side, room: number, enough: number): string {
  const long = lengthOf(thing, side.out);
  if (thing.of !== "subject")
    return `It is ${sayLength(long)} long there, and the room ${sayLength(room)}: make it smaller.`;
  // The figure's round feet reach under the floor by a finger: its length would not be what a tape says.
  const firm = lengthOf({ ...thing, parts: firmParts(thing) }, side.out);
  const isUp = side.out[2] !== 0;
  const arms = firm < long - 1e-9 && firm <= room + enough ? "arms down, which makes it fit; or " : "";
  const other = isUp ? "a lower pose, or a higher room" : "another pose or way to face, or a larger room";
  return `The figure is longer there than the ${sayLength(room)} of the room: ${arms}${other}.`;
}

/** A person or a piece of the set reaches through floor, ceiling or a wall. */
export const outsideRoom: Rule = {
  code: "outside-room",
  thresholds: ["overlap_people", "overlap_pieces"],
  safety: false,
  page: {
    when: "A person reaches more than `overlap_people` (5 cm), or a piece of the set more than `overlap_pieces` (2 cm), through a wall, the ceiling or the floor, or lies wholly beyond. What stands in an opening of a wall, or wholly behind a wall that has one, is fine, however far it reaches to the sides and up out there; the floor goes on.",
    means: "It cannot be built like that; what lies outside gets no light from inside.",
    todo: "Look for a slip in a place or a size; move it, or mind the size of the room and where its mark is.",
    source:
      "Common practice, no source: flesh and clothes give, a figure is no likeness, and a tape may be off by 2 cm.",
  },
  check: ({ scene, recipe }) => {
    const sides = sidesOf(scene, recipe.room);
    return thingsOf(scene).flatMap((thing) => {
      const enough = threshold(recipe, thing.of === "subject" ? "overlap_people" : "overlap_pieces") + 1e-9;
      return sidesFor(thing, sides, enough).flatMap((side): RuleFinding[] => {
        const by = through(thing, side, enough);
        if (!(by > enough)) return [];
        const where = sayOwner(side.name);
        const name = thing.name.replace(/^the /, "The ");
        const room = sides.find(({ out }) => dot(out, side.out) < -0.5);
        const fits = room === undefined || lengthOf(thing, side.out) <= side.offset + room.offset + enough;
        return [
          {
            severity: "stop",
            message: isBeyond(thing, side, 1e-9)
              ? `${name} lies outside the room, beyond ${where}.`
              : `${name} reaches ${sayLength(by)} through ${where}.`,
            remedy: fits
              ? `Look for a slip in a place or a size; ${sayLength(by)} ${side.back} it touches ${where}.`
              : tooLong(thing, side, side.offset + (room?.offset ?? 0), enough),
            about: thing.of === "subject" && thing.name === "the person" ? null : thing.name,
          },
        ];
      });
    });
  },
};
