import type { CatalogueRow } from "./row.js";

/** Findings about a file as a whole: it cannot be reached, or what is in it is no text of this language. */
export const fileFindings = {
  "file.not-found": {
    severity: "error",
    message: "there is no file `{path}`",
    help: "check the spelling and the folder",
    page: 'The path is taken from the folder in which the command runs; in a `use` or `session` line it is taken from the folder of the file that says it. Capital and small letters count.\n\nRight: `use head_a from "./kit.light"` when `kit.light` lies beside the recipe.',
  },
  "file.folder": {
    severity: "error",
    message: "`{path}` is a folder, not a file",
    help: "name a file in it",
    page: 'Some commands accept a folder and take every recipe in it; here one file is needed.\n\nRight: `use head_a from "./kit/heads.light"` and not `"./kit"`.',
  },
  "file.device": {
    severity: "error",
    message: "`{path}` is not an ordinary file",
    help: "name an ordinary text file",
    page: "Only ordinary files are read. Pipes, sockets and devices can block for ever or never end, so they are refused before they are opened. To check a text that comes from another command, give it on standard input.",
  },
  "file.unreadable": {
    severity: "error",
    message: "`{path}` cannot be read",
    help: "check that you may read this file",
    page: "The file is there, but the system does not let it be read. Usually its permissions are narrower than they should be, or another program holds it.",
  },
  "file.outside": {
    severity: "error",
    message: "`{path}` leaves the project folder",
    help: "copy the file into the project folder, or start with a wider --root",
    page: 'A recipe may only reach files inside its project folder: the folder given with `--root`, or else the recipe\'s own folder. Links are followed before this is decided. So a recipe from a stranger can be opened without letting it read anything else.\n\nRight: `use head_a from "./kit/heads.light"`.',
  },
  "file.path": {
    severity: "error",
    message: "`{path}` is not a path that can be used here: {what}",
    help: "write a path relative to this file, with forward slashes, such as ./kit.light",
    page: 'Paths in a recipe are relative to the file that says them and use forward slashes on every system. Addresses of the web, absolute paths, drive letters and hidden characters are refused.\n\nRight: `"./kit/heads.light"` or `"../kit/heads.light"`.',
  },
  "file.too-large": {
    severity: "error",
    message: "`{path}` is too large: {size} bytes, where {limit} are allowed",
    help: "split it: definitions go into a kit, other set-ups into files of their own",
    page: "A recipe is a page or two. The cap of 256 KiB is far above that, and keeps a mistaken path (a picture, a log) from being read as a recipe.",
  },
  "file.binary": {
    severity: "error",
    message: "`{path}` is not a text file",
    help: "name the recipe itself; its name usually ends in .light",
    page: "The file holds zero bytes near its start, which no text does. It is probably a picture, an archive or a document of a word processor.",
  },
  "file.encoding": {
    severity: "error",
    message: "`{path}` is not written in UTF-8",
    help: "save it again as UTF-8",
    page: "Recipes are UTF-8 texts, with or without a byte order mark. Other encodings would turn some letters and signs into others, so the file is not guessed at. Every text editor can save as UTF-8.",
  },
  "file.changed": {
    severity: "error",
    message: "`{path}` changed while it was being read",
    help: "run the command again",
    page: "Another program wrote to the file at the same moment. What was read may be half old and half new, so it is not used.",
  },
  "file.exists": {
    severity: "error",
    message: "there is already a file `{path}`",
    help: "choose another name, or remove the file first",
    page: "A new file never takes the place of one that is there, since what is in it may be wanted. Where a command can replace a result it made before, `--force` says so.",
  },
  "file.hard-links": {
    severity: "error",
    message: "`{path}` has more than one name on the disk and is left as it is",
    help: "write to a copy with one name",
    page: "The same file is reached under several names (hard links). A file is written by putting a complete new one in its place, which would leave the other names with the old text.",
  },
  "file.overtaken": {
    severity: "error",
    message: "`{path}` was changed by another program after it was read, so nothing is written",
    help: "look at the file and run the command again",
    page: "Between reading a file and writing it back its text is compared once more. When it is no longer the same, the newer text stays and nothing is written.",
  },
  "file.no-folder": {
    severity: "error",
    message: "there is no folder for `{path}`",
    help: "make the folder first, or check the spelling",
    page: "Files are written, folders are not made: a mistyped folder would otherwise appear on the disk.",
  },
  "file.not-written": {
    severity: "error",
    message: "`{path}` could not be written: {reason}",
    help: "the file is as it was before; free the way and run the command again",
    page: "A file is written beside the old one and takes its place only when it is complete. When anything goes wrong on the way, the old file stays whole.",
  },
} as const satisfies Record<string, CatalogueRow>;
