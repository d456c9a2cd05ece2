/** Names of devices on some systems, which no ending makes a file. */
const devices = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;
/** Signs of patterns, drives, addresses and other systems' paths; control characters; quotation marks. */
const strange = /[\\:*?<>|"[\]{}~$%\p{C}]/u;

/** The ending of every file of this language that another may name. */
export const ENDING = ".light";

/** True for a path of a kit that a recipe may say: relative, with forward slashes, ending in `.light`. */
export function isKitPath(path: string): boolean {
  return isPathTo(path, [ENDING]);
}

/** The same for other files, by the endings they may have, in small letters; capital letters count as small ones. */
export function isFilePath(path: string, endings: readonly string[]): boolean {
  return isPathTo(path, endings, true);
}

function isPathTo(path: string, endings: readonly string[], anyCase = false): boolean {
  if (path.length > 1000 || path.startsWith("/") || strange.test(path)) return false;
  const parts = path.split("/");
  const last = parts[parts.length - 1] ?? "";
  const plain = anyCase ? last.toLowerCase() : last;
  if (!endings.some((ending) => plain.endsWith(ending) && plain !== ending)) return false;
  return parts.every((part) => part !== "" && part.trim() === part && !devices.test(part));
}
