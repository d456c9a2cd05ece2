import { MAX_SOURCE_BYTES } from "../core/limits.js";
import type { Place } from "../core/span.js";
import { finding } from "../diagnostics/create.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { decodeText } from "./decode.js";
import { diskReader, type FileReader } from "./reader.js";

/** A text that was read, byte for byte: mark, line ends and all; or the finding that says why there is none. */
export type ReadText =
  | { readonly text: string; readonly bytes: Uint8Array; readonly problem?: never }
  | { readonly text?: never; readonly bytes?: never; readonly problem: Diagnostic };

/** The place of a finding about a file as a whole. */
export const wholeFile = (path: string): Place => ({ file: path, start: 0, end: 0 });

/** The code of an error of `node:fs`, or an empty text. */
export function errorCode(error: unknown): string {
  if (typeof error !== "object" || error === null || !("code" in error)) return "";
  return typeof error.code === "string" ? error.code : "";
}

/** The finding for an error met while reaching or reading a file. Errors that are not the system's are passed on. */
export function reachProblem(path: string, error: unknown): Diagnostic {
  const place = wholeFile(path);
  switch (errorCode(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return finding("file.not-found", place, { path });
    case "EISDIR":
      return finding("file.folder", place, { path });
    case "ENAMETOOLONG":
    case "EINVAL":
    case "ERR_INVALID_ARG_VALUE":
      return finding("file.path", place, { path, what: "the system takes it for no name of a file" });
    case "":
      throw error;
    default:
      return finding("file.unreadable", place, { path });
  }
}

/**
 * Turns bytes into a text, or says what is wrong with them.
 * @param name The name that findings use for the file.
 */
export function textOfBytes(name: string, bytes: Uint8Array, limit: number = MAX_SOURCE_BYTES): ReadText {
  const place = wholeFile(name);
  if (bytes.length > limit) {
    return { problem: finding("file.too-large", place, { path: name, size: bytes.length, limit }) };
  }
  const decoded = decodeText(bytes);
  if (decoded === "binary") return { problem: finding("file.binary", place, { path: name }) };
  if (decoded === "encoding") return { problem: finding("file.encoding", place, { path: name }) };
  return { text: decoded.text, bytes };
}

/**
 * Reads a text file with every check of it: it is there, is an ordinary file, is not above the cap, is not binary, is
 * UTF-8, and did not change meanwhile. Never throws for what is on the disk.
 * @param path The name that findings use for the file.
 */
export function readTextFile(
  file: string,
  reader: FileReader = diskReader,
  limit: number = MAX_SOURCE_BYTES,
  path: string = file,
): ReadText {
  const place = wholeFile(path);
  try {
    const look = reader.look(file);
    if (look.kind === "folder") return { problem: finding("file.folder", place, { path }) };
    if (look.kind === "other") return { problem: finding("file.device", place, { path }) };
    if (look.size > limit) {
      return { problem: finding("file.too-large", place, { path, size: look.size, limit }) };
    }
    const { bytes, steady } = reader.read(file, limit + 1);
    if (!steady) return { problem: finding("file.changed", place, { path }) };
    return textOfBytes(path, bytes, limit);
  } catch (error) {
    return { problem: reachProblem(path, error) };
  }
}
