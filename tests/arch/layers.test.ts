import { describe, expect, test } from "vitest";
import { ring, tableRing, wrongImports } from "./layer-check.js";
import { layers, topFiles } from "./layer-table.js";
import { allSources, sourceFile } from "./source-tree.js";

const check = (...files: ReturnType<typeof sourceFile>[]) => wrongImports(files, layers, topFiles);

describe("the layers of src", () => {
  test("every import is one that its folder's row allows", () => {
    expect(wrongImports(allSources(), layers, topFiles)).toEqual([]);
  });

  test("no file imports itself through others", () => {
    expect(ring(allSources())).toBeNull();
  });

  test("the table has no ring", () => {
    expect(tableRing(layers)).toBeNull();
  });
});

describe("the check of the layers", () => {
  const core = sourceFile("core/a.ts", "export const a = 1;");

  test("names a wrong import, of values, types, re-exports and at run time", () => {
    for (const text of [
      'import { a } from "../core/a.js";\nimport { b } from "../report/b.js";',
      'import type { a } from "../core/a.js";\nimport type { b } from "../report/b.js";',
      '\nexport { b } from "../report/b.js";',
      '\nexport type { b } from "../report/b.js";',
      '\nconst b = await import("../report/b.js");',
      '\ntype B = import("../report/b.js").B;',
    ]) {
      const found = check(core, sourceFile("report/b.ts", ""), sourceFile("units/c.ts", text));
      expect(found).toEqual(["units/c.ts:2: units may not import report"]);
    }
  });

  test("names node: modules and packages out of place", () => {
    expect(check(sourceFile("core/a.ts", 'import { readFileSync } from "node:fs";'))).toEqual([
      "core/a.ts:1: node:fs outside of node and cli",
    ]);
    expect(check(sourceFile("node/a.ts", 'import { readFileSync } from "node:fs";'))).toEqual([]);
    expect(check(sourceFile("scene/a.ts", 'import { z } from "zod/mini";'))).toEqual([
      "scene/a.ts:1: package zod is not allowed in scene",
    ]);
    expect(check(sourceFile("report/a.ts", 'import { z } from "zod";'))).toEqual([]);
  });

  test("names a folder without a row, an unplanned file at the top, and what leaves src or is not there", () => {
    expect(check(sourceFile("helpers/a.ts", ""))).toEqual([
      "helpers/a.ts: folder helpers has no row in the table",
    ]);
    expect(check(sourceFile("stuff.ts", ""))).toEqual([
      "stuff.ts: no such file is planned at the top of src",
    ]);
    expect(check(sourceFile("core/a.ts", 'import "../../tests/x.js";'))).toEqual([
      "core/a.ts:1: ../../tests/x.js is outside of src",
    ]);
    expect(check(sourceFile("core/a.ts", 'import "./b.js";'))).toEqual([
      "core/a.ts:1: ./b.js does not exist",
    ]);
  });

  test("finds a ring of values and lets types pass", () => {
    const a = sourceFile("core/a.ts", 'import { b } from "./b.js";');
    expect(ring([a, sourceFile("core/b.ts", 'import { a } from "./a.js";')])).toEqual([
      "core/a.ts",
      "core/b.ts",
      "core/a.ts",
    ]);
    expect(ring([a, sourceFile("core/b.ts", 'import type { a } from "./a.js";')])).toBeNull();
  });

  test("finds a ring in a table", () => {
    const row = (...imports: string[]) => ({ imports, packages: [] });
    expect(
      tableRing(
        new Map([
          ["a", row("b")],
          ["b", row("a")],
          ["c", row()],
        ]),
      ),
    ).toEqual(["a", "b"]);
  });
});
