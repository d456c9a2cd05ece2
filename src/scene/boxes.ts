import type { ScenePolygon } from "./types.js";

/** A box of the set. */
export interface SceneBox {
  readonly kind: "box";
  readonly name: string;
  /** Its six sides, which look outwards. */
  readonly sides: readonly ScenePolygon[];
}

/** The boxes among the flat surfaces of a scene: the sides of one follow each other, the first has the box's name. */
export function boxesOf(polygons: readonly ScenePolygon[]): readonly SceneBox[] {
  const boxes: SceneBox[] = [];
  for (let i = 0; i < polygons.length; i++) {
    const { kind, name } = polygons[i] as ScenePolygon;
    if (kind !== "box") continue;
    boxes.push({ kind: "box", name, sides: polygons.slice(i, i + SIDES) });
    i += SIDES - 1;
  }
  return boxes;
}

const SIDES = 6;
