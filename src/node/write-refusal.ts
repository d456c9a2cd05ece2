import { finding } from "../diagnostics/create.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { systemWords } from "./system-words.js";
import { wholeFile } from "./text-file.js";

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
      return finding("file.not-written", place, { path, reason: systemWords(why) });
  }
}
