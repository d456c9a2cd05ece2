import { exp2 } from "../../core/exp2.js";
import type { Vec3 } from "../../core/vector.js";
import { rotateAbout } from "../../math/rotation.js";
import { add, cross, dot, normalise, scale } from "../../math/vector.js";
import { heldAt } from "../../scene/held-meter.js";
import { halfHeight } from "../../scene/lamp/shape.js";
import { standBodies } from "../../scene/lamp/stand-bodies.js";
import { relit } from "../../scene/lit/into-surface.js";
import { lightPlace } from "../../scene/lit/seen.js";
import type { Scene, Source, Station } from "../../scene/types.js";
import { sceneLight } from "../../transport/scene-light.js";
import { directionTo } from "../geometry/directions.js";
import type { Lit } from "../plan.js";
import { carryCloth, isCarried } from "./carry-cloth.js";

type Frame = readonly [across: Vec3, up: Vec3, ahead: Vec3];

/** A level frame along a line of sight: to its right, upwards, ahead. */
function frameAlong(ahead: Vec3): Frame {
  const across = normalise(cross(ahead, [0, 0, 1])) ?? [1, 0, 0];
  return [across, cross(across, ahead), ahead];
}

/** A vector that keeps its parts when one frame is turned into another. */
function carry(vector: Vec3, from: Frame, to: Frame): Vec3 {
  return add(
    add(scale(to[0], dot(vector, from[0])), scale(to[1], dot(vector, from[1]))),
    scale(to[2], dot(vector, from[2])),
  );
}

/** The angle about the vertical by which a lamp is feathered: from its line of sight to its axis, seen from above. */
function featherOf(sight: Vec3, axis: Vec3): number {
  const side = sight[0] * axis[1] - sight[1] * axis[0];
  const along = sight[0] * axis[0] + sight[1] * axis[1];
  return side === 0 && along === 0 ? 0 : Math.atan2(side, along);
}

/** A lamp carried to another place. It still points at its aim, feathered about the vertical and rolled as before. */
export function moveTo(source: Source, centre: Vec3): Source {
  const before = directionTo(source.centre, source.aim);
  const after = directionTo(centre, source.aim);
  if (before === null || after === null) return { ...source, centre };
  const axis = rotateAbout(after, [0, 0, 1], featherOf(before, source.axis));
  return turned({ ...source, centre }, axis);
}

/** A lamp with its axis turned another way where it stands, rolled as before. */
function turned(source: Source, axis: Vec3): Source {
  const from = frameAlong(source.axis);
  const to = frameAlong(axis);
  const [across, along] = [carry(source.across, from, to), carry(source.along, from, to)];
  return { ...source, axis, across, along, headHeight: headHeightWith(source, axis, across, along) };
}

/** How high a head reaches once it is turned: one whose height is only that of its opening stands steeper or flatter. */
function headHeightWith(source: Source, axis: Vec3, across: Vec3, along: Vec3): number {
  const { shape, headHeight } = source;
  const own = 2 * halfHeight(shape, source.axis[2], source);
  if (source.cloth !== undefined || Math.abs(headHeight - own) > 1e-9) return headHeight;
  return 2 * halfHeight(shape, axis[2], { across, along });
}

/** A lamp turned to another aim where it stands, without feather, rolled as before. */
export function aimAt(source: Source, aim: Vec3): Source {
  const axis = directionTo(source.centre, aim);
  if (axis === null) return source;
  return turned({ ...source, aim }, axis);
}

/** A lamp at another height, straight above or below where it stands. */
export function atHeight(source: Source, height: number): Source {
  return moveTo(source, [source.centre[0], source.centre[1], height]);
}

/** A lamp carried along the straight line from a point through it, to another distance from that point. */
export function atDistance(source: Source, from: Vec3, distance: number): Source {
  const direction = directionTo(from, source.centre);
  return direction === null ? source : moveTo(source, add(from, scale(direction, distance)));
}

/** A lamp with its output changed by a number of stops; its setting follows. */
export function atPower(source: Source, stops: number): Source {
  return {
    ...source,
    energy: source.energy * exp2(stops),
    wattSeconds: source.wattSeconds === null ? null : source.wattSeconds * exp2(stops),
    below: source.below === null ? null : source.below - stops,
  };
}

/**
 * A lit scene with one lamp replaced; meters that look at the key are turned to where it is now, and the head behind a
 * cloth follows its cloth's power. Its stand goes where the lamp goes. The set stays as it is, and so does the light's
 * work but for what comes straight past the stand; a head that shines into a surface lights a patch from where it is
 * now. The cloth of a light that shines through one is carried with it, and then all light is worked out anew.
 */
export function withSource<T extends Lit>(lit: T, index: number, changed: Source): T {
  const before = lit.scene.sources[index];
  const source =
    before !== undefined && isElsewhere(before, changed) ? relit(changed, lit.scene.polygons) : changed;
  const scene = sceneWith(lit.scene, index, source);
  if (before === undefined) return { ...lit, scene };
  if (isCarried(before, source)) {
    const carried = withOwnStands(carryCloth(scene, before, source));
    return { ...lit, scene: carried, light: sceneLight(carried) };
  }
  if (source.stand === null || !isElsewhere(before, source)) return { ...lit, scene };
  const moved = withOwnStands(scene);
  return { ...lit, scene: moved, light: lit.light.withStands(moved) };
}

/** Whether a lamp has been carried or turned. */
function isElsewhere(before: Source, after: Source): boolean {
  return differ(before.centre, after.centre) || differ(before.axis, after.axis);
}

const differ = (a: Vec3, b: Vec3): boolean => a[0] !== b[0] || a[1] !== b[1] || a[2] !== b[2];

/** A scene whose stands are where its lamps are. */
function withOwnStands(scene: Scene): Scene {
  const others = scene.bodies.filter(({ of }) => of !== "stand");
  return {
    ...scene,
    bodies: [...others, ...scene.sources.flatMap((row) => standBodies(row, scene.room))],
  };
}

function sceneWith(scene: Scene, index: number, source: Source): Scene {
  const before = scene.sources[index];
  const sources = scene.sources.map((row, i) => {
    if (i === index) return source;
    return row.spillOf === source.name && before !== undefined ? follows(row, before, source) : row;
  });
  const landmarks = new Map(scene.landmarks);
  const place = { at: lightPlace(source), ahead: null };
  landmarks.set(source.name, place);
  if (index === scene.key && source.role === "key" && !scene.sources.some(({ name }) => name === "key")) {
    landmarks.set("key", place);
  }
  const stations = index === scene.key ? allRefaced(scene.stations, source) : scene.stations;
  return { ...scene, sources, landmarks, stations };
}

function allRefaced(stations: readonly Station[], key: Source): readonly Station[] {
  const turned: Station[] = [];
  for (const station of stations) turned.push(refaced(station, key));
  return turned;
}

/** A head behind a cloth with its output changed as the cloth's is. */
function follows(head: Source, before: Source, after: Source): Source {
  return before.energy > 0 ? { ...head, energy: (head.energy * after.energy) / before.energy } : head;
}

function refaced(station: Station, key: Source): Station {
  const { before, looks } = station;
  const at = before === undefined ? station.at : heldAt(before, lightPlace(key));
  if (looks !== `towards ${key.name}`) return { ...station, at };
  return { ...station, at, facing: directionTo(at, lightPlace(key)) ?? station.facing };
}
