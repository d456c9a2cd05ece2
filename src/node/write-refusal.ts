import { finding } from "../diagnostics/create.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { wholeFile } from "./text-file.js";

/** Errors of the system in words. */
const words: ReadonlyMap<string, string> = new Map([
  ["ENOSPC", "the disk is full"],
  ["EDQUOT", "the disk space allowed to you is used up"],
  ["EROFS", "the disk can only be read"],
  ["EIO", "the disk reports a fault"],
  ["EMFILE", "too many files are open"],
  ["EFBIG", "the file would be too large"],
  ["EBUSY", "another program holds it"],
]);

/** The finding for a file that was not written: one of our own reasons, or the code of an error of the system. */
export function refusal(path: string, why: string): Diagnostic {
  const place = wholeFile(path);
  switch (why) {
    case "exists":
    case "EEXIST":
      return finding("file.exists", place, { path });
    case "hard-links":
      return finding("file.hard-links", place, { path });
    case "overtaken":
    case "gone":
      return finding("file.overtaken", place, { path });
    case "folder":
    case "EISDIR":
      return finding("file.folder", place, { path });
    case "other":
      return finding("file.device", place, { path });
    case "ENOENT":
    case "ENOTDIR":
      return finding("file.no-folder", place, { path });
    case "EACCES":
    case "EPERM":
      return finding("file.not-written", place, { path, reason: "you may not write there" });
    default:
      return finding("file.not-written", place, { path, reason: words.get(why) ?? `the system says ${why}` });
  }
}
