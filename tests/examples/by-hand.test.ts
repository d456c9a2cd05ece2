import { describe, expect, test } from "vitest";
import { exposureAt, foundFor, lightOf, reportOf, resultOf } from "./recipes.js";
import {
  alongFloor,
  apart,
  bearing,
  behind,
  closeLoss,
  elevation,
  exposureOf,
  type FlatLamp,
  fNumberOf,
  gathered,
  gatheredOnAxis,
  gridded,
  held,
  onFigure,
  onTape,
  seen,
  seenBall,
  stopsOver,
  type Triple,
  thirds,
  towards,
} from "./sums.js";

/**
 * Direct light and places of the examples' reports worked out a second time, from the plain numbers of the recipes and the formulas of
 * `sums.ts`. Nothing of the program takes part but the number that is checked. Flat lamps are summed over 120 x 120
 * squares, which is within 0.1 % where it is used.
 */
function check(words: string, found: () => number | null, expected: number, within: number): void {
  test(words, () => {
    const number = found();
    expect(number, words).not.toBeNull();
    expect(
      Math.abs((number ?? Number.NaN) - expected),
      `${words}: ${number}, by hand ${expected}`,
    ).toBeLessThan(within);
  });
}

/** The same within a share of the expected number. */
function checkShare(words: string, found: () => number | null, expected: number, share = 0.002): void {
  check(words, found, expected, Math.abs(expected) * share);
}

const f11 = thirds(21);
const cloakReading = exposureOf(thirds(22), 100);

/** The part of a lamp's reading at some distance on its axis that another meter gets. */
function shareOf(
  lamp: FlatLamp,
  metered: number,
  at: Triple,
  normal: Triple,
  beam?: (cosine: number) => number,
): number {
  return gathered(lamp, at, normal, beam) / gatheredOnAxis(lamp, metered);
}

describe("hard sun", () => {
  const file = "hard-sun.light";
  const h = 1.74;
  const boots = 0.03;
  const face = onFigure(h, 0.057, 0.933, boots);
  const sun = onTape(face, 5.2, -35, 3.6);
  const atFace = (exposureOf(f11, 100) * 4) / (5.2 * 5.2) / Math.exp(0.5 * Math.LN2);
  /** On a flat receptor anywhere: the inverse square and the cosine. */
  const at = (place: Triple, normal: Triple): number => {
    const d = apart(sun, place);
    const way = towards(place, sun);
    const cosine = way[0] * normal[0] + way[1] * normal[1] + way[2] * normal[2];
    return (atFace * 5.2 * 5.2 * cosine) / (d * d);
  };
  const hinge = (115 * Math.PI) / 180;
  const wingNormal: Triple = [-Math.sin(hinge), Math.cos(hinge), 0];
  const wing: Triple = [0.61 - 0.61 * Math.cos(hinge), 0.6 - 0.61 * Math.sin(hinge), 1.22];
  check("angular size", () => lightOf(file, "sun").angular_size.equivalent, seenBall(0.09, 5.2), 1e-6);
  check("elevation", () => lightOf(file, "sun").elevation, elevation(face, sun), 1e-6);
  check(
    "elevation at the feet",
    () => lightOf(file, "sun").elevation_at_feet,
    elevation([0, 0, 0], sun),
    1e-6,
  );
  const meter = held(face, sun);
  const atMeter = (atFace * 5.2 * 5.2) / Math.pow(apart(sun, meter), 2);
  checkShare("face", () => exposureAt(file, "face"), atMeter, 1e-6);
  checkShare("back", () => exposureAt(file, "back"), at([0, 0.6, 1.22], [0, -1, 0]), 1e-3);
  checkShare("back.left", () => exposureAt(file, "back.left"), at([-1.22 / 3, 0.6, 1.22], [0, -1, 0]), 1e-3);
  checkShare("wing", () => exposureAt(file, "wing"), at(wing, wingNormal), 1e-3);
  checkShare("floor", () => exposureAt(file, "floor"), at([0, 0, 0], [0, 0, 1]), 1e-3);
  checkShare(
    "shadow on the floor",
    () => lightOf(file, "sun").shadow.length,
    ((h + boots) * alongFloor([0, 0, 0], sun)) / (3.6 - h - boots),
    1e-6,
  );
  checkShare(
    "edge on the leaf in mm",
    () => foundFor(file, "sun.shadow_edge"),
    (1000 * 2 * 0.6 * 0.045) / Math.sqrt(5.2 * 5.2 - 0.045 * 0.045),
    1e-6,
  );
  const shin = onFigure(h, 0.045, 0.16, boots);
  check(
    "face to shin",
    () => stopsOver(exposureAt(file, "face"), exposureAt(file, "shin")),
    2 * Math.log2(apart(sun, held(shin, sun)) / apart(sun, meter)),
    1e-6,
  );
  const near = 4.2 + face[1];
  const far = 4.2 + 0.6;
  check("headroom", () => resultOf(file, "headroom"), 1.2 + ((2.44 - 1.2) * near) / far - h - boots, 1e-6);
});

