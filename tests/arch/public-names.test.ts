import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { projectRoot } from "./source-tree.js";

/** The names that a module exports, types marked, in code-unit order. */
function exportedNames(paths: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const program = ts.createProgram([...paths], {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    skipLibCheck: true,
    noEmit: true,
  });
  const checker = program.getTypeChecker();
  const found = new Map<string, readonly string[]>();
  for (const path of paths) {
    const file = program.getSourceFile(path);
    const symbol = file === undefined ? undefined : checker.getSymbolAtLocation(file);
    const names = (symbol === undefined ? [] : checker.getExportsOfModule(symbol)).map((item) => {
      const real = (item.flags & ts.SymbolFlags.Alias) === 0 ? item : checker.getAliasedSymbol(item);
      return (real.flags & ts.SymbolFlags.Value) === 0 ? `type ${item.name}` : item.name;
    });
    found.set(path, names.sort());
  }
  return found;
}

/** The reviewed list of an entry point; a change of it is a change of what users may rely on. */
const reviewed = (entry: string): readonly string[] =>
  readFileSync(join(projectRoot, "tests/arch/public-names", `${entry}.txt`), "utf8")
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"));

const entries: readonly (readonly [string, string])[] = [
  ["index", join(projectRoot, "src/index.ts")],
  ["physics", join(projectRoot, "src/physics/index.ts")],
  ["markdown", join(projectRoot, "src/markdown/index.ts")],
];
const present = entries.filter(([, path]) => existsSync(path));

const sample = join(projectRoot, "src/core/source.ts");
const names = exportedNames([...present.map(([, path]) => path), sample]);

describe("public names", () => {
  test.each(present)("entry %s exports the reviewed list and nothing else", (entry, path) => {
    expect(names.get(path)).toEqual(reviewed(entry));
  });

  test("are read from a file with types marked", () => {
    expect(names.get(sample)).toEqual(["lineStarts", "positionAt", "type Position", "type Source"]);
  });
});
