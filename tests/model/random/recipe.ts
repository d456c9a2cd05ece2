import { block, recipe } from "../../../src/model/make/blocks.js";
import type { BlockModel, Recipe, Setting } from "../../../src/model/types.js";
import { type BlockKind, blocks } from "../../../src/vocabulary/index.js";
import type { BlockRow, PropertyRow } from "../../../src/vocabulary/property.js";
import { thresholdTable } from "../../../src/vocabulary/thresholds.js";
import { toleranceTable } from "../../../src/vocabulary/tolerances.js";
import { type Draw, drawFrom } from "./draw.js";
import { anyQuantity } from "./quantities.js";
import { makers } from "./values.js";
import { anyWorld, type World } from "./world.js";

type Values = Map<string, unknown>;

/** Properties that go with one another only in some ways, by kind: drops what does not go with the rest. */
const tidy: Partial<Record<BlockKind, (draw: Draw, values: Values, world: World) => void>> = {
  light: (draw, values) => {
    if (draw.once(3))
      for (const name of ["distance", "floor_distance", "bearing", "height", "elevation", "bottom_edge"])
        values.delete(name);
    else {
      values.delete("position");
      values.delete(draw.one(["distance", "floor_distance"]));
      const kept = draw.one(["height", "elevation", "bottom_edge"]);
      for (const name of ["height", "elevation", "bottom_edge"]) if (name !== kept) values.delete(name);
    }
    values.delete(draw.one(["calibration", "output"]));
    const output = values.get("output") as { readonly kind: string } | undefined;
    const rate = output?.kind === "flux" || output?.kind === "intensity";
    if (values.has("kind")) values.set("kind", rate ? "steady" : "flash");
  },
  camera: (draw, values) => {
    if (draw.once(2)) values.delete("position");
    else for (const name of ["distance", "bearing", "height"]) values.delete(name);
  },
  point: (draw, values) => {
    if (draw.once(2)) values.delete("at");
    else for (const name of ["up", "ahead", "left", "right"]) values.delete(name);
    values.delete(draw.one(["left", "right"]));
  },
  flat: (draw, values, world) => {
    if (draw.once(2) && world.pieces.some(({ kind }) => kind === "flat"))
      for (const name of ["at", "faces"]) values.delete(name);
    else values.delete("hinge");
  },
};

/** Properties that are always said: without them the block means nothing, or another of its properties does not. */
const needed: Partial<Record<BlockKind, readonly string[]>> = {
  light: [
    "shape",
    "distance",
    "floor_distance",
    "position",
    "height",
    "elevation",
    "bottom_edge",
    "calibration",
    "output",
    "full_power",
    "dial",
  ],
  camera: ["position", "distance", "height"],
  flat: ["at", "hinge"],
};

function anyBlock<K extends BlockKind>(
  draw: Draw,
  kind: K,
  name: string | null,
  world: World,
  parts: readonly BlockModel[] = [],
): BlockModel<K> {
  const row: BlockRow = blocks[kind];
  const values: Values = new Map();
  for (const property of row.properties) {
    const always = property.default === "needed" || needed[kind]?.includes(property.name) === true;
    if (!always && draw.once(2)) continue;
    if (property.type === "hinge" && !world.pieces.some((piece) => piece.kind === "flat")) continue;
    if (property.name === "through" && !world.pieces.some((piece) => piece.kind === "scrim")) continue;
    // A light goes through a cloth or into a surface, not both.
    if (property.name === (values.has("into") ? "through" : values.has("through") ? "into" : "")) continue;
    values.set(property.name, drawValue(draw, property, world));
  }
  tidy[kind]?.(draw, values, world);
  return block(kind, name, Object.fromEntries(values) as never, parts as never);
}

function drawValue(draw: Draw, property: PropertyRow, world: World): unknown {
  return makers[property.type](draw, property, world);
}

function settings(
  draw: Draw,
  table: readonly {
    readonly name: string;
    readonly unit: string;
    readonly range?: readonly [number, number];
  }[],
): readonly Setting[] {
  return table
    .filter(() => draw.once(3))
    .map(({ name, unit, range: [low, high] = [0, 50] }) => {
      const { value, unit: base, written } = anyQuantity(draw, unit as never, low, high, false);
      return { name, value, unit: base, written };
    });
}

/** A recipe that the builder can make, from a seed: every kind of block, every form of value, names of every sort. */
export function recipeFrom(seed: number): Recipe {
  const draw = drawFrom(seed);
  const world = anyWorld(draw);
  const maybe = <T>(make: () => T): T | null => (draw.once(2) ? make() : null);
  const point = (name: string): BlockModel<"point"> => anyBlock(draw, "point", name, world);
  const surfacesOfRoom = (): readonly BlockModel[] => [
    ...(["walls", "ceiling", "floor"] as const).flatMap((kind) =>
      draw.once(2) ? [anyBlock(draw, kind, null, world)] : [],
    ),
    ...["left", "right", "back", "front"].flatMap((side) =>
      draw.once(3) ? [anyBlock(draw, "wall", side, world)] : [],
    ),
    ...world.openings.map((name) => anyBlock(draw, "opening", name, world)),
  ];
  const needsRoom = world.openings.length > 0;
  return recipe(makers.text(draw, noRow, world), {
    about: maybe(() => anyBlock(draw, "about", null, world)),
    room: needsRoom || draw.once(2) ? anyBlock(draw, "room", null, world, surfacesOfRoom()) : null,
    set: anyBlock(
      draw,
      "set",
      null,
      world,
      world.pieces.map(({ kind, name }) => anyBlock(draw, kind, name, world)),
    ),
    subjects: world.subjects.map(({ name, points }) =>
      anyBlock(draw, "subject", name, world, points.map(point)),
    ),
    points: world.points.map(point),
    lights: world.lights.map((name) => {
      const stand = draw.once(2) ? [anyBlock(draw, "stand", null, world)] : [];
      return anyBlock(draw, "light", name, world, stand);
    }),
    camera: maybe(() => anyBlock(draw, "camera", null, world)),
    meter: maybe(() => anyBlock(draw, "meter", null, world)),
    intent: maybe(() => anyBlock(draw, "intent", null, world)),
    tolerances: settings(draw, toleranceTable),
    thresholds: settings(draw, thresholdTable),
  });
}

const noRow: PropertyRow = { name: "", type: "text", help: "", example: "", default: "" };
