import type { BlockModel, Recipe } from "../../model/types.js";
import type { PointValue, ShapeValue } from "../../model/values.js";
import type { Angle, Length, Spread } from "../../units/quantity.js";
import { type ToleranceName, tolerance } from "../settings.js";

/** A number of a recipe that was measured, and the recipe with it off. */
export interface Tape {
  /** `camera height`, `back behind`. */
  readonly what: string;
  readonly size: number;
  readonly unit: "m" | "deg";
  readonly off: (by: number) => Recipe;
}

/** How far a number may be off: by its own `+-`, else by a tolerance of the recipe, which may be a share of it. */
function sizeOf(recipe: Recipe, { value, plusMinus }: Measured, name: ToleranceName): number {
  if (plusMinus === undefined) return tolerance(recipe, name) * (name === "size" ? Math.abs(value) : 1);
  return plusMinus.unit === "%" || plusMinus.unit === "1"
    ? plusMinus.value * Math.abs(value)
    : plusMinus.value;
}

interface Measured {
  readonly value: number;
  readonly plusMinus?: Spread;
}

const longer = <Q extends Length | Angle>(quantity: Q, by: number): Q => ({
  ...quantity,
  value: quantity.value + by,
});

/** The tapes of a recipe besides those of its lamps: people, camera, openings, pieces of the set, points. */
export function tapesOf(recipe: Recipe): readonly Tape[] {
  return [...statures(recipe), ...cameraTapes(recipe), ...openings(recipe), ...places(recipe)].filter(
    ({ size }) => size > 0,
  );
}

function statures(recipe: Recipe): readonly Tape[] {
  return recipe.subjects.flatMap((subject, index): readonly Tape[] => {
    const { height } = subject;
    if (height === undefined) return [];
    const off = (by: number): Recipe => ({
      ...recipe,
      subjects: recipe.subjects.map((row, i) => (i === index ? { ...row, height: longer(height, by) } : row)),
    });
    const what = `height of ${subject.name ?? "the subject"}`;
    return [{ what, size: sizeOf(recipe, height, "stature"), unit: "m", off }];
  });
}

function cameraTapes(recipe: Recipe): readonly Tape[] {
  const { camera } = recipe;
  if (camera === null) return [];
  const tapes: Tape[] = [];
  const push = (what: string, size: number, unit: Tape["unit"], off: (by: number) => typeof camera): void => {
    tapes.push({ what: `camera ${what}`, size, unit, off: (by) => ({ ...recipe, camera: off(by) }) });
  };
  const { distance, bearing, height, position } = camera;
  if (position !== undefined) {
    for (const row of lengthsOf(recipe, position)) {
      push(row.what, row.size, "m", (by) => ({ ...camera, position: row.off(by) }));
    }
    return tapes;
  }
  if (distance !== undefined) {
    const { length } = distance;
    push("distance", sizeOf(recipe, length, "tape"), "m", (by) => ({
      ...camera,
      distance: { ...distance, length: longer(length, by) },
    }));
  }
  if (bearing !== undefined) {
    push("bearing", sizeOf(recipe, bearing.angle, "angle"), "deg", (by) => ({
      ...camera,
      bearing: { ...bearing, angle: longer(bearing.angle, by) },
    }));
  }
  if (height !== undefined) {
    push("height", sizeOf(recipe, height, "height"), "m", (by) => ({
      ...camera,
      height: longer(height, by),
    }));
  }
  return tapes;
}

/** The sizes of openings. Both edges of a rectangle are of one make, and off together. */
function openings(recipe: Recipe): readonly Tape[] {
  return recipe.lights.flatMap((light): readonly Tape[] => {
    const { shape } = light;
    if (shape === undefined) return [];
    const edge = edgeOf(shape);
    const size = sizeOf(recipe, edge, "size");
    const off = (by: number): Recipe => ({
      ...recipe,
      lights: recipe.lights.map((row) =>
        row === light ? { ...row, shape: scaled(shape, 1 + by / edge.value) } : row,
      ),
    });
    return [{ what: `size of ${light.name ?? "the light"}`, size, unit: "m", off }];
  });
}

