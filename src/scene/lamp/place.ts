import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import type { LightModel } from "../../model/types.js";
import { surfaceOf } from "../lit/surfaces.js";
import { bearingDirection, blockPoint } from "../points.js";
import { assume, faceOfSubject, find, metres, placeOfBlock, report, type Site } from "../site.js";
import type { Source } from "../types.js";
import { axisTo, feathered, lampFrame } from "./axis.js";
import { greatestHalf, halfHeight } from "./shape.js";

/** The camera's side, where a bearing of 0 points. */
const ahead: Vec3 = [0, -1, 0];

/**
 * The point a lamp is aimed at: `aim`, else the middle of what it shines into or through, else the first subject's
 * face, else the mark.
 */
export function aimOf(site: Site, light: LightModel): Vec3 {
  const surface = light.into ?? light.through;
  if (light.aim === undefined && surface !== undefined) {
    const before = site.place;
    site.place = placeOfBlock(light.origins, light.into === undefined ? "through" : "into");
    const middle = find(site, surfaceOf(surface));
    site.place = before;
    if (middle !== null) return middle.at;
  }
  return subjectAim(site, light);
}

/** The point of `aim`, else the first subject's face, else the mark. */
function subjectAim(site: Site, light: LightModel): Vec3 {
  if (light.aim !== undefined) return blockPoint(site, light.origins, "aim", light.aim)?.at ?? [0, 0, 0];
  return faceOfSubject(site)?.at ?? [0, 0, 0];
}

/** The tape's zero: where the tape says it starts, else `aim`, else the first subject's face, else the mark. */
function zeroOf(site: Site, light: LightModel): Vec3 {
  const from = light.distance?.from ?? light.floor_distance?.from ?? null;
  if (from === null) return subjectAim(site, light);
  const property = light.distance?.from ? "distance" : "floor_distance";
  return blockPoint(site, light.origins, property, from)?.at ?? [0, 0, 0];
}

/** Where a lamp's centre is, given its height; `level` and `slant` are its tapes, one of them null. */
interface Tape {
  readonly zero: Vec3;
  /** Where the floor tape starts; its height is 0. */
  readonly start: Vec3;
  readonly way: Vec3;
  readonly slant: number | null;
  readonly level: number | null;
}

/** The centre of a lamp at a height; a slant that is too short puts it straight above or below its zero. */
function atHeight(tape: Tape, z: number): Vec3 {
  const { start, way, slant, zero } = tape;
  const rise = z - zero[2];
  const level = slant === null ? (tape.level ?? 0) : Math.sqrt(Math.max(0, slant * slant - rise * rise));
  return [start[0] + level * way[0], start[1] + level * way[1], z];
}

/** The centre of a lamp at an elevation in degrees, taken at the tape's zero. */
function atElevation(tape: Tape, elevation: number): Vec3 {
  const angle = (elevation * Math.PI) / 180;
  const { zero, start, way, slant } = tape;
  if (slant !== null) {
    const level = slant * Math.cos(angle);
    return [start[0] + level * way[0], start[1] + level * way[1], zero[2] + slant * Math.sin(angle)];
  }
  const foot = atHeight(tape, 0);
  const x = foot[0] - zero[0];
  const y = foot[1] - zero[1];
  return [foot[0], foot[1], zero[2] + Math.sqrt(x * x + y * y) * Math.tan(Math.min(angle, 1.57))];
}

/** How far each reading of a lamp's placement is off: m, degrees. */
export interface PlacementOffset {
  readonly tape?: number;
  readonly height?: number;
  readonly elevation?: number;
  readonly bearing?: number;
}

/** The tape of a lamp that is not placed by `position`, from its zero. */
function tapeOf(light: LightModel, zero: Vec3, off: PlacementOffset = {}): Tape {
  const fromMark = light.distance === undefined && light.floor_distance?.from === null;
  const angle = light.bearing;
  const turned = angle && {
    ...angle,
    angle: { ...angle.angle, value: angle.angle.value + (off.bearing ?? 0) },
  };
  const by = off.tape ?? 0;
  return {
    zero,
    start: fromMark ? [0, 0, 0] : zero,
    way: turned === undefined ? ahead : bearingDirection(turned),
    slant: light.distance === undefined ? null : light.distance.length.value + by,
    level: light.floor_distance === undefined ? null : light.floor_distance.length.value + by,
  };
}

