import { bodyPoints } from "../../../src/check/places.js";
import type { BlockKind } from "../../../src/vocabulary/index.js";
import type { Draw } from "./draw.js";
import { namesOf } from "./names.js";

/** The pieces that a set may hold. */
export const pieceKinds = [
  "flat",
  "paper",
  "card",
  "scrim",
  "table",
  "box",
  "sphere",
  "capsule",
  "disc",
  "panel",
] as const;

/** What stands in a made-up recipe, by name, before anything is said of it. */
export interface World {
  readonly subjects: readonly { readonly name: string | null; readonly points: readonly string[] }[];
  readonly points: readonly string[];
  readonly lights: readonly string[];
  readonly pieces: readonly { readonly kind: (typeof pieceKinds)[number]; readonly name: string }[];
  readonly openings: readonly string[];
  /** Paths of everything that has a place, as the checker gives them. */
  readonly places: readonly (readonly string[])[];
}

const times = <T>(count: number, make: () => T): readonly T[] => Array.from({ length: count }, make);

const withParts: readonly BlockKind[] = ["flat", "paper", "card", "scrim", "panel"];

/** Draws what there is. */
export function anyWorld(draw: Draw): World {
  const next = namesOf(draw);
  const count = draw.int(0, 3);
  const owned = (): readonly string[] =>
    times(draw.int(0, 2), next).filter((name) => !/^(disc|dome|ev|exposure)$/.test(name));
  const subjects = times(count, () => ({
    name: count === 1 && draw.once(2) ? null : next(),
    points: owned(),
  }));
  const points = times(draw.int(0, 2), next);
  const lights = times(draw.int(0, 3), next);
  const pieces = times(draw.int(0, 4), () => ({ kind: draw.one(pieceKinds), name: next() }));
  const openings = times(draw.int(0, 2), next);
  const bodies = subjects.flatMap((subject) =>
    [...bodyPoints, ...subject.points].map((point) =>
      subjects.length === 1 || subject.name === null ? [point] : [subject.name, point],
    ),
  );
  const parts = pieces.flatMap(({ kind, name }) => [
    [name],
    ...(withParts.includes(kind)
      ? [
          [name, "left"],
          [name, "right"],
          [name, "top"],
        ]
      : []),
  ]);
  const single = [...points, ...lights, ...openings, "camera", "mark", "floor", "ceiling"].map((name) => [
    name,
  ]);
  return { subjects, points, lights, pieces, openings, places: [...single, ...bodies, ...parts] };
}