describe("overcast", () => {
  const file = "overcast.light";
  const sky: FlatLamp = { at: [0, -1.5, 3.1], axis: [0, 0, -1], width: 3.6, height: 3.6 };
  const unit = (exposureOf(8, 100) * 0.5) / gatheredOnAxis(sky, 2);
  const face = onFigure(1.7, 0.057, 0.933);
  const of = (at: Triple, normal: Triple): number => unit * gathered(sky, at, normal);
  checkShare("crown", () => exposureAt(file, "crown"), of([0, 0, 1.7], [0, 0, 1]));
  checkShare("front", () => exposureAt(file, "front"), of([0, -0.1, 1.6], [0, -1, 0]));
  // The meter before the face sees the cloth past the head, an ellipsoid of 0.045 h by 0.057 h by 0.067 h.
  const meter = held(face, sky.at);
  const byHead = (piece: Triple): boolean =>
    behind([0, 0, 0.933 * 1.7], [0.045 * 1.7, 0.057 * 1.7, 0.067 * 1.7], meter, piece);
  checkShare(
    "face",
    () => exposureAt(file, "face"),
    unit * gathered(sky, meter, towards(meter, sky.at), undefined, false, byHead),
  );
  checkShare("roll", () => exposureAt(file, "roll"), of([0, 1.8, 1.7], [0, -1, 0]));
  checkShare("roll.left", () => exposureAt(file, "roll.left"), of([-3.55 / 3, 1.8, 1.7], [0, -1, 0]));
  const toLens = towards(meter, [0, -3.8, 1.35]);
  checkShare(
    "dome at the face",
    () => exposureAt(file, "face", null, "dome"),
    unit * gathered(sky, meter, toLens, undefined, true, byHead),
  );
});

describe("window", () => {
  const file = "window.light";
  const cloth: FlatLamp = { at: [-2.2, -0.6, 1.6], axis: [1, 0, 0], width: 1.2, height: 1.8 };
  const unit = exposureOf(thirds(15), 100) / Math.exp(1.5 * Math.LN2) / gatheredOnAxis(cloth, 2);
  checkShare(
    "temple",
    () => exposureAt(file, "window_side", "bay_light"),
    unit * gathered(cloth, [-0.08, 0, 1.25], [-1, 0, 0]),
  );
  checkShare(
    "panelling",
    () => exposureAt(file, "panelling", "bay_light"),
    unit * gathered(cloth, [0, 1.4, 1.2], [0, -1, 0]),
  );
  const loss = Math.log2(500 / 12) + 0.25;
  const r2 = 0.36;
  checkShare(
    "far side",
    () => exposureAt(file, "far_side"),
    (cloakReading * (4 + r2)) / (2.6 * 2.6 + r2) / Math.exp(loss * Math.LN2),
    1e-6,
  );
  // Seated: hips at 0.46 m and a leg's radius instead of half the stature.
  const lift = 0.46 + 0.045 * 1.66 - 0.5 * 1.66;
  const face = onFigure(1.66, 0.057, 0.933, lift, -30);
  check("bearing", () => lightOf(file, "bay_light").bearing, bearing(face, cloth.at), 1e-6);
  check("elevation", () => lightOf(file, "bay_light").elevation, elevation(face, cloth.at), 1e-6);
  check("colour behind the gel", () => lightOf(file, "fill").colour, 1e6 / (1e6 / 5600 - 20), 1e-6);
});

