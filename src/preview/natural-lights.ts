import type { Vec3 } from "../core/vector.js";
import { addScaled, scale } from "../math/vector.js";
import { uprightFrame } from "../scene/frame.js";
import type { Source } from "../scene/types.js";

/** How far away the sun stands, m: over a scene of some metres its light is parallel to a thousandth of a degree. */
const SUN_AWAY = 1e5;
/** Half the side of the box whose inside is the sky, m. */
export const SKY_HALF = 500;
/** Rounds by which the part of the overcast sky that grows towards the zenith is built. */
const ROUNDS = 4;

/** An evenly bright opening as a source of steady light; its energy is that of its whole front. */
function opening(name: string, shape: Source["shape"], centre: Vec3, axis: Vec3, energy: number): Source {
  const area =
    shape.kind === "disc"
      ? Math.PI * shape.radius * shape.radius
      : shape.kind === "rectangle"
        ? shape.width * shape.height
        : 0;
  return {
    name,
    role: null,
    kind: "steady",
    shape,
    centre,
    axis,
    ...uprightFrame(axis),
    beam: { kind: "lambertian" },
    area,
    energy,
    fullEnergy: energy,
    uncertainty: 0,
    known: "worked out",
    wattSeconds: null,
    fullWattSeconds: null,
    lowest: null,
    below: 0,
    colour: 5500,
    aim: addScaled(centre, axis, 1),
    headHeight: 0,
    hotModellingLamp: false,
    stand: null,
  };
}

/**
 * The sun as a far disc.
 *
 * @param towards - Unit vector from the scene to it.
 * @param width - Of the disc, radians.
 * @param square - What it gives a plane square to it, lx s.
 */
export function sunSource(face: Vec3, towards: Vec3, width: number, square: number): Source {
  const radius = SUN_AWAY * Math.tan(width / 2);
  // Of a disc of radius R straight opposite: E = pi L R^2 / (D^2 + R^2), and its energy is pi L times its area.
  const energy = square * Math.PI * (SUN_AWAY * SUN_AWAY + radius * radius);
  return {
    ...opening(
      "sun",
      { kind: "disc", radius },
      addScaled(face, towards, SUN_AWAY),
      scale(towards, -1),
      energy,
    ),
    role: "key",
    aim: face,
  };
}

/**
 * A sky of one luminance down to the horizon: the inside of a box. The luminance of a matt surface is the same from
 * every side, so the shape of the box does not matter for one who stands in it.
 *
 * @param level - What it gives open level ground, lx s.
 */
export function evenSky(level: number): readonly Source[] {
  const half = SKY_HALF;
  const walls: readonly Vec3[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
  ];
  // Level ground under luminance L gets pi L; a face of the box sends out pi L on each square metre.
  const face = (name: string, centre: Vec3, axis: Vec3, height: number): Source => {
    const shape = { kind: "rectangle", width: 2 * half, height } as const;
    return opening(name, shape, centre, axis, level * 2 * half * height);
  };
  return [
    face("sky", [0, 0, half], [0, 0, -1], 2 * half),
    ...walls.map(([x, y], i) => face(`sky side ${i + 1}`, [-x * half, -y * half, half / 2], [x, y, 0], half)),
  ];
}

/**
 * The overcast sky of the CIE, L = Lz (1 + 2 sin e) / 3: an even sky of Lz / 3, and for what grows with sin e rounds one
 * above another, each of which covers the sky from an elevation up. They give level ground 1 % too much of the latter.
 *
 * @param level - What it gives open level ground, lx s.
 */
export function overcastSky(level: number): readonly Source[] {
  // Level ground gets 7 pi / 9 Lz: 3 pi / 9 from the even part.
  const even = (level * 3) / 7;
  const share = (2 * even) / ROUNDS;
  const rounds = Array.from({ length: ROUNDS }, (_, i): Source => {
    const sine = (i + 0.5) / ROUNDS;
    const radius = (SKY_HALF * Math.sqrt(1 - sine * sine)) / sine;
    const energy = share * Math.PI * radius * radius;
    return opening(
      `sky round ${i + 1}`,
      { kind: "disc", radius },
      [0, 0, SKY_HALF + 1.5],
      [0, 0, -1],
      energy,
    );
  });
  return [...evenSky(even), ...rounds];
}

/**
 * An evenly bright window that looks at a face.
 *
 * @param towards - Unit vector from the face to its middle.
 * @param emits - What it sends out on each square metre, lm s.
 */
export function windowSource(
  face: Vec3,
  towards: Vec3,
  { width, height, away }: { readonly width: number; readonly height: number; readonly away: number },
  emits: number,
): Source {
  const shape = { kind: "rectangle", width, height } as const;
  const centre = addScaled(face, towards, away);
  return {
    ...opening("window", shape, centre, scale(towards, -1), emits * width * height),
    role: "key",
    aim: face,
  };
}
