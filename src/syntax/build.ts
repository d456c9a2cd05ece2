import type { Span } from "../core/span.js";
import { Quoted } from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type {
  Amount,
  Damaged,
  Expression,
  FNumber,
  Name,
  Product,
  Ratio,
  Sum,
  TextLiteral,
  Unit,
} from "./ast.js";

/** The span of one token. */
export function spanOf(token: Token): Span {
  return { start: token.startOffset, end: token.endOffset + 1 };
}

/** A name from its token; names of other alphabets are brought to one spelling (NFC). */
export function nameOf(token: Token): Name {
  const quoted = token.tokenType === Quoted;
  const text = quoted && typeof token.value === "string" ? token.value : plain(token.image);
  return { kind: "name", span: spanOf(token), text, quoted };
}

function plain(text: string): string {
  for (let at = 0; at < text.length; at++) if (text.charCodeAt(at) > 127) return text.normalize("NFC");
  return text;
}

/** A text from its token. */
export function textOf(token: Token, block: boolean): TextLiteral {
  return {
    kind: "text",
    span: spanOf(token),
    value: typeof token.value === "string" ? token.value : "",
    block,
  };
}

/** The number that a token holds; broken tokens hold none and count as zero. */
export function numberOf(token: Token): number {
  return typeof token.value === "number" ? token.value : 0;
}

/** A number alone, without a unit. */
export function plainAmount(token: Token): Amount {
  return {
    span: spanOf(token),
    value: numberOf(token),
    written: token.image,
    unit: null,
  };
}

/** A hole at a span. */
export function damaged(span: Span): Damaged {
  return { kind: "damaged", span };
}

/** One sign of a chain and what stands behind it. */
export interface Link {
  readonly sign: "+" | "-" | "*" | "/";
  readonly value: Expression;
}

/** Folds a chain `a + b * c` into a flat sum of flat products. */
export function chainOf(first: Expression, links: readonly Link[]): Expression {
  const terms: { sign: "+" | "-"; value: Expression }[] = [];
  let sign: "+" | "-" = "+";
  let factors: { sign: "*" | "/"; value: Expression }[] = [{ sign: "*", value: first }];
  for (const link of links) {
    if (link.sign === "*" || link.sign === "/") {
      factors.push({ sign: link.sign, value: link.value });
    } else {
      terms.push({ sign, value: productOf(factors, first) });
      sign = link.sign;
      factors = [{ sign: "*", value: link.value }];
    }
  }
  terms.push({ sign, value: productOf(factors, first) });
  const only = terms[0];
  if (terms.length === 1 && only !== undefined) return only.value;
  const sum: Sum = { kind: "sum", span: across(terms), terms };
  return sum;
}

function productOf(
  factors: readonly { sign: "*" | "/"; value: Expression }[],
  fallback: Expression,
): Expression {
  if (factors.length === 1) return factors[0]?.value ?? fallback;
  const product: Product = { kind: "product", span: across(factors), factors };
  return product;
}

function across(parts: readonly { value: Expression }[]): Span {
  return {
    start: parts[0]?.value.span.start ?? 0,
    end: parts[parts.length - 1]?.value.span.end ?? 0,
  };
}

/** What a token is called in a sentence: as written, cut short. */
export function shown(token: Token): string {
  return token.image.length > 24 ? `${token.image.slice(0, 23)}…` : token.image;
}

/** The span of a number with its fraction and its unit. */
export function amountSpan(first: Token, last: Token, unit: Unit | null): Span {
  return { start: first.startOffset, end: unit === null ? last.endOffset + 1 : unit.span.end };
}

/** `3:1` */
export function ratioOf(token: Token): Ratio {
  const colon = token.image.indexOf(":");
  const left = Number(token.image.slice(0, colon));
  const right = Number(token.image.slice(colon + 1));
  return { kind: "ratio", span: spanOf(token), left, right };
}

/** `f/8`; every way of writing it, wrong ones too, comes out with a small f and a slash. */
export function fNumberOf(token: Token): FNumber {
  const written = `f/${token.image.replace(/^[fFƒ]\/?/, "")}`;
  return { kind: "f-number", span: spanOf(token), value: numberOf(token), written };
}
