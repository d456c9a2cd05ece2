import {
  array,
  boolean,
  enum as choice,
  discriminatedUnion,
  lazy,
  literal,
  nullable,
  number,
  object,
  optional,
  string,
  union,
  type ZodType,
} from "zod";
import type { BaseUnit } from "../units/dimension.js";
import { type BlockKind, blocks } from "../vocabulary/index.js";
import type { BlockRow, PropertyRow } from "../vocabulary/property.js";
import type { ValueType } from "../vocabulary/value-types.js";
import { warningTable } from "../vocabulary/warnings.js";
import { stepForms } from "./tables/types.js";
import type { Recipe } from "./types.js";

/** How a checked recipe looks as plain data. It is derived from the vocabulary, row by row; origins are left out. */

const written = string();
const spread = object({ value: number(), unit: string(), written }).meta({ id: "tolerance" });

const quantity = (unit: BaseUnit, id: string) =>
  object({ value: number(), unit: literal(unit), written, plusMinus: optional(spread) }).meta({ id });

const length = quantity("m", "length");
const angle = quantity("deg", "angle");
const plain = quantity("1", "number");
const stops = quantity("stop", "stops");
const timeQuantity = quantity("s", "time");
const energyQuantity = quantity("J", "energy");
const wattsQuantity = quantity("W", "watts");
const massQuantity = quantity("kg", "mass");
const illuminanceQuantity = quantity("lx", "illuminance");
const fNumberQuantity = quantity("f", "f_number");
const sensitivityQuantity = quantity("ISO", "sensitivity");
const temperatureQuantity = quantity("K", "temperature");
const miredQuantity = quantity("mired", "mired");
const efficacyQuantity = quantity("lm/W", "efficacy");
const luminousEnergyQuantity = quantity("lm s", "luminous_energy");
const fluxQuantity = quantity("lm", "flux");
const intensityQuantity = quantity("cd", "intensity");
const intensityTimeQuantity = quantity("cd s", "intensity_time");

const suns = [
  object({ kind: literal("sunlight"), elevation: angle, written }),
  object({
    kind: literal("sun_at"),
    latitude: angle,
    longitude: angle,
    on: string(),
    time: string(),
    written,
  }),
] as const;

const overcastSky = object({
  kind: literal("overcast"),
  sun: optional(discriminatedUnion("kind", suns)),
  metered: optional(illuminanceQuantity),
  written,
});

const point: ZodType = lazy(() =>
  discriminatedUnion("kind", [
    object({ kind: literal("coordinates"), x: length, y: length, z: length, written }),
    object({
      kind: literal("offset"),
      from: nullable(point),
      left: nullable(length),
      right: nullable(length),
      ahead: nullable(length),
      behind: nullable(length),
      up: nullable(length),
      down: nullable(length),
      written,
    }),
    object({ kind: literal("named"), path: array(string()), written }),
    object({ kind: literal("between"), a: point, b: point, tape: length, from: choice(["a", "b"]), written }),
    object({ kind: literal("midpoint"), a: point, b: point, written }),
  ]),
).meta({ id: "point" });

const bearing = object({ side: choice(["left", "right"]), angle, written });
const rectangle = object({ width: length, height: length, written });
const resultType = string();

const expr: ZodType = lazy(() =>
  discriminatedUnion("kind", [
    object({
      kind: literal("value"),
      type: resultType,
      quantity: object({ value: number(), unit: string(), written, plusMinus: optional(spread) }),
    }),
    object({
      kind: literal("reading"),
      type: resultType,
      station: string(),
      receptor: choice(["disc", "dome"]),
      towards: nullable(point),
      lights: array(string()),
    }),
    object({
      kind: literal("result"),
      type: resultType,
      name: string(),
      of: nullable(string()),
      args: array(object({ name: string(), value: union([string(), expr, point]) })),
    }),
    object({
      kind: literal("sum"),
      type: resultType,
      terms: array(object({ sign: choice(["+", "-"]), value: expr })),
    }),
    object({
      kind: literal("product"),
      type: resultType,
      factors: array(object({ sign: choice(["*", "/"]), value: expr })),
    }),
    object({ kind: literal("negation"), type: resultType, operand: expr }),
  ]),
).meta({ id: "expression" });

