import { realpathSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { finding } from "../diagnostics/create.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { KitText, ReadKit } from "../index.js";
import { diskReader, type FileReader } from "./reader.js";
import { reachProblem, readTextFile, wholeFile } from "./text-file.js";

/** What reading a kit needs of the disk; tests put their own in its place. */
export interface KitDisk extends FileReader {
  /** The path behind all links; throws as `node:fs` does. */
  real(path: string): string;
}

/** The disk of this machine. */
export const kitDisk: KitDisk = { ...diskReader, real: (path) => realpathSync(path) };

/** True for a path in a folder, and for the folder itself. Both are absolute. */
export function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === "" || (way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

/** A path as findings show it, with forward slashes on every system. */
const shown = (path: string): string => (sep === "/" ? path : path.split(sep).join("/"));

/**
 * Reads the kits that a file names, and those that they name: relative to the file that says it, inside one folder
 * after every link is followed, ordinary files only. Each file is read once and keeps the name under which it was
 * first reached, however it is reached later.
 * @param root - The folder that holds everything that may be read.
 * @param main - The file that is worked on, as the command was given it.
 */
export function kitReader(root: string, main: string, disk: KitDisk = kitDisk): ReadKit {
  const paths = new Map<string, string>();
  const names = new Map<string, string>();
  const texts = new Map<string, KitText>();
  const remember = (name: string, path: string): void => {
    paths.set(name, path);
    names.set(path, name);
  };

  const read = (path: string, from: string): KitText => {
    const refuse = (problem: Diagnostic): KitText => ({ problem });
    const outside = (): KitText => refuse(finding("file.outside", wholeFile(path), { path }));
    try {
      const folder = disk.real(root);
      if (paths.size === 0) remember(main, disk.real(main));
      const target = resolve(dirname(paths.get(from) ?? resolve(from)), path);
      // Decided before the disk is asked, so that nothing is learnt of what lies outside.
      if (!isInside(folder, target)) return outside();
      const real = disk.real(target);
      if (!isInside(folder, real)) return outside();
      const before = texts.get(real);
      if (before !== undefined) return before;
      const found = readTextFile(real, disk, undefined, path);
      if (found.problem !== undefined) return refuse(found.problem);
      if (disk.real(target) !== real) return refuse(finding("file.changed", wholeFile(path), { path }));
      const name = names.get(real) ?? shown(join(dirname(from), path));
      remember(name, real);
      const text: KitText = { source: { name, text: found.text } };
      texts.set(real, text);
      return text;
    } catch (error) {
      return refuse(reachProblem(path, error));
    }
  };
  return read;
}