describe("rim", () => {
  const file = "rim.light";
  const face = onFigure(1.78, 0.057, 0.933);
  const keyAt = onTape(face, 2.2, -30, 2.15);
  const cloak: FlatLamp = { at: keyAt, axis: towards(keyAt, face), width: 1.2, height: null };
  const keyOf = (at: Triple, normal: Triple): number => (cloakReading / 8) * shareOf(cloak, 2, at, normal);
  const meter = held(face, keyAt);
  checkShare("face", () => exposureAt(file, "face"), keyOf(meter, towards(meter, keyAt)), 2e-4);
  checkShare("curtain", () => exposureAt(file, "curtain", "key"), keyOf([0, 2.4, 1.5], [0, -1, 0]));
  const ear: Triple = [0.08, 0, 1.66];
  const rimAt = onTape(ear, 2.4, 140, 2.3);
  const snout: FlatLamp = { at: rimAt, axis: towards(rimAt, ear), width: 0.12, height: null };
  const rim =
    (exposureOf(f11, 100) * shareOf(snout, 3, ear, towards(ear, rimAt), gridded(30))) /
    Math.exp((2 + 1 / 3) * Math.LN2);
  checkShare("ear", () => exposureAt(file, "ear", "rim"), rim);
  // Cheeks where an ellipsoid of 0.045 h by 0.057 h looks 45 deg to either side of the nose line.
  const norm = Math.sqrt(0.045 * 0.045 + 0.057 * 0.057) / 1.78;
  const [side, front] = [(0.045 * 0.045) / norm, (0.057 * 0.057) / norm];
  const half = Math.SQRT1_2;
  const lit = keyOf([-side, -front, face[2]], [-half, -half, 0]);
  const shaded = keyOf([side, -front, face[2]], [half, -half, 0]);
  check(
    "cheeks",
    () => stopsOver(exposureAt(file, "lit_cheek"), exposureAt(file, "shaded_cheek")),
    stopsOver(lit, shaded),
    0.005,
  );
});

describe("two people", () => {
  const file = "two-people.light";
  const founder = onFigure(1.8, 0.057, 0.933, 0, 10, [-0.38, 0]);
  const apprentice = onFigure(64.5 * 0.0254, 0.057, 0.933, 0.02, -10, [0.36, -0.2]);
  const middle: Triple = [
    (founder[0] + apprentice[0]) / 2,
    (founder[1] + apprentice[1]) / 2,
    (founder[2] + apprentice[2]) / 2,
  ];
  const at = onTape(middle, 3.4, -20, 2.6);
  const cloak: FlatLamp = { at, axis: towards(at, middle), width: 1.2, height: null };
  const of = (place: Triple, turn: number): number => {
    const angle = (turn * Math.PI) / 180;
    const meter = held(place, at, [Math.sin(angle), -Math.cos(angle), 0]);
    return (cloakReading / 4) * shareOf(cloak, 2, meter, towards(meter, at));
  };
  checkShare("founder", () => exposureAt(file, "founder.face"), of(founder, 10), 5e-4);
  checkShare("apprentice", () => exposureAt(file, "apprentice.face"), of(apprentice, -10), 5e-4);
  const roll: Triple = [0, 2.5, 1.6];
  const bowlAt: Triple = [1.7, 0.9, 1.6];
  const bowl: FlatLamp = { at: bowlAt, axis: towards(bowlAt, roll), width: 0.18, height: null };
  const cubed = (cosine: number): number => cosine * cosine * cosine;
  const metered = gathered(
    { at: [0, 0, 0], axis: [0, -1, 0], width: 0.18, height: null },
    [0, -4, 0],
    [0, 1, 0],
    cubed,
  );
  const wash = (place: Triple): number =>
    (exposureOf(16, 100) / 128 / metered) * gathered(bowl, place, [0, -1, 0], cubed);
  checkShare("wash on the roll", () => exposureAt(file, "roll", "wash"), wash(roll));
  const third = 3.55 / 3;
  checkShare("on its right", () => exposureAt(file, "roll.right", "wash"), wash([third, 2.5, 1.6]));
  checkShare("on its left", () => exposureAt(file, "roll.left", "wash"), wash([-third, 2.5, 1.6]));
});

