import type { Vec3 } from "../../src/core/vector.js";
import { emittingArea } from "../../src/physics/source-shape.js";
import { uprightFrame } from "../../src/scene/frame.js";
import { sourceShape } from "../../src/scene/lamp/optics.js";
import type { Source } from "../../src/scene/types.js";

/** A source of one lumen-second with a shape, at a place, along an axis. */
export function sourceOf(
  shape: Source["shape"],
  centre: Vec3 = [0, 0, 0],
  axis: Vec3 = [0, 1, 0],
  beam: Source["beam"] = { kind: "lambertian" },
): Source {
  const frame = uprightFrame(axis);
  return {
    name: "lamp",
    role: null,
    kind: "flash",
    shape,
    centre,
    axis,
    ...frame,
    beam,
    area: emittingArea(sourceShape({ shape, centre, axis, ...frame })),
    energy: 1,
    fullEnergy: 1,
    uncertainty: 0,
    known: "test",
    wattSeconds: null,
    fullWattSeconds: null,
    lowest: null,
    below: 0,
    colour: 5600,
    aim: [centre[0] + axis[0], centre[1] + axis[1], centre[2] + axis[2]],
    headHeight: 0,
    hotModellingLamp: false,
    stand: null,
  };
}

/** One of each shape, of ordinary sizes. */
export const shapes: readonly Source["shape"][] = [
  { kind: "disc", radius: 0.3 },
  { kind: "rectangle", width: 0.6, height: 0.9 },
  { kind: "sphere", radius: 0.15 },
  { kind: "capsule", length: 0.5, radius: 0.06 },
];

/** One of each beam. */
export const beams: readonly Source["beam"][] = [
  { kind: "lambertian" },
  { kind: "cosine-power", exponent: 4 },
  { kind: "grid", cutoff: (60 * Math.PI) / 180 },
];