function edgeOf(shape: ShapeValue): Length {
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return shape.diameter;
    case "rectangle":
      return shape.width.value > shape.height.value ? shape.width : shape.height;
    case "capsule":
      return shape.length;
    default:
      return shape satisfies never;
  }
}

function scaled(shape: ShapeValue, by: number): ShapeValue {
  const times = (length: Length): Length => ({ ...length, value: length.value * by });
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return { ...shape, diameter: times(shape.diameter) };
    case "rectangle":
      return { ...shape, width: times(shape.width), height: times(shape.height) };
    case "capsule":
      return { ...shape, length: times(shape.length), diameter: times(shape.diameter) };
    default:
      return shape satisfies never;
  }
}

/** Where pieces of the set, points, and people beside the mark are. */
function places(recipe: Recipe): readonly Tape[] {
  const { set } = recipe;
  const ofBlock = (block: BlockModel, put: (at: PointValue) => Recipe): readonly Tape[] => {
    const at = "at" in block ? (block.at as PointValue | undefined) : undefined;
    if (at === undefined) return [];
    return lengthsOf(recipe, at).map((row) => ({
      what: `${block.name ?? block.block} ${row.what}`,
      size: row.size,
      unit: "m" as const,
      off: (by) => put(row.off(by)),
    }));
  };
  const pieces = (set?.parts ?? []).flatMap((piece, index) =>
    ofBlock(piece, (at) => {
      const parts = (set?.parts ?? []).map((row, i) => (i === index ? { ...row, at } : row));
      return { ...recipe, set: { ...set, parts } as Recipe["set"] };
    }),
  );
  const points = recipe.points.flatMap((point, index) =>
    ofBlock(point, (at) => ({
      ...recipe,
      points: recipe.points.map((row, i) => (i === index ? { ...row, at } : row)),
    })),
  );
  const people = recipe.subjects.flatMap((subject, index) => {
    const put = (changed: typeof subject): Recipe => ({
      ...recipe,
      subjects: recipe.subjects.map((row, i) => (i === index ? changed : row)),
    });
    const own = subject.parts.flatMap((part, k) =>
      ofBlock(part, (at) =>
        put({ ...subject, parts: subject.parts.map((row, i) => (i === k ? { ...row, at } : row)) }),
      ),
    );
    return [...ofBlock(subject, (at) => put({ ...subject, at })), ...own];
  });
  return [...pieces, ...points, ...people];
}

interface PointTape {
  readonly what: string;
  readonly size: number;
  readonly off: (by: number) => PointValue;
}

/** The tapes of a point. What lies at nought lies on the mark or its lines, and has no tape. */
function lengthsOf(recipe: Recipe, point: PointValue): readonly PointTape[] {
  const row = (
    what: string,
    length: Length | null,
    name: ToleranceName,
    put: (length: Length) => PointValue,
  ): readonly PointTape[] =>
    length === null || length.value === 0
      ? []
      : [{ what, size: sizeOf(recipe, length, name), off: (by) => put(longer(length, by)) }];
  switch (point.kind) {
    case "coordinates":
      return [
        ...row("x", point.x, "tape", (x) => ({ ...point, x })),
        ...row("y", point.y, "tape", (y) => ({ ...point, y })),
        ...row("z", point.z, "height", (z) => ({ ...point, z })),
      ];
    case "offset":
      return [
        ...row("left", point.left, "tape", (left) => ({ ...point, left })),
        ...row("right", point.right, "tape", (right) => ({ ...point, right })),
        ...row("ahead", point.ahead, "tape", (ahead) => ({ ...point, ahead })),
        ...row("behind", point.behind, "tape", (behind) => ({ ...point, behind })),
        ...row("up", point.up, "height", (up) => ({ ...point, up })),
        ...row("down", point.down, "height", (down) => ({ ...point, down })),
      ];
    case "between":
      return row("tape", point.tape, "tape", (tape) => ({ ...point, tape }));
    case "named":
    case "midpoint":
      return [];
    default:
      return point satisfies never;
  }
}
