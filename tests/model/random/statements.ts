import {
  type Claim,
  expectation,
  hold,
  isAtLeast,
  isAtMost,
  isBetween,
  isLess,
  isMore,
  isOver,
  isTrue,
  isUnder,
  isWithin,
} from "../../../src/model/make/claims.js";
import {
  dividedBy,
  minus,
  negative,
  plus,
  proportion,
  quotient,
  reading,
  result,
  resultOf,
  type Said,
  times,
} from "../../../src/model/make/results.js";
import { silence, tolerances } from "../../../src/model/make/statements.js";
import {
  type Column,
  column,
  type Sweep,
  sweepCamera,
  sweepLight,
  sweepVariants,
  table,
} from "../../../src/model/make/tables.js";
import { change, removeBlock, withVariant } from "../../../src/model/make/variants.js";
import { adding, comparable, shownIn, toleranceOf } from "../../../src/model/result-types.js";
import { stepped } from "../../../src/model/tables/ends.js";
import type { TableModel } from "../../../src/model/tables/types.js";
import type { Expectation, HoldDial, HoldModel, Recipe } from "../../../src/model/types.js";
import type { ResultType } from "../../../src/model/values.js";
import type { BaseUnit } from "../../../src/units/dimension.js";
import { cm, deg, number, percent, stops } from "../../../src/units/make.js";
import type { Quantity } from "../../../src/units/quantity.js";
import { unitTable } from "../../../src/units/spellings.js";
import { type BlockKind, blocks } from "../../../src/vocabulary/index.js";
import type { PropertyRow } from "../../../src/vocabulary/property.js";
import { type ArgumentType, type ResultRow, results } from "../../../src/vocabulary/results.js";
import { warningTable } from "../../../src/vocabulary/warnings.js";
import { type Draw, drawFrom } from "./draw.js";
import { anyQuantity } from "./quantities.js";
import { recipeFrom } from "./recipe.js";
import { makers } from "./values.js";
import { anyWorld, type World } from "./world.js";

const rows: readonly ResultRow[] = results;

/** The unit in which a quantity of a type is written; null for types that only results have. */
const unitOf: Readonly<Partial<Record<ResultType, BaseUnit>>> = {
  angle: "deg",
  length: "m",
  number: "1",
  stops: "stop",
  "f-number": "f",
  exposure: "lx s",
  illuminance: "lx",
  ev: "EV",
  "colour-temperature": "K",
  mired: "mired",
  energy: "J",
  "luminous-energy": "lm s",
  time: "s",
};

const quantityOf = (draw: Draw, type: ResultType): Quantity | Said => {
  if (type === "contrast") return proportion(draw.int(1, 99) / 10, draw.one([1, 2, 3]));
  const made = anyQuantity(draw, unitOf[type] ?? "1", 0.01, 90, false);
  return draw.once(6) && unitOf[type] !== "f" && unitOf[type] !== "K" && unitOf[type] !== "EV"
    ? { ...made, value: -made.value, written: `-${made.written}` }
    : made;
};

/** A reading at any place that there is, flat or under a dome, or by the name of the place where it has one only. */
function anyReading(draw: Draw, world: World): Said<"reading"> {
  const places = world.places.map((path) => path.join("."));
  const natural = places.filter((path) => /(^|\.)(lit_cheek|shaded_cheek|floor|ceiling)$/.test(path));
  if (natural.length > 0 && draw.once(3)) return reading(draw.one(natural));
  return reading(draw.one(places), {
    receptor: draw.one(["disc", "dome"]),
    towards: makers.point(draw, noRow, world),
    ...(world.lights.length > 0 && draw.once(3)
      ? { only: [...new Set([draw.one(world.lights), draw.one(world.lights)])] }
      : {}),
  });
}

const noRow: PropertyRow = { name: "", type: "point", help: "", example: "", default: "" };

function anyArgument(draw: Draw, world: World, type: ArgumentType): unknown {
  const bodies = (part: RegExp): readonly string[] =>
    world.places.map((path) => path.join(".")).filter((path) => part.test(path));
  switch (type) {
    case "length":
    case "angle":
      return quantityOf(draw, type);
    case "point":
      return makers.point(draw, noRow, world);
    case "light":
    case "lights":
      return draw.one(world.lights);
    case "face":
      return draw.one(bodies(/(^|\.)face$/));
    case "outline":
      return draw.one(bodies(/(^|\.)(face|hair)$/));
    case "reading":
      return anyReading(draw, world);
    case "extent":
      return draw.one(["width", "height", deg(draw.int(1, 90))]);
    case "side":
      return draw.one(["left", "right", "top"]);
    case "frame-side":
      return draw.one(["left", "right", "top", "bottom"]);
    case "surface-name":
      return draw.one([...world.pieces.map(({ name }) => name), "floor"]);
    default:
      return type satisfies never;
  }
}

const needsOf = ({ args, of }: ResultRow, world: World): boolean =>
  (world.lights.length > 0 || (of !== "light" && !args.some(({ type }) => type === "light"))) &&
  (world.subjects.length > 0 || !args.some(({ type }) => type === "face" || type === "outline"));

