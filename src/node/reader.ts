import { closeSync, constants, fstatSync, openSync, readSync, statSync } from "node:fs";

/** What stands at a path, before anything is opened. */
export interface Look {
  readonly kind: "file" | "folder" | "other";
  readonly size: number;
}

/** The part of the machine that reading needs; tests put their own in its place. Both throw as `node:fs` does. */
export interface FileReader {
  /** Follows links. Opens nothing, since opening a pipe can block for ever. */
  look(path: string): Look;
  /** The bytes of an ordinary file, at most `limit` of them, and whether it stayed the same while being read. */
  read(path: string, limit: number): { readonly bytes: Uint8Array; readonly steady: boolean };
}

/** A pipe that took the place of a file after the look is opened without waiting, and reads as empty. */
const OPENING = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** Reads from the disk of this machine. */
export const diskReader: FileReader = {
  look(path) {
    const found = statSync(path);
    return { kind: found.isFile() ? "file" : found.isDirectory() ? "folder" : "other", size: found.size };
  },
  read(path, limit) {
    const handle = openSync(path, OPENING);
    try {
      const before = fstatSync(handle, { bigint: true });
      const buffer = Buffer.alloc(Math.min(limit, Number(before.size) + 1));
      let length = 0;
      while (length < buffer.length) {
        const read = readSync(handle, buffer, length, buffer.length - length, null);
        if (read === 0) break;
        length += read;
      }
      const after = fstatSync(handle, { bigint: true });
      return {
        bytes: buffer.subarray(0, length),
        steady:
          before.isFile() &&
          before.size === after.size &&
          before.mtimeNs === after.mtimeNs &&
          BigInt(length) <= after.size,
      };
    } finally {
      closeSync(handle);
    }
  },
};
