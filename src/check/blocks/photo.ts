import { pixels, size } from "../../model/make/sizes.js";
import type { PhotoValue } from "../../model/values.js";
import { fNumber, iso, mm, s, shutterOneOver } from "../../units/make.js";
import type { Time } from "../../units/quantity.js";
import { blocks } from "../../vocabulary/index.js";
import type { CheckedBlock } from "../block.js";
import { report } from "../context.js";
import type { PhotoSettings } from "../kits/files.js";
import { isFilePath, pathTrouble } from "../kits/path.js";

/** The files in which settings are looked for. */
const endings = [".jpg", ".jpeg", ".tif", ".tiff", ".png", ".webp", ".heic", ".avif"];

/** What a camera cannot do without, in words for a message. */
const needed: ReadonlyMap<string, string> = new Map([
  ["focal_length", "focal length"],
  ["aperture", "aperture"],
  ["shutter", "shutter time"],
  ["sensitivity", "sensitivity"],
  ["held", "way of being held"],
]);

/** Fills what a camera does not say from the photograph that it names; what is written counts first. */
export function fillFromPhoto(checked: CheckedBlock): void {
  const { read, home } = checked;
  const photo = read.values.get("settings") as PhotoValue | undefined;
  const place = read.places.get("settings");
  if (photo === undefined || place === undefined) return;
  const ctx = { ...home, file: place.file };
  const path = photo.file;
  if (!isFilePath(path, endings)) {
    report(ctx, "file.path", place, { path, what: pathTrouble(path, endings) });
    pardon(checked);
    return;
  }
  if (home.files.photo === null) {
    report(ctx, "photo.alone", place, { path });
    return;
  }
  const { settings, problem } = home.files.photo(path, place.file);
  if (problem !== undefined) {
    home.sink({ ...problem, place });
    pardon(checked);
    return;
  }
  const took: string[] = [];
  for (const [name, value, words] of valuesOf(settings)) {
    if (read.given.has(name)) continue;
    read.given.add(name);
    read.values.set(name, value);
    read.places.set(name, place);
    took.push(words);
  }
  read.values.set("settings", { ...photo, took } satisfies PhotoValue);
  const lacks = [...needed.keys()].filter((name) => !read.given.has(name));
  const [first] = lacks;
  if (first === undefined) return;
  const row = blocks.camera.properties.find(({ name }) => name === first);
  const what = lacks.map((name) => needed.get(name) ?? name).join(", ");
  report(ctx, "photo.missing", place, { path, what, example: `${first}: ${row?.example ?? ""}` });
  pardon(checked);
}

/** What is missing has been said. The block is not complete, so that no model is made of it. */
function pardon({ read }: CheckedBlock): void {
  for (const name of needed.keys()) read.given.add(name);
}

/** The properties that a photograph gives, with their values and in words. */
function valuesOf(
  settings: PhotoSettings,
): readonly (readonly [name: string, value: unknown, words: string])[] {
  const { focalLength, aperture, shutter, sensitivity, frame, held } = settings;
  const found: (readonly [string, unknown, string])[] = [];
  const take = (name: string, value: { readonly written: string } | null): void => {
    if (value !== null) found.push([name, value, value.written]);
  };
  const inRange = (name: string, value: number | null): number | null => {
    const row = blocks.camera.properties.find((candidate) => candidate.name === name);
    const [low, high] = row !== undefined && "range" in row ? row.range : [0, 0];
    return value !== null && value >= low && value <= high ? value : null;
  };
  const focal = inRange("focal_length", focalLength);
  const f = inRange("aperture", aperture);
  const time = inRange("shutter", shutter);
  const speed = inRange("sensitivity", sensitivity);
  take("focal_length", focal === null ? null : mm(tidy(focal * 1000)));
  take("aperture", f === null ? null : fNumber(tidy(f)));
  take("shutter", time === null ? null : shutterOf(time));
  take("sensitivity", speed === null ? null : iso(tidy(speed)));
  if (frame !== null) take("frame", size(mm(round(frame.width)), mm(round(frame.height))));
  if (settings.pixels !== null) take("pixels", pixels(settings.pixels.width, settings.pixels.height));
  if (held !== null) found.push(["held", held, `held ${held}`]);
  return found;
}

/** A time as a recipe writes it: `1/125 s`, `0.5 s`, `2 s`. */
function shutterOf(time: number): Time {
  const over = 1 / time;
  return time < 0.3 ? { ...shutterOneOver(tidy(over)), written: `1/${tidy(over)} s` } : s(tidy(time));
}

/** Six figures: what is left of a quotient of whole numbers. */
const tidy = (value: number): number => Number(value.toPrecision(6));
/** Tenths of a millimetre, from m. */
const round = (metres: number): number => Math.round(metres * 1e4) / 10;
