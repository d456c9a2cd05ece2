import ts from "typescript";
import { eachNode, lineOf, type SourceFile } from "./source-tree.js";

/** Names of the clock, of chance and of the machine's language, which would make the same text give other answers. */
const unsteady: ReadonlySet<string> = new Set(["Date", "Intl", "performance"]);
const unsteadyMembers: ReadonlySet<string> = new Set([
  "toLocaleString",
  "localeCompare",
  "toLocaleUpperCase",
  "toLocaleLowerCase",
  "toLocaleDateString",
]);

/** The name of what an expression reads: `Math.pow` of a member of a plain name. */
function memberOf(node: ts.Node): string | null {
  return ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)
    ? `${node.expression.text}.${node.name.text}`
    : null;
}

/** True where an identifier is used as a value or type by itself, and is not the name of a member. */
function standsAlone(node: ts.Identifier): boolean {
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return false;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return false;
  if (ts.isPropertySignature(parent) || ts.isMethodSignature(parent)) return false;
  return true;
}

/** The one file that makes a factor of stops, and the one that needs ln 2 for something else. */
const powersOfTwo: ReadonlySet<string> = new Set(["core/exp2.ts", "physics/flash-duration.ts"]);

/** Everything in a file that the project does not allow itself, in words with file and line. */
export function badHabits(file: SourceFile): readonly string[] {
  const found: string[] = [];
  const folder = file.path.split("/")[0];
  const machine = folder === "cli" || folder === "node";
  const say = (node: ts.Node, what: string): void => {
    found.push(`${file.path}:${lineOf(file, node)}: ${what}`);
  };
  eachNode(file, (node) => {
    const member = memberOf(node);
    if (member === "Math.pow") say(node, "Math.pow differs between versions of the engine");
    if (member === "Math.LN2" && !powersOfTwo.has(file.path)) say(node, "2 to a power is exp2 of core");
    if (member === "Math.random") say(node, "Math.random makes answers unsteady");
    if (member === "process.exit") say(node, "process.exit cuts pipes short; set process.exitCode");
    if (ts.isPropertyAccessExpression(node) && unsteadyMembers.has(node.name.text)) {
      say(node, `${node.name.text} depends on the machine's language`);
    }
    if (ts.isIdentifier(node) && standsAlone(node)) {
      if (node.text === "console") say(node, "console output");
      if (node.text === "process" && !machine) say(node, "process outside of node and cli");
      if (unsteady.has(node.text) && folder !== "node") say(node, `${node.text} makes answers unsteady`);
      if (node.text === "eval" || node.text === "Function") say(node, `${node.text} runs text as code`);
    }
    if (ts.isBinaryExpression(node)) {
      const kind = node.operatorToken.kind;
      if (
        kind === ts.SyntaxKind.AsteriskAsteriskToken ||
        kind === ts.SyntaxKind.AsteriskAsteriskEqualsToken
      ) {
        say(node, "** differs between versions of the engine");
      }
    }
    if (ts.isExportDeclaration(node) && node.exportClause === undefined)
      say(node, "export * hides what is public");
    if (ts.isClassDeclaration(node) && folder !== "syntax") say(node, "a class; only the parser needs one");
  });
  return found;
}

/** Where a file has state: a `let` or `var` at its top. */
export function moduleState(file: SourceFile): readonly string[] {
  return file.tree.statements
    .filter(ts.isVariableStatement)
    .filter((statement) => (statement.declarationList.flags & ts.NodeFlags.Const) === 0)
    .map((statement) => `${file.path}:${lineOf(file, statement)}: a variable at the top of a file`);
}
