import { say } from "../../units/make.js";
import type { Angle, Length } from "../../units/quantity.js";
import type { BearingValue, DirectionValue, PointValue, TapeValue } from "../values.js";

/** A point by coordinates from the subject's mark: x camera-right, y away from the camera, z up. */
export function at(x: Length, y: Length, z: Length): PointValue {
  return { kind: "coordinates", x, y, z, written: `(${say(x)}, ${say(y)}, ${say(z)})` };
}

/** The steps of an offset, each left out or a length. */
export interface OffsetSteps {
  readonly from?: PointValue | null;
  readonly left?: Length | null;
  readonly right?: Length | null;
  readonly ahead?: Length | null;
  readonly behind?: Length | null;
  readonly up?: Length | null;
  readonly down?: Length | null;
}

const stepNames = ["left", "right", "ahead", "behind", "up", "down"] as const;

/** A point reached by steps from the mark or from another point. */
export function offset(steps: OffsetSteps): PointValue {
  const said: string[] = [];
  for (const name of stepNames) {
    const step = steps[name] ?? null;
    if (step !== null) said.push(`${name}: ${say(step)}`);
  }
  const from = steps.from ?? null;
  if (from !== null) said.push(`from: ${from.written}`);
  return {
    kind: "offset",
    from,
    left: steps.left ?? null,
    right: steps.right ?? null,
    ahead: steps.ahead ?? null,
    behind: steps.behind ?? null,
    up: steps.up ?? null,
    down: steps.down ?? null,
    written: `offset(${said.join(", ")})`,
  };
}

/** Something of the recipe by its name: `named("ana", "face")`. */
export function named(...path: readonly string[]): PointValue {
  return { kind: "named", path, written: path.map(writeName).join(".") };
}

/** On the line from `a` to `b`, a tape's length away from one of them. */
export function between(a: PointValue, b: PointValue, tape: Length, from: "a" | "b"): PointValue {
  const end = from === "a" ? a : b;
  return {
    kind: "between",
    a,
    b,
    tape,
    from,
    written: `between(${a.written}, ${b.written}, ${say(tape)} from ${end.written})`,
  };
}

/** Half-way between two points. */
export function midpoint(a: PointValue, b: PointValue): PointValue {
  return { kind: "midpoint", a, b, written: `midpoint(${a.written}, ${b.written})` };
}

/** A bearing to the camera's left. */
export function left(angle: Angle): BearingValue {
  return { side: "left", angle, written: `left(${say(angle)})` };
}

/** A bearing to the camera's right. */
export function right(angle: Angle): BearingValue {
  return { side: "right", angle, written: `right(${say(angle)})` };
}

/** A direction along a bearing, level. */
export function along(bearing: BearingValue): DirectionValue {
  return { kind: "bearing", bearing, written: bearing.written };
}

/** The direction towards a point. */
export function towards(point: PointValue): DirectionValue {
  return { kind: "point", point, written: point.written };
}

/** Straight up or down. */
export function straight(word: "up" | "down"): DirectionValue {
  return { kind: "straight", word, written: word };
}

/** A tape, from a point if given. */
export function tape(length: Length, from: PointValue | null = null): TapeValue {
  return { length, from, written: from === null ? say(length) : `${say(length)} from ${from.written}` };
}

const plainName = /^\p{L}[\p{L}\p{M}\p{N}_]*$/u;

/** A name as a recipe writes it: in backticks where it would not read as one word. */
export function writeName(name: string): string {
  // ISO alone would start a sensitivity.
  return plainName.test(name) && name !== "ISO" ? name : `\`${name}\``;
}

/** Names joined by points, each as a recipe writes it: a lamp, or a place of one of several subjects. */
export function writePath(path: string): string {
  return path.split(".").map(writeName).join(".");
}
