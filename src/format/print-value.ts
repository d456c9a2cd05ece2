import { quote } from "../core/quote.js";
import { writeNumber } from "../core/write-number.js";
import type {
  Amount,
  Argument,
  Expression,
  Name,
  Path,
  Quantity,
  Reference,
  TextLiteral,
  Value,
} from "../syntax/ast.js";
import { isHidden } from "../text/characters.js";

/** A name as it is written: in backticks where it was, or where it could not be written without. */
export function printName(name: Name): string {
  return name.quoted || !/^\p{L}[\p{L}\p{M}\p{N}_]*$/u.test(name.text) ? `\`${name.text}\`` : name.text;
}

/** Names joined by points. */
export function printPath(path: Path): string {
  return path.parts.map(printName).join(".");
}

/**
 * A text in quotation marks. One in three marks stands on lines of its own, two blanks further in than `indent`.
 * Whatever the text holds, reading it gives the same text again.
 */
export function printText(text: TextLiteral, indent = ""): string {
  if (!text.block) return quote(text.value);
  const lines = escaped(text.value).replaceAll('"""', '\\"\\"\\"').split("\n");
  const shown = lines.map((line) => (line === "" ? "" : `${indent}  ${line}`));
  return `"""\n${shown.join("\n")}\n${indent}  """`;
}

/** Characters that a text may not hold as they are: hidden ones by their numbers, and the backslash. */
function escaped(value: string): string {
  let result = "";
  for (const character of value.replaceAll("\\", "\\\\").replaceAll(/[\ud800-\udfff]/gu, "\ufffd")) {
    const code = character.codePointAt(0) ?? 0;
    const hidden = character === "\r" || (character !== "\n" && isHidden(character, 0));
    result += hidden ? `\\u{${code.toString(16)}}` : character;
  }
  return result;
}

function printAmount(amount: Amount): string {
  return amount.unit === null ? amount.written : `${amount.written} ${amount.unit.text}`;
}

function printQuantity(quantity: Quantity): string {
  const amounts = quantity.amounts.map(printAmount);
  return amounts.join(quantity.joined === "by" ? " x " : " ");
}

function printArgument(argument: Argument): string {
  const value = printValue(argument.value);
  return argument.name === null ? value : `${printName(argument.name)}: ${value}`;
}

function printReference(reference: Reference): string {
  const path = printPath(reference.path);
  return reference.args === null ? path : `${path}(${reference.args.map(printArgument).join(", ")})`;
}

/**
 * An expression in canonical text, with brackets wherever a tree made by code needs them. What is damaged prints as
 * nothing.
 */
export function printExpression(node: Expression): string {
  switch (node.kind) {
    case "quantity":
      return printQuantity(node);
    case "f-number":
      return `f/${node.written.slice(2)}`;
    case "iso":
      return `ISO ${node.written}`;
    case "ratio":
      return `${writeNumber(node.left)}:${writeNumber(node.right)}`;
    case "reference":
      return printReference(node);
    case "group":
      return `(${node.members.map(printExpression).join(", ")})`;
    case "negation":
      return `-${printInner(node.operand, ["sum", "product", "negation", "toleranced"])}`;
    case "sum":
      return node.terms
        .map((term, i) => (i === 0 ? "" : ` ${term.sign} `) + printInner(term.value, ["sum"]))
        .join("");
    case "product":
      return node.factors
        .map((one, i) => (i === 0 ? "" : ` ${one.sign} `) + printInner(one.value, ["sum", "product"]))
        .join("");
    case "toleranced":
      return `${printInner(node.value, ["sum", "product", "toleranced"])} +- ${printInner(node.tolerance, ["sum", "product", "negation", "toleranced"])}`;
    case "damaged":
      return "";
    default:
      return node satisfies never;
  }
}

/** A part of an expression, in brackets where it is of one of these kinds. */
function printInner(node: Expression, wrapped: readonly Expression["kind"][]): string {
  return wrapped.includes(node.kind) ? `(${printExpression(node)})` : printExpression(node);
}

/** A value in canonical text, on one line where no text in three marks is in it. */
export function printValue(value: Value, indent = ""): string {
  switch (value.kind) {
    case "text":
      return printText(value, indent);
    case "unknown":
      return "?";
    case "list":
      return `[${value.items.map((item) => printValue(item, indent)).join(", ")}]`;
    case "relation":
      return `${printExpression(value.left)} ${value.word} ${printExpression(value.right)}`;
    default:
      return printExpression(value);
  }
}
