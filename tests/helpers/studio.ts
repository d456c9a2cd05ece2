import fc from "fast-check";
import { belowFull, capsule, disc, output, rectangle, sphere } from "../../src/model/make/lamps.js";
import { left, offset, right, tape } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import { edgeOf } from "../../src/model/make/surroundings.js";
import type { LightModel, Recipe } from "../../src/model/types.js";
import type { ShapeValue } from "../../src/model/values.js";
import { deg, lmSeconds, m, stops } from "../../src/units/make.js";
import type { Length } from "../../src/units/quantity.js";
import { block, recipe } from "./models.js";

/** One lamp of a made-up studio, in plain numbers: lengths in m, angles in deg. */
export interface LampSpec {
  readonly shape: "disc" | "rectangle" | "sphere" | "capsule";
  readonly wide: number;
  readonly tall: number;
  readonly distance: number;
  /** + to camera-right. */
  readonly bearing: number;
  readonly elevation: number;
  /** + to camera-right. */
  readonly feather: number;
  readonly roll: number;
  readonly energy: number;
  readonly below: number;
}

/** A made-up studio. */
export interface StudioSpec {
  readonly lamps: readonly LampSpec[];
  readonly stature: number;
  /** Facing of the person, + to camera-right. */
  readonly facing: number;
  readonly gap: number;
  readonly opening: number;
}

/** How a studio is turned into a recipe. */
export interface StudioView {
  /** All lengths times this. */
  readonly scale?: number;
  readonly mirrored?: boolean;
  /** How a length is said. */
  readonly say?: (metres: number) => Length;
}

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any lamp of ordinary size and place. */
export const anyLamp: fc.Arbitrary<LampSpec> = fc.record({
  shape: fc.constantFrom("disc", "rectangle", "sphere", "capsule"),
  wide: real(0.04, 0.6),
  tall: real(0.61, 1.2),
  distance: real(1.2, 4),
  bearing: real(-170, 170),
  elevation: real(-10, 60),
  feather: real(-25, 25),
  roll: real(-90, 90),
  energy: real(10, 5000),
  below: real(0, 8),
});

/** Any studio with one to four lamps. */
export const anyStudio: fc.Arbitrary<StudioSpec> = fc.record({
  lamps: fc.array(anyLamp, { minLength: 1, maxLength: 4 }),
  stature: real(1.2, 2),
  facing: real(-60, 60),
  gap: real(0.4, 2),
  opening: real(70, 170),
});

const side = (angle: number) => (angle < 0 ? left(deg(-angle)) : right(deg(angle)));

function shapeOf(lamp: LampSpec, length: (metres: number) => Length): ShapeValue {
  switch (lamp.shape) {
    case "disc":
      return disc(length(lamp.wide));
    case "sphere":
      return sphere(length(lamp.wide));
    case "rectangle":
      return rectangle(length(lamp.wide), length(lamp.tall));
    case "capsule":
      return capsule(length(lamp.tall), length(lamp.wide));
    default:
      return lamp.shape satisfies never;
  }
}

/** The recipe of a studio: a person in front of two hinged flats, and its lamps, the first of them the key. */
export function studio(spec: StudioSpec, view: StudioView = {}): Recipe {
  const { scale = 1, mirrored = false, say = m } = view;
  const length = (metres: number): Length => say(metres * scale);
  const sign = mirrored ? -1 : 1;
  const facing = side(sign * spec.facing);
  const lamps = spec.lamps.map(
    (lamp, index): LightModel =>
      block("light", `lamp${index}`, {
        role: index === 0 ? "key" : "fill",
        shape: shapeOf(lamp, length),
        output: output(lmSeconds(lamp.energy)),
        power: belowFull(stops(lamp.below)),
        distance: tape(length(lamp.distance)),
        bearing: side(sign * lamp.bearing),
        elevation: deg(lamp.elevation),
        feather: side(sign * lamp.feather),
        roll: deg(sign * lamp.roll),
      }),
  );
  return recipe({
    subjects: [
      block("subject", null, {
        height: length(spec.stature),
        facing: { kind: "bearing", bearing: facing, written: facing.written },
      }),
    ],
    set: block("set", null, {
      parts: [
        block("flat", "back", {
          size: size(length(1.2), length(2.4)),
          at: offset({ behind: length(spec.gap) }),
        }),
        block("flat", "side", {
          size: size(length(1), length(2.2)),
          hinge: edgeOf(mirrored ? "right" : "left", "back"),
          opening: deg(spec.opening),
        }),
      ],
    }),
    lights: lamps,
    camera: block("camera", null, {
      held: "upright",
      distance: tape(length(3)),
      bearing: side(sign * 5),
      height: length(1.4),
    }),
  });
}
