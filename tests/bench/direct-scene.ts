import {
  capsule,
  disc,
  fractionOfFull,
  guideNumber,
  metered,
  output,
  rectangle,
} from "../../src/model/make/lamps.js";
import { at, left, named, offset, right, tape, towards } from "../../src/model/make/points.js";
import { size, volume } from "../../src/model/make/sizes.js";
import { edgeOf, markFrom } from "../../src/model/make/surroundings.js";
import type { Recipe } from "../../src/model/types.js";
import {
  cm,
  deg,
  fNumber,
  iso,
  lmSeconds,
  m,
  number,
  percent,
  shutterOneOver,
} from "../../src/units/make.js";
import { block, recipe } from "../helpers/models.js";

/**
 * The scene of the direct-light bench: a room of 6 x 8 x 3 m, one person, two hinged flats and a paper roll, a box of
 * 60 x 90 cm as the key, a disc of 1.2 m as the fill, a tube of 8 x 4 cm as the rim; 19 stations, 16 polygons, 7
 * bodies, nothing hidden.
 */
export const threeLights: Recipe = recipe({
  room: block("room", null, {
    size: volume(m(6), m(8), m(3)),
    mark: markFrom({ left: m(3), back: m(3) }),
    parts: [block("walls", null, { reflectance: percent(50) })],
  }),
  subjects: [
    block("subject", null, {
      height: m(1.7),
      parts: [
        block("point", "brow", { up: m(1.6), ahead: cm(9), faces: towards(named("camera")) }),
        block("point", "hand", { up: cm(80), left: cm(30), faces: towards(named("key")) }),
      ],
    }),
  ],
  set: block("set", null, {
    parts: [
      block("flat", "back", { size: size(m(1.2), m(2.4)), at: offset({ behind: m(1.2) }) }),
      block("flat", "side", { size: size(m(1.2), m(2.4)), hinge: edgeOf("left", "back"), opening: deg(115) }),
      block("paper", "roll", {
        width: m(2.7),
        run: m(3),
        hangs: m(2.6),
        curve: cm(40),
        at: offset({ behind: m(1.5) }),
      }),
    ],
  }),
  lights: [
    block("light", "key", {
      role: "key",
      shape: rectangle(cm(60), cm(90)),
      calibration: metered(fNumber(8), m(2), iso(100)),
      power: fractionOfFull(number(0.25)),
      distance: tape(m(2.2)),
      bearing: left(deg(30)),
      height: m(2.2),
    }),
    block("light", "fill", {
      shape: disc(cm(120)),
      output: output(lmSeconds(1000)),
      distance: tape(m(3)),
      bearing: right(deg(20)),
      elevation: deg(15),
    }),
    block("light", "rim", {
      shape: capsule(cm(8), cm(4)),
      calibration: guideNumber(m(40), iso(100)),
      position: at(m(1.5), m(1.6), m(2.1)),
      aim: named("hair"),
    }),
  ],
  camera: block("camera", null, {
    held: "upright",
    distance: tape(m(3)),
    height: m(1.4),
    aperture: fNumber(8),
    shutter: shutterOneOver(125),
    sensitivity: iso(100),
  }),
});
