import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";

/** The project's own folder. */
export const ROOT = new URL("../../", import.meta.url).pathname;

/** One page of the documentation, by its path from the project's folder. */
export interface Page {
  readonly path: string;
  readonly text: string;
}

const IGNORED: ReadonlySet<string> = new Set(["api"]);

function markdownIn(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !IGNORED.has(entry.name))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return markdownIn(path);
      return entry.name.endsWith(".md") ? [path] : [];
    })
    .sort();
}

/** A page by its path from the project's folder. */
export function readPage(path: string): Page {
  return { path, text: readFileSync(join(ROOT, path), "utf8") };
}

/** Every page that people read: the two at the top, `docs` without the generated interface, and `grammar`. */
export function allPages(): readonly Page[] {
  const paths = [
    ...["README.md", "DEVELOPERS.md"].map((name) => join(ROOT, name)).filter(existsSync),
    ...markdownIn(join(ROOT, "docs")),
    ...markdownIn(join(ROOT, "grammar")),
  ];
  return paths.map((path) => readPage(relative(ROOT, path)));
}
