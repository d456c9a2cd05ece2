import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";
import { ROOT } from "./pages.js";

/** Files whose exports speak for themselves: a row of a name and its pattern each. */
const PLAIN: ReadonlySet<string> = new Set(["src/text/kinds.ts"]);

function sourcesIn(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourcesIn(path);
    return entry.name.endsWith(".ts") ? [path] : [];
  });
}

/**
 * The exported declarations of a text that have no comment of documentation. Of overloads the first needs one, and so
 * does the first of constants on lines that follow each other.
 */
function bareExports(name: string, text: string): readonly string[] {
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.ES2022, true);
  const documented = new Set<string>();
  let grouped = Number.NaN;
  return file.statements.flatMap((statement) => {
    const exported =
      ts.canHaveModifiers(statement) &&
      ts.getModifiers(statement)?.some((one) => one.kind === ts.SyntaxKind.ExportKeyword) === true;
    if (!exported) return [];
    const names = ts.isVariableStatement(statement)
      ? statement.declarationList.declarations.map((one) => one.name.getText())
      : "name" in statement && statement.name !== undefined
        ? [(statement.name as ts.Identifier).getText()]
        : [];
    const start = file.getLineAndCharacterOfPosition(statement.getStart()).line;
    const follows = ts.isVariableStatement(statement) && start === grouped + 1;
    const has = follows || ts.getJSDocCommentsAndTags(statement).length > 0;
    if (has && ts.isVariableStatement(statement)) {
      grouped = file.getLineAndCharacterOfPosition(statement.getEnd()).line;
    }
    const bare = names.filter((one) => !has && !documented.has(one));
    if (has) for (const one of names) documented.add(one);
    return bare;
  });
}

test("every export of the sources has its comment", () => {
  const bare = sourcesIn(join(ROOT, "src")).flatMap((path) => {
    const name = relative(ROOT, path);
    if (PLAIN.has(name)) return [];
    return bareExports(name, readFileSync(path, "utf8")).map((one) => `${name}: ${one}`);
  });
  expect(bare).toEqual([]);
});

test("an export without a comment is found, and an overload is not", () => {
  const text =
    "export const a = 1;\n/** B. */\nexport const b = 2;\n/** C. */\nexport function c(): void;\nexport function c(): void {}\n";
  expect(bareExports("x.ts", text)).toEqual(["a"]);
});
