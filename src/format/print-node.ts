import type {
  Block,
  Claim,
  Column,
  Entry,
  Expression,
  File,
  Header,
  Item,
  Title,
  Value,
} from "../syntax/ast.js";
import { printExpression, printName, printPath, printText, printValue } from "./print-value.js";

type Node = File | Header | Title | Item | Entry | Value | Expression | LineOf;
type LinesOf<K extends Item["kind"]> =
  Extract<Item, { kind: K }> extends { readonly lines: readonly (infer L)[] } ? L : never;
type LineOf = LinesOf<"table"> | LinesOf<"variant"> | LinesOf<"solve"> | LinesOf<"measured">;

/**
 * Any node of the syntax tree in canonical text, without comments: a block on lines of its own, two blanks for each
 * depth. Parsing the text gives the same tree again, places aside.
 */
export function printNode(node: Node): string {
  return lines(node, "").join("\n");
}

/** A file in canonical text, without comments: what `parseFile` reads as the same tree, places aside. */
export function printFile(file: File): string {
  return printNode(file);
}

function lines(node: Node, indent: string): readonly string[] {
  const one = (text: string): readonly string[] => [indent + text];
  switch (node.kind) {
    case "file":
      return fileLines(node, indent);
    case "header":
      return one(`${printName(node.word)} ${node.version.written}`);
    case "title":
      return one(
        `${printName(node.word)} ${printText(node.text)}${node.of === null ? "" : ` of ${printText(node.of)}`}${node.variant === undefined ? "" : ` variant ${printText(node.variant)}`}`,
      );
    case "use":
      return one(`use ${node.names.map(printName).join(", ")} from ${printText(node.from)}`);
    case "let":
      return one(`let ${printName(node.name)} = ${printExpression(node.value)}`);
    case "define":
      return blockLines(node.block, indent, "define ");
    case "block":
      return blockLines(node, indent, "");
    case "property":
      return one(
        `${printPath(node.path)}${node.companion === null ? "" : ` with ${printName(node.companion)}`}: ${printValue(node.value, indent)}`,
      );
    case "expect":
      return one(
        `expect ${node.surely ? "surely " : ""}${node.claims.map(printClaim).join(" and ")}${node.because === null ? "" : ` because ${printText(node.because)}`}`,
      );
    case "hold": {
      const is = node.target === null ? "" : ` is ${printExpression(node.target)}`;
      return one(`hold ${printExpression(node.reading)}${is} by ${node.by.map(printPath).join(", ")}`);
    }
    case "table":
      return braced(`table ${printText(node.title)}`, node.lines, indent);
    case "variant": {
      const from = node.from === null ? "" : ` from ${printText(node.from)}`;
      return braced(`variant ${printText(node.title)}${from}`, node.lines, indent);
    }
    case "solve":
      return braced(`solve${node.title === null ? "" : ` ${printText(node.title)}`}`, node.lines, indent);
    case "measured":
      return braced("measured", node.lines, indent);
    case "sweep": {
      const { range } = node;
      if (range.kind === "over") return one(`sweep ${printPath(node.path)} over ${printValue(range.values)}`);
      const step = range.step === null ? "" : ` step ${printExpression(range.step)}`;
      const count = range.count === null ? "" : ` count ${range.count.written}`;
      return one(
        `sweep ${printPath(node.path)} from ${printExpression(range.from)} to ${printExpression(range.to)}${step}${count}`,
      );
    }
    case "show":
      return one(`show ${node.columns.map(printColumn).join(", ")}`);
    case "remove":
      return one(`remove ${printPath(node.path)}`);
    case "keep":
      return one(`keep ${printName(node.what)}`);
    case "find": {
      const near = node.near === null ? "" : ` near ${printExpression(node.near)}`;
      return one(
        `find ${printPath(node.path)} between ${printExpression(node.low)} and ${printExpression(node.high)}${near}`,
      );
    }
    case "meet":
      return one(`meet ${printClaim(node.claim)}`);
    case "prefer":
      return one(`prefer ${printName(node.direction)} ${printExpression(node.value)}`);
    case "reading":
      return one(`${printExpression(node.reading)} is ${printExpression(node.value)}`);
    case "text":
    case "unknown":
    case "list":
    case "relation":
      return one(printValue(node));
    default:
      return one(printExpression(node));
  }
}

function fileLines(file: File, indent: string): readonly string[] {
  const head = [file.header, file.title]
    .filter((part) => part !== null)
    .flatMap((part) => lines(part, indent));
  const items = file.items.flatMap((item) => ["", ...lines(item, indent)]);
  return [...head, ...items, ""];
}

function blockLines(block: Block, indent: string, before: string): readonly string[] {
  const like = block.like === null ? "" : ` like ${printPath(block.like)}`;
  const companions =
    block.companions.length === 0 ? "" : ` with ${block.companions.map(printPath).join(", ")}`;
  const head = `${before}${block.words.map(printName).join(" ")}${like}${companions}`;
  return braced(head, block.entries, indent);
}

function braced(head: string, inner: readonly Node[], indent: string): readonly string[] {
  if (inner.length === 0) return [`${indent}${head} {}`];
  return [`${indent}${head} {`, ...inner.flatMap((node) => lines(node, `${indent}  `)), `${indent}}`];
}

function printColumn(column: Column): string {
  const as = column.as === null ? "" : ` as ${column.as.text}`;
  const title = column.title === null ? "" : ` ${printText(column.title)}`;
  return printExpression(column.value) + as + title;
}

function printClaim(claim: Claim): string {
  const value = printExpression(claim.value);
  switch (claim.kind) {
    case "bare":
      return value;
    case "is": {
      const side = claim.side === null ? "" : ` ${claim.side.word} ${printExpression(claim.side.of)}`;
      const within = claim.within === null ? "" : ` within ${printExpression(claim.within)}`;
      return `${value} is ${printExpression(claim.target)}${side}${within}`;
    }
    case "between":
      return `${value} between ${printExpression(claim.low)} and ${printExpression(claim.high)}`;
    case "compare":
      return `${value} ${claim.sign} ${printExpression(claim.target)}`;
    default:
      return claim satisfies never;
  }
}
