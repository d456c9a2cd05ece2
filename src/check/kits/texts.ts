import { placeIn } from "../../core/span.js";
import { finding } from "../../diagnostics/create.js";
import type { ReadKit } from "./read.js";

/** The name that a path means for the file that says it: `./kit.light` in `book/a.light` is `book/kit.light`. */
export function joinNames(from: string, path: string): string {
  const parts = from.split("/").slice(0, -1);
  for (const part of path.split("/")) {
    const last = parts[parts.length - 1];
    if (part === "." || part === "") continue;
    if (part === ".." && last !== undefined && last !== "" && last !== ".." && last !== ".") parts.pop();
    else parts.push(part);
  }
  return parts.join("/");
}

/**
 * A reader of kits that are at hand as texts, where there is no disk: in a browser, in an editor, in a test.
 * @param texts - The texts by their names, which are relative paths with forward slashes: `kits/heads.light`.
 */
export function kitsAmong(texts: ReadonlyMap<string, string>): ReadKit {
  return (path, from) => {
    const name = joinNames(from, path);
    const text = texts.get(name);
    if (text !== undefined) return { source: { name, text } };
    return { problem: finding("file.not-found", placeIn(from, { start: 0, end: 0 }), { path }) };
  };
}
