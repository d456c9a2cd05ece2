import type { PhotoSettings } from "../index.js";

/** Tags as they come from the file: each with a value that may be anything. */
export type Tags = Readonly<Record<string, unknown>>;

/** Diagonal of the format that equivalent focal lengths are given for, mm. */
const DIAGONAL = Math.sqrt(36 * 36 + 24 * 24);

/** A number above 0 behind a tag: itself, a list's first, or a quotient of two. */
function numberOf(tags: Tags, name: string): number | null {
  const tag = Object.hasOwn(tags, name) ? tags[name] : undefined;
  const value = typeof tag === "object" && tag !== null && "value" in tag ? tag.value : undefined;
  const list: readonly unknown[] = Array.isArray(value) ? value : [value];
  const [first, second] = list;
  const found =
    typeof first === "number" && typeof second === "number" && list.length === 2
      ? first / second
      : Array.isArray(first) && typeof first[0] === "number" && typeof first[1] === "number"
        ? first[0] / first[1]
        : first;
  return typeof found === "number" && Number.isFinite(found) && found > 0 ? found : null;
}

/** What the tags of the exchangeable image file format (JEITA CP-3451) say of the settings; null without any. */
export function settingsOfTags(tags: Tags): PhotoSettings | null {
  const focal = numberOf(tags, "FocalLength");
  const across = numberOf(tags, "PixelXDimension") ?? numberOf(tags, "Image Width");
  const down = numberOf(tags, "PixelYDimension") ?? numberOf(tags, "Image Height");
  const sides = across === null || down === null ? null : [Math.max(across, down), Math.min(across, down)];
  const settings: PhotoSettings = {
    focalLength: focal === null ? null : focal / 1000,
    aperture: numberOf(tags, "FNumber"),
    shutter: numberOf(tags, "ExposureTime"),
    sensitivity: numberOf(tags, "ISOSpeedRatings") ?? numberOf(tags, "PhotographicSensitivity"),
    pixels: pixelsOf(sides),
    frame: frameOf(tags, focal, sides),
    held: heldOf(tags, across, down),
  };
  const { focalLength, aperture, shutter, sensitivity } = settings;
  return [focalLength, aperture, shutter, sensitivity].every((value) => value === null) ? null : settings;
}

type Sides = readonly number[] | null;

function pixelsOf(sides: Sides): PhotoSettings["pixels"] {
  const [width = 0, height = 0] = sides ?? [];
  const usable = [width, height].every((side) => Number.isInteger(side) && side >= 16 && side <= 100_000);
  return usable ? { width, height } : null;
}

/**
 * The picture area: pixels over the resolution of the focal plane; else by the equivalent focal length, the ratio of the
 * diagonals, in the shape of the picture. Anything that no camera has is left out.
 */
function frameOf(tags: Tags, focal: number | null, sides: Sides): PhotoSettings["frame"] {
  const [long = 0, short = 0] = sides ?? [];
  if (!(short > 0)) return null;
  const units: ReadonlyMap<number, number> = new Map([
    [2, 25.4],
    [3, 10],
    [4, 1],
  ]);
  const unit = units.get(numberOf(tags, "FocalPlaneResolutionUnit") ?? 2);
  const resolution = numberOf(tags, "FocalPlaneXResolution");
  const equivalent = numberOf(tags, "FocalLengthIn35mmFilm");
  const diagonal = Math.sqrt(long * long + short * short);
  const perPixel =
    resolution !== null && unit !== undefined
      ? unit / resolution
      : focal !== null && equivalent !== null
        ? (DIAGONAL * focal) / equivalent / diagonal
        : 0;
  const [width, height] = [long * perPixel, short * perPixel];
  return width <= 100 && height >= 2 ? { width: width / 1000, height: height / 1000 } : null;
}

/** Upright where the picture is stored so, or is to be turned by a quarter to be looked at. */
function heldOf(tags: Tags, across: number | null, down: number | null): PhotoSettings["held"] {
  if (across === null || down === null || across === down) return null;
  const turned = (numberOf(tags, "Orientation") ?? 1) >= 5;
  return across > down !== turned ? "level" : "upright";
}
