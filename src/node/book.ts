import { type Dirent, readdirSync, statSync } from "node:fs";
import { basename } from "node:path";
import { isPattern, partMatches } from "./glob.js";

/** What stands at a path of a folder's listing. */
export interface Listed {
  readonly name: string;
  readonly kind: "file" | "folder" | "other";
}

/** The part of the machine that finding files needs; tests put their own in its place. */
export interface BookDisk {
  /** What stands at a path, links followed; null where nothing does. */
  kind(path: string): Listed["kind"] | null;
  /** What is in a folder, in any order. A link to a folder is `other`, so that no walk runs in a circle. */
  list(folder: string): readonly Listed[];
}

const kindOf = (entry: Dirent | { isFile(): boolean; isDirectory(): boolean }): Listed["kind"] =>
  entry.isFile() ? "file" : entry.isDirectory() ? "folder" : "other";

/** The disk of this machine. */
export const bookDisk: BookDisk = {
  kind(path) {
    const found = statSync(path, { throwIfNoEntry: false });
    return found === undefined ? null : kindOf(found);
  },
  list: (folder) =>
    readdirSync(folder, { withFileTypes: true }).map((entry) => {
      if (!entry.isSymbolicLink()) return { name: entry.name, kind: kindOf(entry) };
      const behind = statSync(`${folder}/${entry.name}`, { throwIfNoEntry: false });
      return { name: entry.name, kind: behind?.isFile() === true ? "file" : "other" };
    }),
};

/** The files that some operands mean, or a sentence on the operand that means none. */
export type Book =
  | {
      readonly files: readonly string[];
      /** True where an operand was a folder or a pattern. */
      readonly gathered: boolean;
      readonly problem?: never;
    }
  | { readonly files?: never; readonly problem: string };

/** Files that one command works on at most, and folders in one another that it walks through. */
export const MOST_FILES = 10_000;
const DEEPEST = 32;
const ENDING = ".light";

/** Folders that hold other people's files. */
const skipped = (name: string): boolean => name.startsWith(".") || name === "node_modules";

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The entries of a folder by name; nothing where it cannot be read. */
function listed(folder: string, disk: BookDisk): readonly Listed[] {
  try {
    return [...disk.list(folder)].sort((a, b) => compare(a.name, b.name));
  } catch {
    return [];
  }
}

const join = (folder: string, name: string): string =>
  folder === "" ? name : folder.endsWith("/") ? folder + name : `${folder}/${name}`;

/** Every recipe, kit and session in a folder and the folders in it. */
function walk(folder: string, disk: BookDisk, depth: number, found: string[]): void {
  for (const { name, kind } of listed(folder === "" ? "." : folder, disk)) {
    if (found.length > MOST_FILES) return;
    const path = join(folder, name);
    if (kind === "file" && name.endsWith(ENDING) && !name.startsWith(".")) found.push(path);
    else if (kind === "folder" && !skipped(name) && depth < DEEPEST) walk(path, disk, depth + 1, found);
  }
}

/** The parts of a pattern; several `**` in a row mean no more than one. */
const partsOf = (pattern: string): readonly string[] =>
  pattern.split("/").filter((part, index, all) => part !== "**" || all[index - 1] !== "**");

/** Every file that a pattern means; `**` stands for any folders, also none. */
function match(
  folder: string,
  parts: readonly string[],
  disk: BookDisk,
  depth: number,
  found: string[],
): void {
  const [first, ...rest] = parts;
  if (first === undefined || found.length > MOST_FILES || depth > DEEPEST) return;
  if (first === "" || first === "." || first === "..") {
    match(first === "" && folder === "" ? "/" : join(folder, first), rest, disk, depth, found);
    return;
  }
  if (first === "**") match(folder, rest, disk, depth, found);
  for (const { name, kind } of listed(folder === "" ? "." : folder, disk)) {
    const path = join(folder, name);
    if (first === "**") {
      if (kind === "folder" && !skipped(name)) match(path, parts, disk, depth + 1, found);
    } else if (partMatches(first, name)) {
      if (rest.length === 0 && kind === "file") found.push(path);
      else if (rest.length > 0 && kind === "folder") match(path, rest, disk, depth + 1, found);
    }
  }
}

/**
 * The files that operands mean, each once, in the order of the operands; those of a folder or a pattern in the order of
 * their paths. A path that is there is never taken for a pattern. Ordinary names are passed on as they are, so that what
 * is wrong with a file is said where it is read.
 */
export function filesOf(operands: readonly string[], disk: BookDisk = bookDisk): Book {
  const files = new Set<string>();
  let gathered = false;
  for (const operand of operands) {
    const kind = operand === "-" || operand === "" || operand.includes("\0") ? null : disk.kind(operand);
    if (kind === "folder") {
      const found: string[] = [];
      walk(operand.replace(/(?<=.)\/+$/, ""), disk, 0, found);
      if (found.length === 0)
        return { problem: `There is no file in the folder "${operand}" whose name ends in ${ENDING}.` };
      gathered = true;
      for (const path of found.sort(compare)) files.add(path);
    } else if (kind === null && isPattern(operand)) {
      const found: string[] = [];
      match("", partsOf(operand), disk, 0, found);
      if (found.length === 0) return { problem: `No file is called like "${operand}".` };
      gathered = true;
      for (const path of found.sort(compare)) files.add(path);
    } else files.add(operand);
    if (files.size > MOST_FILES)
      return { problem: `More than ${MOST_FILES} files are meant; name a folder further in.` };
  }
  return { files: [...files], gathered };
}

/** A path taken apart: its folder, as it is written, and the name behind it. */
export function folderOf(path: string): readonly [folder: string, name: string] {
  const name = basename(path);
  return [path.slice(0, path.length - name.length), name];
}

/** The names of the files in a folder, in order; none where it cannot be read. */
export function filesIn(folder: string, disk: BookDisk = bookDisk): readonly string[] {
  const all = listed(folder === "" ? "." : folder, disk);
  return all.filter(({ kind }) => kind === "file").map(({ name }) => name);
}
