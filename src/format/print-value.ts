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

/** A name as it is written: in backticks where it was. */
export function printName(name: Name): string {
  return name.quoted ? `\`${name.text}\`` : name.text;
}

/** Names joined by points. */
export function printPath(path: Path): string {
  return path.parts.map(printName).join(".");
}

/** A text in quotation marks; one in three marks keeps its lines. */
export function printText(text: TextLiteral): string {
  if (text.block) return `"""${text.value}"""`;
  const escaped = text.value.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replaceAll("\n", "\\n");
  return `"${escaped}"`;
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

/** An expression in canonical text. What is damaged prints as nothing. */
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
      return `-${printExpression(node.operand)}`;
    case "sum":
      return node.terms
        .map((term, i) => (i === 0 ? "" : ` ${term.sign} `) + printExpression(term.value))
        .join("");
    case "product":
      return node.factors
        .map((one, i) => (i === 0 ? "" : ` ${one.sign} `) + printExpression(one.value))
        .join("");
    case "toleranced":
      return `${printExpression(node.value)} +- ${printExpression(node.tolerance)}`;
    case "damaged":
      return "";
    default:
      return node satisfies never;
  }
}

/** A value in canonical text, on one line where no text in three marks is in it. */
export function printValue(value: Value): string {
  switch (value.kind) {
    case "text":
      return printText(value);
    case "unknown":
      return "?";
    case "list":
      return `[${value.items.map(printValue).join(", ")}]`;
    case "relation":
      return `${printExpression(value.left)} ${value.word} ${printExpression(value.right)}`;
    default:
      return printExpression(value);
  }
}