describe("low ceiling", () => {
  const face = onFigure(1.76, 0.057, 0.933);
  check("height", () => lightOf("low-ceiling.light", "sun").height, face[2] + 1.5, 1e-9);
  checkShare(
    "edge on the leaf in mm",
    () => foundFor("low-ceiling.light", "sun.shadow_edge"),
    (1000 * 2 * 0.6 * 0.045) / Math.sqrt(9 - 0.045 * 0.045),
    1e-6,
  );
  const mended = "low-ceiling-mended.light";
  const seated: Triple = [face[0], face[1], face[2] + 0.3 + 0.045 * 1.76 - 0.5 * 1.76];
  check(
    "elevation when seated",
    () => lightOf(mended, "sun").elevation,
    (Math.asin((2 - seated[2]) / 2.3) * 180) / Math.PI,
    1e-6,
  );
  checkShare(
    "guide number",
    () => fNumberOf(exposureAt(mended, "face"), 200),
    ((22 / 2.3) * Math.SQRT2) / Math.exp(0.25 * Math.LN2),
  );
});

describe("night shift", () => {
  const file = "night-shift.light";
  const foot = 0.3048;
  const face = onFigure(69 * 0.0254, 0.057, 0.933);
  const at = onTape(face, 6.5 * foot, 35, 86 * 0.0254);
  const lamp: FlatLamp = { at, axis: towards(at, face), width: 0.254, height: null };
  // A matt disc of 4500 lm has the luminance 4500 / (pi A); the shutter 1/60 s stands for 1/64 s.
  const unit = 4500 / Math.PI / (Math.PI * 0.127 * 0.127) / 64;
  const r2 = 0.127 * 0.127;
  const d = 6.5 * foot;
  const meter = held(face, at);
  const expected = (4500 / Math.PI / (d * d + r2) / 64) * shareOf(lamp, d, meter, towards(meter, at));
  checkShare("face", () => exposureAt(file, "face", "key"), expected, 1e-5);
  checkShare(
    "f-number",
    () => fNumberOf(exposureAt(file, "face", "key"), 800),
    fNumberOf(expected, 800),
    1e-5,
  );
  check("seen size", () => lightOf(file, "key").angular_size.greatest, seen(0.254, d), 1e-6);
  const planks: Triple = [0, 5 * foot, 4 * foot];
  checkShare(
    "planks",
    () => exposureAt(file, "planks", "key"),
    unit * gathered(lamp, planks, [0, -1, 0]),
    0.01,
  );
  const lantern: Triple = [-2 * foot, foot, 5 * foot];
  check("lantern, distance", () => lightOf(file, "lamp").distance, apart(lantern, face), 1e-6);
  check("lantern, elevation", () => lightOf(file, "lamp").elevation, elevation(face, lantern), 1e-6);
  check("room light", () => reportOf(file).stations[0]?.ambient ?? null, 12 / 64, 1e-9);
});

describe("still life", () => {
  const file = "still-life.light";
  checkShare(
    "rim of the bell",
    () => exposureAt(file, "rim_of_bell"),
    ((exposureOf(f11, 100) / 2) * (9 + 0.0036)) / (1.8 * 1.8 + 0.0036),
    1e-6,
  );
  const strip: FlatLamp = { at: [0, 0, 0], axis: [0, -1, 0], width: 1.2, height: 0.3 };
  checkShare(
    "label",
    () => exposureAt(file, "label"),
    ((exposureOf(f11, 100) * gatheredOnAxis(strip, 1.2)) / gatheredOnAxis(strip, 2)) *
      Math.exp((-4 / 3) * Math.LN2),
  );
  const lens: Triple = [0, -1.3, 1.1];
  const forward = towards(lens, [0.06, 0.045, 0.92]);
  const toLabel: Triple = [0, -0.07 - lens[1], 0.92 - lens[2]];
  const depth = forward[0] * toLabel[0] + forward[1] * toLabel[1] + forward[2] * toLabel[2];
  check("close focus", () => reportOf(file).camera?.close_focus_loss ?? null, closeLoss(0.1, depth), 1e-6);
});