/** One result of a row, with the arguments that it needs and some of the others. */
export function anyResult(draw: Draw, world: World, row: ResultRow): Said {
  const args: [string, unknown][] = row.args.flatMap(({ name, type, needed, many }) => {
    const chosen = row.oneOf === undefined || !row.oneOf.includes(name) ? needed || draw.once(2) : false;
    if (!chosen) return [];
    const one = (): unknown => anyArgument(draw, world, type);
    return [[name, many === true ? Array.from({ length: draw.int(1, 3) }, one) : one()] as [string, unknown]];
  });
  const one = row.args.find(({ name }) => name === draw.one(row.oneOf ?? [""]));
  if (row.oneOf !== undefined) {
    const name = one?.name ?? row.oneOf[0] ?? "";
    const type = row.args.find((parameter) => parameter.name === name)?.type ?? "length";
    args.push([name, anyArgument(draw, world, type)]);
  }
  const given = Object.fromEntries(args) as never;
  return row.of === "light"
    ? resultOf(draw.one(world.lights), row.name as never, given)
    : result(row.name as never, given);
}

/** A result, a reading, or arithmetic on them. */
function anySaid(draw: Draw, world: World, depth = 2): Said {
  const row = draw.one(rows.filter((one) => needsOf(one, world)));
  const said: Said = draw.once(4) ? anyReading(draw, world) : anyResult(draw, world, row);
  if (depth === 0 || !adding.includes(said.type) || draw.once(2)) return said;
  const other = quantityOf(draw, said.type) as never;
  switch (draw.int(0, 5)) {
    case 0:
      return plus(said, other);
    case 1:
      return minus(plus(said, other), said);
    case 2:
      return times(said, number(draw.int(1, 9) / 4));
    case 3:
      return dividedBy(plus(said, said), number(draw.int(1, 9)));
    case 4:
      return quotient(said, minus(said, other));
    default:
      return negative(draw.once(2) ? negative(said) : plus(said, other));
  }
}

/** Something that may stand beside a type in a claim. */
function besideOf(draw: Draw, world: World, { type }: Said): never {
  const types = [...(Object.keys(unitOf) as ResultType[]), "contrast" as const].filter((one) =>
    comparable(type, one),
  );
  if (type === "reading" && draw.once(2)) return anyReading(draw, world) as never;
  return quantityOf(draw, draw.one(types)) as never;
}

function anyTolerance(draw: Draw, type: ResultType): never {
  const { unit, share } = toleranceOf(type);
  return (
    share && (draw.once(2) || unit === "1")
      ? draw.once(2) && unit === "1"
        ? number(draw.int(1, 9))
        : percent(draw.int(1, 40))
      : anyQuantity(draw, unit, 0.01, 3, false)
  ) as never;
}

function anyClaim(draw: Draw, world: World): Claim {
  const said = anySaid(draw, world);
  if (said.type === "truth") return isTrue(said as Said<"truth">);
  switch (draw.int(0, 6)) {
    case 0:
      return isLess(said, besideOf(draw, world, said));
    case 1:
      return isAtMost(said, besideOf(draw, world, said));
    case 2:
      return isMore(said, besideOf(draw, world, said));
    case 3:
      return isAtLeast(said, besideOf(draw, world, said));
    case 4: {
      const [a, b] = [besideOf(draw, world, said), besideOf(draw, world, said)] as readonly Said[] & never[];
      const numbers = [a, b].map((one) => (one as unknown as Quantity).value);
      const turned = (numbers[0] ?? 0) > (numbers[1] ?? 0);
      // Ratios and readings are not told apart by their number.
      if (numbers.some((one) => one === undefined)) return isBetween(said, a as never, a as never);
      return isBetween(said, (turned ? b : a) as never, (turned ? a : b) as never);
    }
    case 5: {
      if (!["reading", "f-number", "exposure", "ev"].includes(said.type)) break;
      const judge = draw.one([isUnder, isOver]);
      return judge(said as Said<"reading">, stops(draw.int(0, 30) / 10), anyReading(draw, world), stops(0.5));
    }
    default:
      break;
  }
  const target = besideOf(draw, world, said) as Quantity | Said;
  const type = said.type === "number" ? ("type" in target ? target.type : "number") : said.type;
  return isWithin(said, target as never, anyTolerance(draw, type));
}

const someOf = <T>(draw: Draw, most: number, make: () => T): readonly T[] =>
  Array.from({ length: draw.int(0, most) }, make);

function anyExpectation(draw: Draw, world: World): Expectation {
  const claims = [anyClaim(draw, world), ...someOf(draw, 2, () => anyClaim(draw, world))] as const;
  return expectation(claims, {
    surely: draw.once(3),
    because: draw.once(2) ? makers.text(draw, noRow, world) : null,
  });
}

function anyHold(draw: Draw, world: World): HoldModel {
  const said = anyReading(draw, world);
  const dial = (): HoldDial => ({
    light: draw.one(world.lights),
    property: draw.one(["power", "distance", "floor_distance", "height", "elevation"] as const),
  });
  return hold(said, [dial()], draw.once(2) ? null : besideOf(draw, world, said));
}

