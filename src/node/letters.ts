import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

declare const __dirname: string | undefined;

/** The folder this runs from: that of the build, or that of this file. */
const here = (): string =>
  typeof __dirname === "string" ? __dirname : dirname(fileURLToPath(import.meta.url));

/** The letters that come with the project; null where the build was taken apart. */
export function fontFile(): string | null {
  const folder = here();
  const files = [join(folder, "font/regular.ttf"), join(folder, "../render/font/regular.ttf")];
  return files.find((file) => existsSync(file)) ?? null;
}

/** What is said where that file is missing. */
export const noLetters = "The file with the letters is missing from this installation.";

/** An optional package, loaded when it is asked for; null where it is not installed. */
export function optionalPackage(name: string): unknown {
  try {
    return createRequire(join(here(), "any.js"))(name);
  } catch {
    return null;
  }
}
