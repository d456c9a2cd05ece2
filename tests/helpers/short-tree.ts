import type { Amount, Claim, Expression, Value } from "../../src/syntax/ast.js";

/** An expression as nested brackets that show how it was understood: `(+ 1 (* 2 3))`. */
export function shortValue(value: Value): string {
  switch (value.kind) {
    case "text":
      return value.block ? `block${JSON.stringify(value.value)}` : JSON.stringify(value.value);
    case "unknown":
      return "?";
    case "list":
      return `[${value.items.map(shortValue).join(" ")}]`;
    case "relation":
      return `(${value.word} ${shortValue(value.left)} ${shortValue(value.right)})`;
    default:
      return shortExpression(value);
  }
}

function shortAmount(amount: Amount): string {
  const number = Number(amount.value.toPrecision(6));
  return amount.unit === null ? String(number) : `${number}‹${amount.unit.text}›`;
}

/** The same for what has a value by itself. */
export function shortExpression(node: Expression): string {
  switch (node.kind) {
    case "quantity":
      return node.amounts.map(shortAmount).join(node.joined === "by" ? "×" : "&");
    case "f-number":
      return `f${node.value}`;
    case "iso":
      return `iso${node.value}`;
    case "ratio":
      return `${node.left}:${node.right}`;
    case "reference": {
      const path = node.path.parts.map((part) => (part.quoted ? `'${part.text}'` : part.text)).join(".");
      if (node.args === null) return path;
      const args = node.args.map(
        (arg) => (arg.name === null ? "" : `${arg.name.text}=`) + shortValue(arg.value),
      );
      return `${path}(${args.join(" ")})`;
    }
    case "group":
      return `{${node.members.map(shortExpression).join(" ")}}`;
    case "negation":
      return `(neg ${shortExpression(node.operand)})`;
    case "sum":
      return `(sum ${node.terms.map((term) => term.sign + shortExpression(term.value)).join(" ")})`;
    case "product":
      return `(product ${node.factors.map((factor) => factor.sign + shortExpression(factor.value)).join(" ")})`;
    case "toleranced":
      return `(± ${shortExpression(node.value)} ${shortExpression(node.tolerance)})`;
    case "damaged":
      return "hole";
  }
}

/** A claim in the same way. */
export function shortClaim(claim: Claim): string {
  const value = shortExpression(claim.value);
  switch (claim.kind) {
    case "bare":
      return value;
    case "is": {
      const side = claim.side === null ? "" : ` ${claim.side.word} ${shortExpression(claim.side.of)}`;
      return `${value} is ${shortExpression(claim.target)}${side} within ${claim.within === null ? "nothing" : shortExpression(claim.within)}`;
    }
    case "between":
      return `${value} from ${shortExpression(claim.low)} to ${shortExpression(claim.high)}`;
    case "compare":
      return `${value} ${claim.sign} ${shortExpression(claim.target)}`;
  }
}
