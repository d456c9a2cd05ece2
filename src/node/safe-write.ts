import { basename, dirname, join } from "node:path";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { errorCode } from "./text-file.js";
import { refusal } from "./write-refusal.js";
import { diskWriter, type FileWriter, type Found } from "./writer.js";

/** What became of a write. */
export type Written =
  | { readonly outcome: "written" | "same"; readonly problem?: never }
  | { readonly outcome: "refused"; readonly problem: Diagnostic };

/** How a write meets what is there already. */
export type Meeting =
  /** The file holds these bytes, which were read before; anything else is refused. */
  | { readonly kind: "edit"; readonly before: Uint8Array }
  /** Nothing may be there. */
  | { readonly kind: "create" }
  /** Whatever ordinary file is there is replaced. */
  | { readonly kind: "replace" };

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

/** Writes all bytes into a new file beside the target, with the target's rights, down to the disk. */
function writeBeside(temporary: string, bytes: Uint8Array, like: Found | null, disk: FileWriter): void {
  const handle = disk.create(temporary, 0o600);
  try {
    let at = 0;
    while (at < bytes.length) at += disk.write(handle, bytes, at);
    if (like === null) disk.chmod(handle, 0o666 & ~disk.umask());
    else {
      if (like.foreign) disk.chown(handle, like.owner, like.group);
      disk.chmod(handle, like.mode);
    }
    disk.sync(handle);
  } finally {
    disk.close(handle);
  }
}

/** Removes a left-over and says nothing when that fails too: the first error is the one to report. */
function discard(temporary: string, disk: FileWriter): void {
  try {
    disk.remove(temporary);
  } catch {
    // The name is nobody else's and ends in .tmp; it harms nothing.
  }
}

/**
 * Writes a file so that at every moment, also after a crash, either the old or the new content is there whole: into a
 * new file in the same folder, down to the disk, then renamed over the old one. A link stays a link and its target is
 * written; a file with several hard links is refused, since renaming would part them; the mode is kept; bytes that are
 * there already are not written again. Between the last comparison and the renaming lie some microseconds in which a
 * change by another program would be lost.
 */
export function writeSafely(
  path: string,
  bytes: Uint8Array,
  meeting: Meeting,
  disk: FileWriter = diskWriter,
): Written {
  const refuse = (problem: Diagnostic): Written => ({ outcome: "refused", problem });
  try {
    const found = disk.find(path);
    if (found === null && meeting.kind === "edit") return refuse(refusal(path, "gone"));
    if (found !== null) {
      if (meeting.kind === "create") return refuse(refusal(path, "exists"));
      if (found.kind !== "file") return refuse(refusal(path, found.kind));
      if (found.links > 1) return refuse(refusal(path, "hard-links"));
      const now = disk.read(found.target);
      if (meeting.kind === "edit" && !sameBytes(now, meeting.before))
        return refuse(refusal(path, "overtaken"));
      if (sameBytes(now, bytes)) return { outcome: "same" };
    }
    const target = found?.target ?? path;
    const folder = dirname(target);
    const temporary = join(folder, `.halfshade-${basename(target).slice(0, 60)}-${disk.uniqueName()}.tmp`);
    try {
      writeBeside(temporary, bytes, found, disk);
      if (meeting.kind === "edit" && !sameBytes(disk.read(target), meeting.before)) {
        discard(temporary, disk);
        return refuse(refusal(path, "overtaken"));
      }
      if (meeting.kind === "create") disk.placeNew(temporary, target);
      else disk.rename(temporary, target);
    } catch (error) {
      discard(temporary, disk);
      throw error;
    }
    disk.syncFolder(folder);
    return { outcome: "written" };
  } catch (error) {
    const code = errorCode(error);
    if (code === "") throw error;
    return refuse(refusal(path, code));
  }
}
