import type { CameraModel, PartModel, Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import type { Scene } from "../../scene/types.js";
import type { Angle, Length } from "../../units/quantity.js";
import { ceilTo, fixed, floorTo } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { coverageOf } from "./coverage.js";

/** One change by which the whole picture would be set or subject. */
export interface Closing {
  /** The property as a recipe names it: `camera.focal_length`, `wing.opening`, `back.width`. */
  readonly what: string;
  /** m, or deg. */
  readonly value: number;
  readonly unit: "m" | "deg";
  /** In words: `a lens of 96 mm`. */
  readonly text: string;
}

/** Bare picture that counts as none, as a share of it: half a pixel row of many. */
const CLOSED = 1e-5;
/** How often a range is halved. */
const HALVINGS = 12;
/** How far a lens is made longer and a piece larger, and how near a camera goes, as factors. */
const FARTHEST = { lens: 3, size: 3, near: 0.4 } as const;

type Piece = PartModel<"set">;

/** The single changes that close the gaps of a picture, found on its real coverage and tried as they are said. */
export function closings(recipe: Recipe, scene: Scene): readonly Closing[] {
  return [...longerLens(scene), ...nearerCamera(recipe), ...widerOpenings(recipe), ...largerPieces(recipe)];
}

function isClosed(scene: Scene): boolean {
  const found = coverageOf(scene);
  return typeof found !== "string" && 1 - found.covered < CLOSED;
}

function closes(recipe: Recipe): boolean {
  return isClosed(buildScene(recipe, () => undefined));
}

/** The value nearest to the first for which something holds, where it holds at the second; null where it does not. */
function nearestValue(from: number, to: number, holds: (value: number) => boolean): number | null {
  if (!holds(to)) return null;
  let [bad, good] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (bad + good) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** A value rounded to a step: to the nearest one where that holds, else to the one beyond; null where neither does. */
function settled(
  value: number,
  step: number,
  beyond: number,
  holds: (value: number) => boolean,
): number | null {
  const near = floorTo(value / step + 0.5, 1) * step;
  const found = [floorTo(near, step), beyond].find(holds);
  return found ?? null;
}

function longerLens(scene: Scene): readonly Closing[] {
  const { camera } = scene;
  if (camera === null || camera.focalLength === null) return [];
  const holds = (focalLength: number): boolean => isClosed({ ...scene, camera: { ...camera, focalLength } });
  const found = nearestValue(camera.focalLength, FARTHEST.lens * camera.focalLength, holds);
  if (found === null) return [];
  const value = settled(found, 0.001, ceilTo(found, 0.001), holds);
  if (value === null) return [];
  const text = `a lens of ${fixed(value * 1000, 0)} mm`;
  return [{ what: "camera.focal_length", value, unit: "m", text }];
}

function nearerCamera(recipe: Recipe): readonly Closing[] {
  const { camera } = recipe;
  const tape = camera?.distance;
  if (camera === null || tape === undefined || tape.from !== null || camera.position !== undefined) return [];
  const at = (value: number): Recipe => {
    const length: Length = { ...tape.length, value };
    const moved: CameraModel = { ...camera, distance: { ...tape, length } };
    return { ...recipe, camera: moved };
  };
  const holds = (value: number): boolean => closes(at(value));
  const far = tape.length.value;
  const found = nearestValue(far, FARTHEST.near * far, holds);
  if (found === null) return [];
  const value = settled(found, 0.01, floorTo(found, 0.01), holds);
  if (value === null) return [];
  return [{ what: "camera.distance", value, unit: "m", text: `the camera at ${sayLength(value)}` }];
}

function withPiece(recipe: Recipe, index: number, piece: Piece): Recipe {
  const { set } = recipe;
  if (set === null) return recipe;
  return { ...recipe, set: { ...set, parts: set.parts.map((row, i) => (i === index ? piece : row)) } };
}

/** Opens hinged flats by whole degrees: the least opening that closes, since a wider one may not. */
function widerOpenings(recipe: Recipe): readonly Closing[] {
  return (recipe.set?.parts ?? []).flatMap((piece, index): readonly Closing[] => {
    if (piece.block !== "flat" || piece.hinge === undefined || piece.name === null) return [];
    const { name } = piece;
    const before = piece.opening?.value ?? 90;
    const holds = (value: number): boolean => {
      const opening = { ...(piece.opening ?? { unit: "deg" }), value } as Angle;
      return closes(withPiece(recipe, index, { ...piece, opening }));
    };
    let coarse = Math.ceil(before / 5) * 5;
    while (coarse <= 180 && !holds(coarse)) coarse += 5;
    if (coarse > 180) return [];
    let value = coarse;
    for (let degree = coarse - 1; degree > Math.max(before, coarse - 5) && holds(degree); degree--)
      value = degree;
    if (!(value > before)) return [];
    const text = `${name} opened to ${fixed(value, 0)} deg`;
    return [{ what: `${name}.opening`, value, unit: "deg", text }];
  });
}

/** One measure of a piece: its word, its value, and the piece with another. */
interface Measure {
  readonly word: string;
  readonly says: string;
  readonly value: number;
  readonly at: (value: number) => Piece;
}

function measuresOf(piece: Piece): readonly Measure[] {
  if (piece.block === "paper") {
    const measure = (word: "width" | "run" | "hangs", says: string): readonly Measure[] => {
      const length = piece[word];
      if (length === undefined) return [];
      return [
        { word, says, value: length.value, at: (value) => ({ ...piece, [word]: { ...length, value } }) },
      ];
    };
    return [...measure("width", "wide"), ...measure("run", "long on the floor"), ...measure("hangs", "high")];
  }
  if (piece.block !== "flat" || piece.size === undefined) return [];
  const { size } = piece;
  const measure = (word: "width" | "height", says: string): Measure => ({
    word,
    says,
    value: size[word].value,
    at: (value) => ({ ...piece, size: { ...size, [word]: { ...size[word], value } } }),
  });
  return [measure("width", "wide"), measure("height", "high")];
}

function largerPieces(recipe: Recipe): readonly Closing[] {
  return (recipe.set?.parts ?? []).flatMap((piece, index) =>
    measuresOf(piece).flatMap(({ word, says, value: before, at }): readonly Closing[] => {
      const name = piece.name ?? piece.block;
      const holds = (value: number): boolean => closes(withPiece(recipe, index, at(value)));
      const found = nearestValue(before, FARTHEST.size * before, holds);
      if (found === null) return [];
      const value = settled(found, 0.01, ceilTo(found, 0.01), holds);
      if (value === null) return [];
      return [{ what: `${name}.${word}`, value, unit: "m", text: `${name} ${sayLength(value)} ${says}` }];
    }),
  );
}
