import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { galleryFiles } from "../generate/gallery.js";
import { ROOT } from "./pages.js";

const files = galleryFiles();

describe("the gallery is as it would be made now (npm run docs:write makes it)", () => {
  test.each(files.map((file) => [file.path, file.text] as const))("%s", (path, text) => {
    expect(readFileSync(join(ROOT, path), "utf8")).toBe(text);
  });

  test("and holds nothing else, in less than a megabyte", () => {
    const made = files.map(({ path }) => path).filter((path) => path.endsWith(".svg"));
    const there = readdirSync(join(ROOT, "docs/gallery")).map((name) => `docs/gallery/${name}`);
    expect(there.sort()).toEqual([...made].sort());
    expect(made.length).toBeGreaterThan(10);
    expect(files.reduce((sum, { text }) => sum + Buffer.byteLength(text), 0)).toBeLessThan(1_000_000);
  });
});
