import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, posix, relative, sep } from "node:path";
import ts from "typescript";

/** The project's folder. */
export const projectRoot = new URL("../..", import.meta.url).pathname;
/** The folder of the program's own text. */
export const sourceRoot = join(projectRoot, "src");

/** One import of a file, however it is written. */
export interface Import {
  readonly from: string;
  /** `import type`, or a type in an expression. Erased by the compiler. */
  readonly typeOnly: boolean;
  /** `import("...")` at run time. */
  readonly dynamic: boolean;
  readonly line: number;
}

/** One file of `src`: its path below `src` with forward slashes, its text, and its tree. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  readonly tree: ts.SourceFile;
}

/** A text as if it were a file of `src`. */
export function sourceFile(path: string, text: string): SourceFile {
  let tree: ts.SourceFile | null = null;
  return {
    path,
    text,
    get tree() {
      tree ??= ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
      return tree;
    },
  };
}

/** Every TypeScript file of `src`, sorted by path. */
export function allSources(): readonly SourceFile[] {
  return readdirSync(sourceRoot, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => relative(sourceRoot, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .sort()
    .map((path) => sourceFile(path, readFileSync(join(sourceRoot, path), "utf8")));
}

/** Calls `visit` on every node of a file. */
export function eachNode(file: SourceFile, visit: (node: ts.Node) => void): void {
  const walk = (node: ts.Node): void => {
    visit(node);
    ts.forEachChild(node, walk);
  };
  walk(file.tree);
}

/** The line of a node, from 1. */
export function lineOf(file: SourceFile, node: ts.Node): number {
  return file.tree.getLineAndCharacterOfPosition(node.getStart(file.tree)).line + 1;
}

/** Everything that a file imports. */
export function importsOf(file: SourceFile): readonly Import[] {
  const found: Import[] = [];
  const add = (node: ts.Node | undefined, typeOnly: boolean, dynamic = false): void => {
    if (node !== undefined && ts.isStringLiteralLike(node)) {
      found.push({ from: node.text, typeOnly, dynamic, line: lineOf(file, node) });
    }
  };
  eachNode(file, (node) => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, node.importClause?.isTypeOnly === true);
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal, true);
    else if (ts.isExternalModuleReference(node)) add(node.expression, false);
    else if (ts.isCallExpression(node)) {
      const called = node.expression;
      const isImport = called.kind === ts.SyntaxKind.ImportKeyword;
      const isRequire = ts.isIdentifier(called) && called.text === "require";
      if (isImport || isRequire) add(node.arguments[0], false, isImport);
    }
  });
  return found;
}

/** The path below `src` that a relative import means; null for a package or a `node:` module. */
export function targetOf(file: SourceFile, from: string): string | null {
  if (!from.startsWith(".")) return null;
  return posix.normalize(posix.join(dirname(file.path), from)).replace(/\.js$/, ".ts");
}