const valueSchemas: { readonly [T in ValueType]: ZodType } = {
  length,
  angle,
  time: timeQuantity,
  energy: energyQuantity,
  watts: wattsQuantity,
  mass: massQuantity,
  illuminance: illuminanceQuantity,
  fraction: plain,
  number: plain,
  aperture: fNumberQuantity,
  sensitivity: sensitivityQuantity,
  temperature: temperatureQuantity,
  stops,
  mired: miredQuantity,
  rectangle,
  volume: object({ width: length, depth: length, height: length, written }),
  pixels: object({ width: number(), height: number(), written }),
  point,
  direction: discriminatedUnion("kind", [
    object({ kind: literal("bearing"), bearing, written }),
    object({ kind: literal("point"), point, written }),
    object({ kind: literal("straight"), word: choice(["up", "down"]), written }),
  ]),
  bearing,
  tape: object({ length, from: nullable(point), written }),
  shape: discriminatedUnion("kind", [
    object({ kind: literal("disc"), diameter: length, written }),
    object({ kind: literal("sphere"), diameter: length, written }),
    object({ kind: literal("rectangle"), width: length, height: length, written }),
    object({ kind: literal("capsule"), length, diameter: length, written }),
  ]),
  calibration: discriminatedUnion("kind", [
    object({
      kind: literal("metered"),
      fNumber: fNumberQuantity,
      at: length,
      iso: sensitivityQuantity,
      written,
    }),
    object({ kind: literal("guide_number"), number: length, iso: sensitivityQuantity, written }),
    object({ kind: literal("efficacy"), efficacy: efficacyQuantity, written }),
    object({ kind: literal("candelas"), file: string(), axial: number(), written }),
  ]),
  output: discriminatedUnion("kind", [
    object({ kind: literal("luminous_energy"), amount: luminousEnergyQuantity, written }),
    object({ kind: literal("flux"), amount: fluxQuantity, written }),
    object({ kind: literal("intensity"), amount: intensityQuantity, written }),
    object({ kind: literal("intensity_time"), amount: intensityTimeQuantity, written }),
  ]),
  power: discriminatedUnion("kind", [
    object({ kind: literal("full"), written }),
    object({ kind: literal("off"), written }),
    object({ kind: literal("fraction"), fraction: plain, written }),
    object({ kind: literal("below"), stops, written }),
    object({ kind: literal("energy"), energy: energyQuantity, written }),
    object({ kind: literal("dial"), number: plain, written }),
  ]),
  dial: object({ full: plain, perStop: plain, written }),
  beam: discriminatedUnion("kind", [
    object({ kind: literal("lambertian"), written }),
    object({ kind: literal("cosine_power"), exponent: plain, written }),
    object({
      kind: literal("measured"),
      file: string(),
      photometry: object({
        system: choice(["C", "B"]),
        vertical: array(number()),
        horizontal: array(number()),
        candela: array(array(number())),
      }),
      written,
    }),
  ]),
  gels: object({
    items: array(
      object({ tint: choice(["warm", "cool", "neutral"]), shift: miredQuantity, loses: stops, written }),
    ),
    written,
  }),
  surface: object({ name: nullable(string()), reflectance: plain, written }),
  hinge: object({ edge: choice(["left", "right"]), of: string(), written }),
  mark: object({
    left: nullable(length),
    right: nullable(length),
    back: nullable(length),
    front: nullable(length),
    written,
  }),
  arms: discriminatedUnion("kind", [
    object({ kind: literal("hanging"), written }),
    object({ kind: literal("raised"), written }),
    object({ kind: literal("spread"), elevation: angle, written }),
    object({ kind: literal("ahead"), elevation: angle, written }),
  ]),
  natural_light: discriminatedUnion("kind", [
    ...suns,
    overcastSky,
    object({
      kind: literal("window"),
      size: rectangle,
      distance: length,
      sky: optional(overcastSky),
      written,
    }),
  ]),
  contrast: object({ stops: number(), plusMinus: nullable(number()), written }),
  level: object({ stops, side: choice(["under", "over"]), of: expr, written }),
  scale: object({ value: number(), unit: string(), written, plusMinus: optional(spread) }),
  word: string(),
  name: string(),
  text: string(),
  texts: array(string()),
  photo: object({ file: string(), took: array(string()), written }),
};

function valueSchema(row: PropertyRow): ZodType {
  const schema =
    row.type === "word" && row.words !== undefined ? choice([...row.words]) : valueSchemas[row.type];
  return optional(schema).meta({ description: row.help });
}

