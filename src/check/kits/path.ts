/** Names of devices on some systems, which no ending makes a file. */
const devices = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;
/** Signs of patterns, drives, addresses and other systems' paths; control characters; quotation marks. */
const strange = /[\\:*?<>|"[\]{}~$%\p{C}]/u;

/** The ending of every file of this language that another may name. */
export const ENDING = ".light";

/** Why a path cannot be used, in words: what the first thing is that is wrong with it. */
export function pathTrouble(path: string, endings: readonly string[] = [ENDING]): string {
  const last = path.split("/").at(-1) ?? "";
  const ending = endings.some((one) => last.toLowerCase().endsWith(one));
  if (path === "") return "it is empty";
  if (/^[a-z][a-z0-9+.-]+:\/\//i.test(path)) return "it is an address of the web";
  if (path.includes("\\")) return "it has backslashes";
  if (path.startsWith("/") || /^[a-z]:/i.test(path)) return "it does not start from this file";
  if (strange.test(path)) return "it has a sign that no path may have here";
  if (!ending || endings.includes(last))
    return `it does not name a file that ends in ${endings.join(" or ")}`;
  return "one of its parts cannot be the name of a file or folder everywhere";
}

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
