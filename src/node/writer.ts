import {
  closeSync,
  existsSync,
  fchmodSync,
  fchownSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from "node:fs";
import { errorCode } from "./text-file.js";

/** What stands where a file is to be written. */
export interface Found {
  readonly kind: "file" | "folder" | "other";
  /** The file itself, behind any link. */
  readonly target: string;
  readonly mode: number;
  readonly owner: number;
  readonly group: number;
  /** True where the owner is someone else. */
  readonly foreign: boolean;
  /** Names that the same file has. */
  readonly links: number;
}

/** The part of the machine that writing needs; tests put their own in its place. Everything throws as `node:fs` does. */
export interface FileWriter {
  find(path: string): Found | null;
  read(path: string): Uint8Array;
  /** Opens a file that must not exist. */
  create(path: string, mode: number): number;
  /** Writes from an offset on; the number of bytes that were taken, at least 1. */
  write(handle: number, bytes: Uint8Array, from: number): number;
  chown(handle: number, owner: number, group: number): void;
  chmod(handle: number, mode: number): void;
  sync(handle: number): void;
  close(handle: number): void;
  rename(from: string, to: string): void;
  /** Gives the file a name that must not exist yet. */
  placeNew(from: string, to: string): void;
  remove(path: string): void;
  syncFolder(path: string): void;
  umask(): number;
  /** Letters and digits that no other running program uses at this moment. */
  uniqueName(): string;
}

/** Writes to the disk of this machine. */
export const diskWriter: FileWriter = {
  find(path) {
    try {
      lstatSync(path);
    } catch (error) {
      if (errorCode(error) === "ENOENT") return null;
      throw error;
    }
    const target = realpathSync(path);
    const found = statSync(target);
    return {
      kind: found.isFile() ? "file" : found.isDirectory() ? "folder" : "other",
      target,
      mode: found.mode & 0o7777,
      owner: found.uid,
      group: found.gid,
      foreign:
        process.getuid !== undefined && (found.uid !== process.getuid() || found.gid !== process.getgid?.()),
      links: found.nlink,
    };
  },
  read: (path) => readFileSync(path),
  create: (path, mode) => openSync(path, "wx", mode),
  write: (handle, bytes, from) => writeSync(handle, bytes, from, bytes.length - from),
  chown: (handle, owner, group) => fchownSync(handle, owner, group),
  chmod: (handle, mode) => fchmodSync(handle, mode),
  sync: (handle) => fsyncSync(handle),
  close: (handle) => closeSync(handle),
  rename: (from, to) => renameSync(from, to),
  placeNew(from, to) {
    try {
      linkSync(from, to);
    } catch (error) {
      const cannotLink = ["EPERM", "ENOTSUP", "ENOSYS", "EMLINK"].includes(errorCode(error));
      if (!cannotLink || existsSync(to)) throw error;
      renameSync(from, to);
      return;
    }
    unlinkSync(from);
  },
  remove: (path) => unlinkSync(path),
  syncFolder(path) {
    try {
      const handle = openSync(path, "r");
      try {
        fsyncSync(handle);
      } finally {
        closeSync(handle);
      }
    } catch {
      // Some systems cannot do this for a folder; the file itself is on the disk.
    }
  },
  umask: () => process.umask(),
  uniqueName: () => `${process.pid}-${process.hrtime.bigint().toString(36)}`,
};
