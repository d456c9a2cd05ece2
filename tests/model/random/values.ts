import { quote } from "../../../src/core/quote.js";
import {
  arms,
  belowFull,
  capsule,
  cosinePower,
  dial,
  dialNumber,
  disc,
  efficacy,
  fractionOfFull,
  full,
  gel,
  gels,
  guideNumber,
  lambertian,
  metered,
  off,
  output,
  rectangle,
  setTo,
  sphere,
} from "../../../src/model/make/lamps.js";
import {
  along,
  at,
  between,
  left,
  midpoint,
  named,
  offset,
  right,
  straight,
  tape,
  towards,
} from "../../../src/model/make/points.js";
import { pixels, size, volume } from "../../../src/model/make/sizes.js";
import {
  contrast,
  edgeOf,
  markFrom,
  overcast,
  ratio,
  reflecting,
  sunlight,
  surface,
  window,
} from "../../../src/model/make/surroundings.js";
import type { BearingValue, PointValue, ValueShapes } from "../../../src/model/values.js";
import type { BaseUnit } from "../../../src/units/dimension.js";
import { cdSeconds, inUnit, lmSeconds, mired, number, stops } from "../../../src/units/make.js";
import type { Length, Quantity } from "../../../src/units/quantity.js";
import type { PropertyRow } from "../../../src/vocabulary/property.js";
import { surfaces } from "../../../src/vocabulary/surfaces.js";
import type { ValueType } from "../../../src/vocabulary/value-types.js";
import type { Draw } from "./draw.js";
import { anyFraction, anyQuantity, anyShare, anyShutter, anySide } from "./quantities.js";
import type { World } from "./world.js";

/** Draws one value of each type of the vocabulary, within the range of its property. */
type Makers = { readonly [T in ValueType]: (draw: Draw, row: PropertyRow, world: World) => ValueShapes[T] };

function measured<U extends BaseUnit>(unit: U): (draw: Draw, row: PropertyRow) => Quantity<U> {
  return (draw, row) => anyQuantity(draw, unit, row.range?.[0] ?? 0, row.range?.[1] ?? 100) as Quantity<U>;
}

const length = (draw: Draw, low: number, high: number): Length => anyQuantity(draw, "m", low, high) as Length;

function anyPoint(draw: Draw, world: World, depth = 2): PointValue {
  const kind = draw.int(0, depth === 0 ? 2 : 4);
  const step = (): Length => length(draw, -9, 9);
  switch (kind) {
    case 0:
      return at(step(), step(), step());
    case 1:
      return named(...draw.one(world.places));
    case 2: {
      const side = draw.one(["left", "right"] as const);
      return offset({
        [side]: step(),
        ahead: draw.once(2) ? step() : null,
        behind: draw.once(3) ? step() : null,
        up: draw.once(2) ? step() : null,
        down: draw.once(4) ? step() : null,
        from: depth > 0 && draw.once(3) ? anyPoint(draw, world, depth - 1) : null,
      });
    }
    case 3: {
      const [a, b] = [anyPoint(draw, world, depth - 1), anyPoint(draw, world, depth - 1)];
      const from = a.written === b.written ? "a" : draw.one(["a", "b"] as const);
      return between(a, b, length(draw, 0, 3), from);
    }
    default:
      return midpoint(anyPoint(draw, world, depth - 1), anyPoint(draw, world, depth - 1));
  }
}

function anyBearing(draw: Draw, high = 180): BearingValue {
  const angle = anyQuantity(draw, "deg", 0, high) as Quantity<"deg">;
  return draw.once(2) ? left(angle) : right(angle);
}

const hardTexts = [
  "",
  'say "so"',
  "back\\slash",
  "two\nlines\tand a tab",
  "\u200b\u202e\ufeff",
  "{}#,:`",
  "ﬁn — ½",
  "\u{1f4a1}",
];

