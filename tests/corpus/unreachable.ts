import type { Code } from "../../src/diagnostics/catalogue/index.js";

/** Codes that no single text causes, with where they come from and are tested. */
export const fromFiles: ReadonlySet<Code> = new Set<Code>([
  "file.not-found",
  "file.folder",
  "file.device",
  "file.unreadable",
  "file.path",
  "file.too-large",
  "file.binary",
  "file.encoding",
  "file.changed",
]);

/** Codes of the safe writer; its own tests cause each of them through an injected disk. */
export const fromWriter: ReadonlySet<Code> = new Set<Code>([
  "file.exists",
  "file.hard-links",
  "file.overtaken",
  "file.no-folder",
  "file.not-written",
]);

/** Codes that only a model made by code can cause, since the checker refuses the text earlier. */
export const fromModels: ReadonlySet<Code> = new Set<Code>([
  "flat.hinge",
  "light.over-full",
  "room.mark-twice",
  "scene.incomplete",
]);

/**
 * Codes that depend on the disk or on what the caller gives besides the text; the tests of the reader, of kits and of
 * settings cause them.
 */
export const fromCaller: ReadonlySet<Code> = new Set<Code>([
  "file.outside",
  "beam.file",
  "beam.note",
  "photo.missing",
  "photo.none",
  "use.alone",
  "use.limit",
  "session.alone",
  "path.setting",
]);

/** Codes whose text is too large to be kept as a file; the test makes it. */
export const tooLargeToKeep: ReadonlyMap<Code, string> = new Map<Code, string>([
  ["limit.size", `halfshade 1\nrecipe "Long"\n${"# a line of remarks about the bell tower\n".repeat(7000)}`],
  ["limit.tokens", `halfshade 1\nrecipe "Long"\nabout { tags: [${"1,".repeat(100_100)}] }\n`],
  ["limit.findings", `halfshade 1\nrecipe "Long"\n${"point 3rd { up: 1 m }\n".repeat(120)}`],
]);
