import type { Vec3 } from "../core/vector.js";
import { distance } from "../math/vector.js";
import type { Origins } from "../model/types.js";
import type { BearingValue, DirectionValue, PointValue } from "../model/values.js";
import { find, metres, placeOfBlock, report, type Site } from "./site.js";
import type { Landmark } from "./types.js";

/** The mark: origin of the frame, on the floor. */
export const mark: Landmark = { at: [0, 0, 0], ahead: null };

/**
 * A point in metres. `find` gives the landmark of a name, `beyond` is told of a tape that is longer than its line.
 * Null where a name has no place.
 *
 * In an offset `left` and `right` are the camera's, `up` and `down` are vertical; `ahead` runs along the facing of
 * the subject whose place the offset starts from, and towards the camera's side (-y) from anything else; `behind` is
 * its opposite.
 */
export function resolvePoint(
  point: PointValue,
  find: (name: string) => Landmark | null,
  beyond: (tape: number, apart: number) => void,
): Landmark | null {
  switch (point.kind) {
    case "coordinates":
      return { at: [point.x.value, point.y.value, point.z.value], ahead: null };
    case "named":
      return find(landmarkName(point.path));
    case "offset": {
      const from = point.from === null ? mark : resolvePoint(point.from, find, beyond);
      if (from === null) return null;
      const side = (point.right?.value ?? 0) - (point.left?.value ?? 0);
      const on = (point.ahead?.value ?? 0) - (point.behind?.value ?? 0);
      const up = (point.up?.value ?? 0) - (point.down?.value ?? 0);
      const ax = from.ahead === null ? 0 : from.ahead[0];
      const ay = from.ahead === null ? -1 : from.ahead[1];
      const at = from.at;
      return { at: [at[0] + side + on * ax, at[1] + on * ay, at[2] + up], ahead: from.ahead };
    }
    case "between": {
      const a = resolvePoint(point.a, find, beyond);
      const b = resolvePoint(point.b, find, beyond);
      if (a === null || b === null) return null;
      const apart = distance(a.at, b.at);
      const tape = point.tape.value;
      if (tape > apart || tape < 0) beyond(tape, apart);
      const share = apart > 0 ? Math.min(1, Math.max(0, tape / apart)) : 0;
      return { at: onLine(a.at, b.at, point.from === "a" ? share : 1 - share), ahead: null };
    }
    case "midpoint": {
      const a = resolvePoint(point.a, find, beyond);
      const b = resolvePoint(point.b, find, beyond);
      return a === null || b === null ? null : { at: onLine(a.at, b.at, 0.5), ahead: null };
    }
    default:
      return point satisfies never;
  }
}

function onLine(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

/** The name under which a path's landmark is kept; `subject.face` is the `face` of the first subject. */
function landmarkName(path: readonly string[]): string {
  const first = path[0] ?? "";
  if (path.length < 2) return first;
  return first === "subject" ? path.slice(1).join(".") : path.join(".");
}

/** A block's point in metres while the scene is built; findings go to the property that says it. */
export function blockPoint(
  site: Site,
  origins: Origins | undefined,
  property: string,
  point: PointValue,
): Landmark | null {
  if (point.kind === "coordinates") {
    return { at: [point.x.value, point.y.value, point.z.value], ahead: null };
  }
  const before = site.place;
  site.place = placeOfBlock(origins, property);
  const resolved = resolvePoint(
    point,
    (name) => find(site, name),
    (tape, apart) => report(site, "point.beyond", { tape: metres(tape), apart: metres(apart) }),
  );
  site.place = before;
  return resolved;
}

/** The level unit vector of a bearing: 0 is -y, the camera's side; left is -x, as the camera sees it. */
export function bearingDirection(bearing: BearingValue): Vec3 {
  const angle = (bearing.angle.value * Math.PI) / 180;
  const sine = Math.sin(angle);
  return [bearing.side === "left" ? -sine : sine, -Math.cos(angle), 0];
}

/**
 * The unit vector of a direction seen from a place. `upright` keeps it level, for what turns only about the vertical.
 * Null, with a finding, where there is none.
 */
export function blockDirection(
  site: Site,
  origins: Origins | undefined,
  property: string,
  name: string,
  direction: DirectionValue,
  from: Vec3,
  upright: boolean,
): Vec3 | null {
  if (direction.kind === "bearing") return bearingDirection(direction.bearing);
  if (direction.kind === "straight" && !upright) return direction.word === "up" ? [0, 0, 1] : [0, 0, -1];
  if (direction.kind === "point") {
    const point = blockPoint(site, origins, property, direction.point);
    if (point === null) return null;
    const x = point.at[0] - from[0];
    const y = point.at[1] - from[1];
    const z = upright ? 0 : point.at[2] - from[2];
    const size = Math.sqrt(x * x + y * y + z * z);
    if (size > 1e-9) return [x / size, y / size, z / size];
  }
  const before = site.place;
  site.place = placeOfBlock(origins, property);
  report(site, "direction.none", { name });
  site.place = before;
  return null;
}
