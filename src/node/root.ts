import { existsSync, realpathSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join, resolve } from "node:path";

/** What marks the top folder of a project. */
const marks = [".git", "package.json"];

/** The parts of the machine that finding a root needs; tests put their own in its place. */
export interface RootDisk {
  exists(path: string): boolean;
  real(path: string): string;
  home(): string;
}

const rootDisk: RootDisk = {
  exists: existsSync,
  real: (path) => realpathSync(path),
  home: () => homedir(),
};

/**
 * The folder that a recipe may read kits from, unless `--root` says another: the nearest folder at or above the
 * recipe's own that holds `.git` or `package.json`; else the recipe's own. The home folder and the top of the disk are
 * never taken for a project, since too much lies below them.
 */
export function projectRoot(file: string, disk: RootDisk = rootDisk): string {
  let own: string;
  try {
    own = dirname(disk.real(file));
  } catch {
    return dirname(resolve(file));
  }
  const home = disk.home();
  for (let folder = own; folder !== home && dirname(folder) !== folder; folder = dirname(folder)) {
    if (marks.some((mark) => disk.exists(join(folder, mark)))) return folder;
  }
  return own;
}
