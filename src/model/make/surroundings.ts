import { writeNumber } from "../../core/write-number.js";
import { say } from "../../units/make.js";
import type { Angle, Illuminance, Length, Plain, Stops } from "../../units/quantity.js";
import { surfaces } from "../../vocabulary/surfaces.js";
import type {
  ContrastValue,
  HingeValue,
  MarkValue,
  NaturalLightValue,
  OvercastValue,
  RectangleValue,
  SunValue,
  SurfaceValue,
} from "../values.js";
import { writeName } from "./points.js";

/** A surface by its reflectance. */
export function reflecting(share: Plain): SurfaceValue {
  return { name: null, reflectance: share, written: say(share) };
}

/** A surface of the table by name; null for a name that is not in it. */
export function surface(name: string): SurfaceValue | null {
  const row = surfaces.find((candidate) => candidate.name === name);
  if (row === undefined) return null;
  const reflectance: Plain = {
    value: row.reflectance,
    unit: "1",
    written: `${writeNumber(row.reflectance * 100)} %`,
  };
  return { name, reflectance, written: name };
}

/** The edge of another flat, left or right as the camera sees it. */
export function edgeOf(edge: "left" | "right", of: string): HingeValue {
  return { edge, of, written: `${edge}_edge(${writeName(of)})` };
}

/** Where the mark is, by its distances from a side wall and from the back or front wall. */
export function markFrom(walls: {
  readonly left?: Length | null;
  readonly right?: Length | null;
  readonly back?: Length | null;
  readonly front?: Length | null;
}): MarkValue {
  const said: string[] = [];
  for (const name of ["left", "right", "back", "front"] as const) {
    const tape = walls[name] ?? null;
    if (tape !== null) said.push(`${name}: ${say(tape)}`);
  }
  return {
    left: walls.left ?? null,
    right: walls.right ?? null,
    back: walls.back ?? null,
    front: walls.front ?? null,
    written: `from(${said.join(", ")})`,
  };
}

/** Direct sun at an elevation. */
export function sunlight(elevation: Angle): SunValue {
  return { kind: "sunlight", elevation, written: `sunlight(elevation: ${say(elevation)})` };
}

/** An overcast sky of no known brightness. */
export const overcast: OvercastValue = { kind: "overcast", written: "overcast" };

/** An overcast sky with the sun behind its clouds, or as a meter finds it on open level ground. */
export function overcastSky(as: SunValue | Illuminance): OvercastValue {
  if ("unit" in as) return { kind: "overcast", metered: as, written: `overcast(metered: ${say(as)})` };
  return { kind: "overcast", sun: as, written: `overcast${as.written.slice("sunlight".length)}` };
}

/** Light from a window, and the sky before it where its brightness is to be known. */
export function window(size: RectangleValue, distance: Length, sky?: OvercastValue): NaturalLightValue {
  const words = `size: ${size.written}, distance: ${say(distance)}`;
  if (sky === undefined) return { kind: "window", size, distance, written: `window(${words})` };
  return { kind: "window", size, distance, sky, written: `window(${words}, sky: ${sky.written})` };
}

/** A contrast as a ratio, `left` to `right`. */
export function ratio(left: number, right: number, tolerance: Stops | null = null): ContrastValue {
  return contrast(Math.log2(left / right), `${writeNumber(left)}:${writeNumber(right)}`, tolerance);
}

/** A contrast in stops, with the words it is written in. */
export function contrast(stops: number, written: string, tolerance: Stops | null = null): ContrastValue {
  return {
    stops,
    plusMinus: tolerance === null ? null : tolerance.value,
    written: tolerance === null ? written : `${written} +- ${tolerance.written}`,
  };
}