function blockSchema(kind: BlockKind): ZodType {
  const row: BlockRow = blocks[kind];
  const parts = row.parts.map((part) => blockSchemaOf(part as BlockKind));
  const [first, second, ...more] = parts;
  const part = first === undefined ? null : second === undefined ? first : union([first, second, ...more]);
  return object({
    block: literal(kind),
    name: nullable(string()),
    ...Object.fromEntries(row.properties.map((property) => [property.name, valueSchema(property)])),
    parts: part === null ? array(object({})).max(0) : array(part),
  }).meta({ id: `block_${kind}`, description: row.help });
}

const made = new Map<BlockKind, ZodType>();

function blockSchemaOf(kind: BlockKind): ZodType {
  const before = made.get(kind);
  if (before !== undefined) return before;
  const schema = blockSchema(kind);
  made.set(kind, schema);
  return schema;
}

const setting = object({ name: string(), value: number(), unit: string(), written });

const tolerance = object({ value: number(), kind: choice(["difference", "share"]) });

const claim = discriminatedUnion("kind", [
  object({ kind: literal("true"), value: expr }),
  object({
    kind: literal("within"),
    value: expr,
    target: expr,
    side: nullable(object({ word: choice(["under", "over"]), of: expr })),
    tolerance,
  }),
  object({ kind: literal("between"), value: expr, low: expr, high: expr }),
  object({ kind: literal("compare"), value: expr, sign: choice(["<", "<=", ">", ">="]), target: expr }),
]);

const hold = object({
  written,
  reading: expr,
  target: nullable(expr),
  by: array(
    object({
      light: string(),
      property: choice(["power", "distance", "floor_distance", "height", "elevation"]),
    }),
  ),
});

/** A value of any property, as its type has it; null where rows are checked as text. */
const [someValue, otherValue, ...moreValues] = Object.values(valueSchemas) as [
  ZodType,
  ZodType,
  ...ZodType[],
];
const anyValue = nullable(union([someValue, otherValue, ...moreValues]));

const sweep = object({
  path: string(),
  target: discriminatedUnion("kind", [
    object({
      kind: literal("property"),
      block: choice(["light", "camera"]),
      name: nullable(string()),
      property: string(),
    }),
    object({ kind: literal("text") }),
    object({ kind: literal("variant") }),
  ]),
  range: discriminatedUnion("kind", [
    object({
      kind: literal("list"),
      unit: nullable(string()),
      values: array(
        object({
          written,
          value: anyValue,
          number: nullable(number()),
        }),
      ),
    }),
    object({
      kind: literal("steps"),
      steps: object({
        form: choice(stepForms),
        scale: choice(["linear", "stops"]),
        from: number(),
        to: number(),
        step: number(),
        count: number(),
        unit: string(),
      }),
    }),
  ]),
});

const table = object({
  title: string(),
  written,
  note: nullable(string()),
  sweeps: array(sweep).min(1).max(2),
  columns: array(object({ title: string(), value: expr, unit: nullable(string()) })),
  holds: array(hold),
  worksheet: array(string()),
});

/** The schema of a checked recipe, format 1. */
export const recipeSchema: ZodType<Recipe> = object({
  format: literal(1),
  kind: choice(["recipe", "kit", "session"]),
  title: string(),
  of: nullable(string()),
  ofVariant: optional(string()),
  uses: array(object({ name: string(), written })),
  lets: array(object({ name: string(), written })),
  definitions: array(object({ name: string(), written })),
  about: nullable(blockSchemaOf("about")),
  room: nullable(blockSchemaOf("room")),
  set: nullable(blockSchemaOf("set")),
  subjects: array(blockSchemaOf("subject")),
  points: array(blockSchemaOf("point")),
  lights: array(blockSchemaOf("light")),
  camera: nullable(blockSchemaOf("camera")),
  meter: nullable(blockSchemaOf("meter")),
  intent: nullable(blockSchemaOf("intent")),
  tolerances: array(setting),
  thresholds: array(setting),
  silence: array(object({ code: choice(warningTable.map((row) => row.code)), because: string() })),
  expectations: array(
    object({ written, surely: boolean(), claims: array(claim), because: nullable(string()) }),
  ),
  holds: array(hold),
  variants: array(
    object({
      title: string(),
      from: nullable(string()),
      keeps: boolean(),
      recipe: lazy((): ZodType => recipeSchema),
    }),
  ),
  tables: array(table),
  later: array(
    object({
      statement: choice(["solve", "measured"]),
      title: nullable(string()),
      written,
    }),
  ),
}).meta({ id: "recipe" }) as unknown as ZodType<Recipe>;
