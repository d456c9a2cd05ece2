/** Names of devices on some systems, which no ending makes a file. */
const devices = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;
/** Signs of patterns, drives, addresses and other systems' paths; control characters; quotation marks. */
const strange = /[\\:*?<>|"[\]{}~$%\p{C}]/u;

/** The ending of every file of this language that another may name. */
export const ENDING = ".light";

/** True for a path that a recipe may say: relative, with forward slashes, ending in `.light`. */
export function isKitPath(path: string): boolean {
  if (path.length > 1000 || path.startsWith("/") || strange.test(path)) return false;
  const parts = path.split("/");
  const last = parts[parts.length - 1] ?? "";
  if (!last.endsWith(ENDING) || last === ENDING) return false;
  return parts.every((part) => part !== "" && part.trim() === part && !devices.test(part));
}