/** A text with letters of every sort in it, hidden ones too, but no half of a pair. */
function text(draw: Draw): string {
  if (draw.once(2)) return draw.one(hardTexts);
  const ranges = [
    [0x20, 0x7e],
    [0, 0x1f],
    [0xa0, 0x24f],
    [0x2000, 0x206f],
    [0x4e00, 0x4eff],
    [0x1f300, 0x1f5ff],
    [0xe000, 0xe0ff],
  ] as const;
  return Array.from({ length: draw.int(0, 20) }, () => {
    const [low, high] = draw.once(3) ? draw.one(ranges) : ranges[0];
    return String.fromCodePoint(draw.int(low, high));
  }).join("");
}

export const makers: Makers = {
  length: measured("m"),
  angle: measured("deg"),
  time: (draw, row) =>
    row.name === "shutter" || row.name === "sync"
      ? anyShutter(draw, row.range?.[0] ?? 0, row.range?.[1] ?? 1)
      : measured("s")(draw, row),
  energy: measured("J"),
  watts: measured("W"),
  mass: measured("kg"),
  illuminance: measured("lx"),
  fraction: (draw) => anyShare(draw),
  number: measured("1"),
  aperture: measured("f"),
  sensitivity: measured("ISO"),
  temperature: measured("K"),
  stops: measured("stop"),
  mired: measured("mired"),
  rectangle: (draw, row) => {
    const side = (): Length => anySide(draw, row.range?.[0] ?? 0.01, row.range?.[1] ?? 10);
    return size(side(), side());
  },
  volume: (draw, row) => {
    const side = (): Length => anySide(draw, row.range?.[0] ?? 0.01, row.range?.[1] ?? 10);
    return volume(side(), side(), side());
  },
  pixels: (draw) => pixels(draw.int(16, 100_000), draw.int(16, 100_000)),
  point: (draw, _row, world) => anyPoint(draw, world),
  direction: (draw, _row, world) => {
    const kind = draw.int(0, 2);
    if (kind === 0) return along(anyBearing(draw));
    return kind === 1 ? straight(draw.one(["up", "down"] as const)) : towards(anyPoint(draw, world));
  },
  bearing: (draw, row) => anyBearing(draw, row.range?.[1]),
  tape: (draw, row, world) => {
    const run = length(draw, row.range?.[0] ?? 0, row.range?.[1] ?? 100);
    return draw.once(3) ? tape(run, anyPoint(draw, world, 1)) : tape(run);
  },
  shape: (draw) => {
    const kind = draw.int(0, 3);
    const side = (): Length => length(draw, 0.001, 30);
    if (kind === 0) return disc(side());
    if (kind === 1) return sphere(side());
    if (kind === 2) return rectangle(anySide(draw, 0.001, 30), anySide(draw, 0.001, 30));
    const [a, b] = [side(), side()];
    return a.value >= b.value ? capsule(a, b) : capsule(b, a);
  },
  calibration: (draw) => {
    const kind = draw.int(0, 2);
    const iso = anyQuantity(draw, "ISO", 1, 1e5) as Quantity<"ISO">;
    if (kind === 0)
      return metered(anyQuantity(draw, "f", 0.5, 128) as Quantity<"f">, length(draw, 0.05, 100), iso);
    if (kind === 1) return guideNumber(length(draw, 0.1, 2000), iso);
    return efficacy(anyQuantity(draw, "lm/W", 0.1, 683) as Quantity<"lm/W">);
  },
  output: (draw) =>
    output(
      draw.one([
        lmSeconds(draw.int(1, 99_999) / 10),
        cdSeconds(draw.int(1, 9999)),
        inUnit("lm", "lm", draw.int(1, 9999)),
        inUnit("cd", "cd", draw.int(1, 999) / 100),
      ]),
    ),
  power: (draw) => {
    const kind = draw.int(0, 5);
    if (kind === 0) return full;
    if (kind === 1) return off;
    if (kind === 2) return fractionOfFull(anyFraction(draw));
    if (kind === 3) return belowFull(anyQuantity(draw, "stop", 0, 12) as Quantity<"stop">);
    if (kind === 4) return setTo(anyQuantity(draw, "J", 0.01, 0.1) as Quantity<"J">);
    return dialNumber(number(draw.int(-20, 10) / 2));
  },
  dial: (draw) => dial(number(draw.int(5, 20)), number(draw.int(1, 30) / 10)),
  beam: (draw) =>
    draw.once(2) ? lambertian : cosinePower(anyQuantity(draw, "1", 0.1, 200) as Quantity<"1">),
  gels: (draw) => {
    const one = () => {
      const tint = draw.one(["warm", "cool", "neutral"] as const);
      const shift = tint === "neutral" ? mired(0) : (anyQuantity(draw, "mired", 0, 500) as Quantity<"mired">);
      return gel(
        tint,
        shift,
        draw.once(2) ? stops(0) : (anyQuantity(draw, "stop", 0.01, 12) as Quantity<"stop">),
      );
    };
    return draw.once(2) ? gels(one()) : gels(...Array.from({ length: draw.int(2, 4) }, one));
  },
  surface: (draw) => {
    const by = surface(draw.one(surfaces).name);
    return by === null || draw.once(2) ? reflecting(anyShare(draw)) : by;
  },
  hinge: (draw, _row, world) => {
    const flats = world.pieces.filter(({ kind }) => kind === "flat");
    return edgeOf(draw.one(["left", "right"] as const), draw.one(flats).name);
  },
  mark: (draw) => {
    const side = draw.one(["left", "right"] as const);
    const end = draw.one(["back", "front"] as const);
    return markFrom({ [side]: length(draw, 0, 9), ...(draw.once(2) ? { [end]: length(draw, 0, 9) } : {}) });
  },
  arms: (draw) => {
    const kind = draw.one(["hanging", "raised", "spread", "ahead"] as const);
    if (kind === "hanging" || kind === "raised") return arms(kind);
    return arms(kind, anyQuantity(draw, "deg", -90, 90) as Quantity<"deg">);
  },
  natural_light: (draw) => {
    const kind = draw.int(0, 2);
    if (kind === 0) return sunlight(anyQuantity(draw, "deg", 0, 90) as Quantity<"deg">);
    if (kind === 1) return overcast;
    return window(size(anySide(draw, 0.1, 9), anySide(draw, 0.1, 9)), length(draw, 0.05, 100));
  },
  contrast: (draw) => {
    const tolerance = draw.once(2) ? (anyQuantity(draw, "stop", 0.1, 2, false) as Quantity<"stop">) : null;
    if (draw.once(2)) return ratio(draw.int(1, 90) / 10, draw.int(1, 30) / 10, tolerance);
    const plain = anyQuantity(draw, "stop", 0, 9, false);
    return contrast(plain.value, plain.written, tolerance);
  },
  level: (draw, _row, world) => {
    const depth = anyQuantity(draw, "stop", 0, 9) as Quantity<"stop">;
    const side = draw.one(["under", "over"] as const);
    const light = world.lights[0];
    const word = light === undefined ? "camera" : null;
    const point = word === null && light !== undefined ? named(light) : named("camera");
    const of = {
      kind: "reading",
      type: "reading",
      station: "floor",
      receptor: "dome",
      towards: point,
      lights: [],
    } as const;
    return {
      stops: depth,
      side,
      of,
      written: `${said(depth)} ${side} floor.dome(towards: ${point.written})`,
    };
  },
  scale: (draw, row) => anyQuantity(draw, row.unit ?? "1", ...(row.range ?? ([0, 50] as const)), false),
  word: (draw, row) => draw.one(row.words ?? [""]),
  name: (draw, row, world) => {
    const kinds =
      row.name === "through" ? ["scrim"] : ["flat", "paper", "card", "panel", "disc", "scrim", "table"];
    const fitting = world.pieces.filter(({ kind }) => kinds.includes(kind)).map(({ name }) => name);
    return draw.one(
      row.name === "through" ? fitting : [...fitting, "ceiling", "floor", "wall_left", "wall_back"],
    );
  },
  text,
  texts: (draw) => Array.from({ length: draw.int(0, 3) }, () => text(draw)),
  photo: (draw) => {
    const file = `./photo-${draw.int(1, 999)}.jpg`;
    return { file, took: [], written: `photo(${quote(file)})` };
  },
};

const said = (q: Quantity): string =>
  q.plusMinus === undefined ? q.written : `${q.written} +- ${q.plusMinus.written}`;