/**
 * A sweep of any property of a lamp or of the camera, through values or in steps: but for calibrations, whose rows are
 * checked as text, so that not all go with the rest of a lamp made at random.
 */
function anySweep(draw: Draw, world: World, kind: "light" | "camera"): Sweep {
  const light = kind === "light" ? draw.one(world.lights) : "";
  const row = draw.one(
    (blocks[kind].properties as readonly PropertyRow[]).filter(
      ({ type, name }) =>
        type !== "photo" &&
        type !== "calibration" &&
        (name !== "through" || world.pieces.some((piece) => piece.kind === "scrim")),
    ),
  );
  const value = (): never => makers[row.type](draw, row, world) as never;
  const sweep = (through: never): Sweep =>
    kind === "light"
      ? sweepLight(light, row.name as never, through)
      : sweepCamera(row.name as never, through);
  if (stepped.has(row.type) && draw.once(2)) {
    try {
      return sweep({ from: value(), to: value(), count: draw.int(1, 9) } as never);
    } catch (error) {
      // Values of two forms, such as a fraction and a number on the dial, have no steps between them.
      if (!(error instanceof TypeError)) throw error;
    }
  }
  return sweep(Array.from({ length: draw.int(1, 4) }, value) as never);
}

function anyColumn(draw: Draw, world: World): Column {
  const value = anySaid(draw, world);
  const base = shownIn[value.type];
  const units = unitTable.filter((row) => row.base === base);
  return column(value, {
    unit: units.length > 0 && draw.once(2) ? draw.one(units).name : null,
    title: draw.once(2) ? makers.text(draw, noRow, world) : null,
  });
}

function anyTable(draw: Draw, world: World, recipe: Recipe, title: string): TableModel {
  const titles = [null, ...recipe.variants.map((variant) => variant.title)];
  const first =
    world.lights.length > 0 && draw.once(2)
      ? anySweep(draw, world, "light")
      : sweepVariants(Array.from({ length: draw.int(1, 3) }, () => draw.one(titles)));
  const second = recipe.camera !== null && draw.once(2) ? [anySweep(draw, world, "camera")] : [];
  const columns = [anyColumn(draw, world), ...someOf(draw, 3, () => anyColumn(draw, world))] as const;
  const shown = columns.map(({ model }) => model.title);
  return table(title, [first, ...second] as [Sweep] | [Sweep, Sweep], columns, {
    note: draw.once(2) ? makers.text(draw, noRow, world) : null,
    holds: world.lights.length > 0 ? someOf(draw, 1, () => anyHold(draw, world)) : [],
    worksheet: draw.once(2) ? [draw.one(shown)] : [],
  });
}

function withAnyVariant(draw: Draw, world: World, recipe: Recipe, title: string): Recipe {
  const light = world.lights.length > 0 ? draw.one(world.lights) : null;
  const from = draw.once(2) ? undefined : recipe.variants[0];
  const there = light !== null && (from?.recipe ?? recipe).lights.some(({ name }) => name === light);
  const row = draw.one(
    (blocks.light.properties as readonly PropertyRow[]).filter(({ name }) => quiet.has(name)),
  );
  const value = makers[row.type](draw, row, world);
  const other: BlockKind = "camera";
  const changes = [
    ...(there && light !== null ? [change("light", light, { [row.name]: value } as never)] : []),
    ...((from?.recipe ?? recipe).camera !== null && draw.once(3) ? [removeBlock(other)] : []),
    ...(draw.once(3)
      ? [(setUp: Recipe): Recipe => ({ ...setUp, tolerances: tolerances({ tape: cm(4) }) })]
      : []),
  ];
  return withVariant(recipe, title, changes, {
    ...(from === undefined ? {} : { from: from.title }),
    keepExpectations: draw.once(2),
    expectations: someOf(draw, 2, () => anyExpectation(draw, world)),
    holds: there ? someOf(draw, 1, () => anyHold(draw, { ...world, lights: [light] })) : [],
  });
}

/** Properties of a light that go with all the others. */
const quiet: ReadonlySet<string> = new Set(["gel", "grid", "loses", "white", "beam", "shape", "feather"]);

/** A recipe of the builder with statements of every kind, from a seed. */
export function withStatements(seed: number): Recipe {
  const world = anyWorld(drawFrom(seed));
  const draw = drawFrom(seed ^ 0x5bd1e995);
  const lit = world.lights.length > 0;
  const silenced = warningTable.filter(({ safety }) => !safety && draw.once(9));
  let made: Recipe = {
    ...recipeFrom(seed),
    silence: silenced.map(({ code }) => silence(code as never, `so ${makers.text(draw, noRow, world)}`)),
    expectations: someOf(draw, 4, () => anyExpectation(draw, world)),
    holds: lit ? someOf(draw, 1, () => anyHold(draw, world)) : [],
  };
  for (const title of ["one", 'two "with"'].slice(0, draw.int(0, 2)))
    made = withAnyVariant(draw, world, made, title);
  return { ...made, tables: draw.once(2) ? [anyTable(draw, world, made, "T")] : [] };
}