/**
 * Where the centre of a lamp on a tape goes when readings of its placement are off, the others as they are: from where
 * it stands, by what the tape from its zero makes of the difference.
 */
export function offsetCentre(light: LightModel, zero: Vec3, centre: Vec3, off: PlacementOffset): Vec3 {
  const place = (by: PlacementOffset): Vec3 => {
    const tape = tapeOf(light, zero, by);
    return light.elevation === undefined
      ? atHeight(tape, centre[2] + (by.height ?? 0))
      : atElevation(tape, light.elevation.value + (by.elevation ?? 0));
  };
  const before = place({});
  const after = place(off);
  return [
    centre[0] + after[0] - before[0],
    centre[1] + after[1] - before[1],
    centre[2] + after[2] - before[2],
  ];
}

/** The height of the centre whose opening, aimed and tilted, has its lowest point at `bottom`. */
function heightAbove(
  tape: Tape,
  light: LightModel,
  shape: Source["shape"],
  aim: Vec3,
  bottom: number,
): number {
  const miss = (z: number): number => {
    const centre = atHeight(tape, z);
    const axis = feathered(axisTo(centre, aim) ?? ahead, light.feather);
    return z - halfHeight(shape, axis[2], lampFrame(axis, light.roll)) - bottom;
  };
  return findRoot(miss, bottom, bottom + greatestHalf(shape), 1e-12) ?? bottom + greatestHalf(shape);
}

/** Reports a slant tape that cannot reach from its zero to a height. */
function checkReach(site: Site, light: LightModel, tape: Tape, z: number): void {
  if (tape.slant === null) return;
  const gap = Math.abs(z - tape.zero[2]);
  if (gap <= tape.slant + 1e-9) return;
  site.place = placeOfBlock(light.origins, "distance");
  const word = { ...site.place, end: site.place.start + "distance".length };
  const fixes =
    light.origins?.properties.has("distance") === true
      ? [
          {
            title: "write `floor_distance`, if the tape ran along the floor",
            certain: false,
            edits: [{ place: word, text: "floor_distance" }],
          },
        ]
      : [];
  report(
    site,
    "placement.too-near",
    {
      name: light.name ?? "light",
      height: metres(z),
      slant: metres(tape.slant),
      zero: metres(tape.zero[2]),
      gap: metres(gap),
    },
    fixes,
  );
}

/**
 * The centre of a lamp's lit opening. `position` wins; else a slant tape from the tape's zero, or a tape along the
 * floor from the mark (or from below the point it names), along a bearing taken where the tape starts; and one of
 * height, elevation (at the tape's zero) and bottom edge. Null, with a finding, where the recipe does not place it.
 */
export function lampCentre(site: Site, light: LightModel, shape: Source["shape"]): Vec3 | null {
  if (light.position !== undefined) {
    return blockPoint(site, light.origins, "position", light.position)?.at ?? null;
  }
  if (light.distance === undefined && light.floor_distance === undefined) {
    site.place = placeOfBlock(light.origins);
    report(site, "scene.incomplete", { name: light.name ?? "light", what: "where it stands" });
    return null;
  }
  const zero = zeroOf(site, light);
  const tape = tapeOf(light, zero);
  if (light.elevation !== undefined) return atElevation(tape, light.elevation.value);
  if (light.height === undefined && light.bottom_edge === undefined) {
    assume(site, `height of ${light.name}`, "level with the start of its tape", true);
    return atHeight(tape, zero[2]);
  }
  const z =
    light.height?.value ?? heightAbove(tape, light, shape, aimOf(site, light), light.bottom_edge?.value ?? 0);
  checkReach(site, light, tape, z);
  return atHeight(tape, z);
}
