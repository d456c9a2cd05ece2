import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { MAX_PHOTO_BYTES } from "../core/limits.js";
import { finding } from "../diagnostics/create.js";
import type { PhotoRead, ReadPhoto } from "../index.js";
import { isInside, type KitDisk, kitDisk } from "./kit-reader.js";
import { settingsOfTags, type Tags } from "./photo-tags.js";
import { reachProblem, wholeFile } from "./text-file.js";

declare const __dirname: string | undefined;

/** The library that reads tags, loaded when the first photograph is read. */
function tagsOf(bytes: Uint8Array): Tags | null {
  const here = typeof __dirname === "string" ? __dirname : dirname(fileURLToPath(import.meta.url));
  const { load } = createRequire(join(here, "any.js"))("exifreader") as {
    load: (data: ArrayBuffer, options: object) => Tags;
  };
  const data = new ArrayBuffer(bytes.length);
  new Uint8Array(data).set(bytes);
  try {
    return load(data, { expanded: false });
  } catch {
    return null;
  }
}

/**
 * Reads the settings of photographs that a recipe names, by the rules by which kits are read: relative to the file that
 * says it, inside one folder after every link is followed, ordinary files only, none above the cap.
 * @param root - The folder that holds everything that may be read.
 * @param main - The file that is worked on, as the command was given it.
 */
export function photoReader(root: string, main: string, disk: KitDisk = kitDisk): ReadPhoto {
  const known = new Map<string, PhotoRead>();
  return (path, from) => {
    const place = wholeFile(path);
    const outside: PhotoRead = { problem: finding("file.outside", place, { path }) };
    try {
      const folder = disk.real(root);
      const target = resolve(dirname(from === main ? disk.real(main) : resolve(from)), path);
      // Decided before the disk is asked, so that nothing is learnt of what lies outside.
      if (!isInside(folder, target)) return outside;
      const real = disk.real(target);
      if (!isInside(folder, real)) return outside;
      const before = known.get(real);
      if (before !== undefined) return before;
      const read = readPhoto(real, path, disk);
      if (disk.real(target) !== real) return { problem: finding("file.changed", place, { path }) };
      known.set(real, read);
      return read;
    } catch (error) {
      return { problem: reachProblem(path, error) };
    }
  };
}

function readPhoto(real: string, path: string, disk: KitDisk): PhotoRead {
  const place = wholeFile(path);
  const look = disk.look(real);
  if (look.kind === "folder") return { problem: finding("file.folder", place, { path }) };
  if (look.kind === "other") return { problem: finding("file.device", place, { path }) };
  const limit = MAX_PHOTO_BYTES;
  if (look.size > limit)
    return { problem: finding("file.too-large", place, { path, size: look.size, limit }) };
  const { bytes, steady } = disk.read(real, limit + 1);
  if (!steady) return { problem: finding("file.changed", place, { path }) };
  const tags = tagsOf(bytes);
  const settings = tags === null ? null : settingsOfTags(tags);
  return settings === null ? { problem: finding("photo.none", place, { path }) } : { settings };
}
