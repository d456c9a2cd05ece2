import { EOF, type TokenType } from "chevrotain";
import { MAX_OPERATORS } from "../core/limits.js";
import { cover } from "../core/span.js";
import {
  Broken,
  CloseBrace,
  CloseRound,
  CloseSquare,
  Colon,
  Comma,
  Dot,
  FNumber,
  Fraction,
  FromWord,
  IsoWord,
  IsWord,
  Minus,
  Name,
  NewLine,
  Numeral,
  OpenRound,
  OpenSquare,
  OverWord,
  Plus,
  PlusMinus,
  Question,
  Ratio,
  Text,
  TextBlock,
  UnderWord,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type {
  Argument,
  Expression,
  Group,
  ListValue,
  Name as NameNode,
  Path,
  Reference,
  Relation,
  Value,
} from "./ast.js";
import {
  chainOf,
  damaged,
  fNumberOf,
  type Link,
  nameOf,
  numberOf,
  ratioOf,
  shown,
  spanOf,
  textOf,
} from "./build.js";
import { QuantityParser } from "./quantities.js";
import { isEnd, isJoining, isLiteral, isOperator, isWord } from "./token-classes.js";

/**
 * Reads values and expressions, by hand because they make up most of a text. The grammar that is published, and that
 * the parser is tested against, is in `value-rules.ts`.
 */
export abstract class ExpressionParser extends QuantityParser {
  /** Operators on the line at hand. */
  protected operators = 0;

  // ------------------------------------------------------------ names

  protected readPath(): Path {
    const start = this.next();
    const parts: NameNode[] = [];
    if (isWord(this.peek(1))) parts.push(nameOf(this.take()));
    else parts.push(this.missingName());
    while (this.peek(1).tokenType === Dot) {
      this.take();
      if (isWord(this.peek(1))) parts.push(nameOf(this.take()));
      else this.missingName();
    }
    return { kind: "path", span: this.since(Math.min(start, this.here())), parts };
  }

  /** A name has to stand here and does not. */
  protected missingName(): NameNode {
    const token = this.peek(1);
    if (isEnd(token)) this.fault("line.unfinished", this.gap(), {});
    else this.fault("name.missing", this.nextSpan(), { sign: shown(token) });
    return { kind: "name", span: this.gap(), text: "", quoted: false };
  }

  // ------------------------------------------------------------ values

  /** What stands behind `name:` and in lists and calls. `of` is the name that the value belongs to. */
  protected readValue(of: string): Value {
    const token = this.peek(1);
    switch (token.tokenType) {
      case Text:
        return textOf(this.take(), false);
      case TextBlock:
        return textOf(this.take(), true);
      case Question:
        return { kind: "unknown", span: spanOf(this.take()) };
      case OpenSquare:
        return this.readList();
    }
    return this.startsOperand(1) ? this.readRelation() : this.missingValue(of);
  }

  private readRelation(): Value {
    const left = this.readExpression();
    const word = this.peek(1);
    const type = word.tokenType;
    if (type !== FromWord && type !== UnderWord && type !== OverWord && type !== IsWord) return left;
    this.take();
    const right = this.readExpression();
    const span = cover(left.span, right.span);
    return { kind: "relation", span, word: word.image as Relation["word"], left, right };
  }

  /** Whether the token `ahead` can start an operand (with a sign or without). */
  protected startsOperand(ahead: number): boolean {
    const token = this.peek(ahead);
    const type = token.tokenType;
    return isWord(token) || isLiteral(token) || type === OpenRound || type === Minus || type === Plus;
  }

  private missingValue(of: string): Value {
    const span = this.gap();
    const token = this.peek(1);
    if (!isEnd(token)) {
      this.fault("value.unreadable", this.nextSpan(), { sign: shown(token) });
      this.skipMember();
    } else if (of === "") this.fault("line.unfinished", span, {});
    else this.fault("value.missing", span, { name: of });
    return damaged(span);
  }

  // ------------------------------------------------------------ brackets

  protected readList(): ListValue {
    const items: Value[] = [];
    const start = this.next();
    this.readMembers(CloseSquare, this.readItem, items);
    return { kind: "list", span: this.since(start), items };
  }

  private readItem(): Value {
    return this.readValue("");
  }

  protected readGroup(): Group {
    const members: Expression[] = [];
    const start = this.next();
    this.readMembers(CloseRound, this.readExpression, members);
    return { kind: "group", span: this.since(start), members };
  }

  protected readArguments(): Argument[] {
    const args: Argument[] = [];
    this.readMembers(CloseRound, this.readArgument, args);
    return args;
  }

  protected readArgument(): Argument {
    const start = this.next();
    let name: NameNode | null = null;
    if (this.peek(2).tokenType === Colon && isWord(this.peek(1))) {
      name = nameOf(this.take());
      this.take();
    }
    const value = this.readValue(name?.text ?? "");
    return { span: this.since(start), name, value };
  }

  /**
   * What stands between two brackets, with commas between and line ends where they do no harm. The next token is the
   * opening one. A bracket that is not closed is reported and taken as closed.
   *
   * @param member - Reads one of them: a method of this parser.
   */
  private readMembers<M>(close: TokenType, member: () => M, members: M[]): void {
    const place = this.index();
    const first = this.take();
    this.readLineEnd(place);
    if (this.peek(1).tokenType === Comma) this.extraComma();
    if (this.startsMember()) members.push(member.call(this));
    this.afterMember(place, close);
    while (this.peek(1).tokenType === Comma) {
      this.take();
      this.readLineEnd(place);
      if (this.peek(1).tokenType === Comma) this.extraComma();
      if (this.startsMember()) members.push(member.call(this));
      this.afterMember(place, close);
    }
    if (this.peek(1).tokenType === NewLine && this.peek(2).tokenType === close) this.take();
    if (this.peek(1).tokenType === close) this.take();
    else this.unclosed(first, close);
  }

  private startsMember(): boolean {
    const type = this.peek(1).tokenType;
    return (
      this.startsOperand(1) || type === Text || type === TextBlock || type === Question || type === OpenSquare
    );
  }

  /** Behind an opening bracket or a comma a bracket goes on over the line end, unless the next line is a setting. */
  private readLineEnd(place: number): void {
    if (this.peek(1).tokenType !== NewLine) return;
    const after = this.peek(2);
    if (after.tokenType === EOF || after.tokenType === CloseBrace) return;
    const isSetting = isWord(after) && this.peek(3).tokenType === Colon;
    const isOpen = (this.run.unpaired || this.run.unbalanced) && this.brackets().closer[place] === -1;
    if (!isSetting || !isOpen) this.take();
  }

  protected extraComma(): void {
    while (this.peek(1).tokenType === Comma) {
      const span = this.nextSpan();
      this.fault("comma.extra", span, {}, { fixes: [this.fix(span, "", true, "take it out")] });
      this.take();
    }
  }

  /** After a member in brackets: a comma, the closing bracket or nothing that could be read on. */
  private afterMember(place: number, close: TokenType): void {
    const token = this.peek(1);
    if (token.tokenType === close || isEnd(token) || this.brackets().closer[place] === -1) return;
    const fixes = [this.fix(this.gap(), ",", false)];
    if (this.startsMember()) this.fault("comma.missing", this.nextSpan(), { sign: shown(token) }, { fixes });
    else this.fault("line.unreadable", this.nextSpan(), { sign: shown(token) });
    this.skipMember();
  }

  private unclosed(first: Token, close: TokenType): void {
    const related = [{ place: this.edit(spanOf(first), "").place, text: "opened here" }];
    const fixes = [this.fix(this.gap(), close === CloseRound ? ")" : "]", false)];
    this.fault("bracket.unclosed", this.gap(), {}, { related, fixes });
    const type = this.peek(1).tokenType;
    if (type === CloseRound || type === CloseSquare) this.take();
  }

  // ------------------------------------------------------------ expressions

  /** `a + b * c`: one chain of operands; precedence is worked out when the chain is complete. */
  protected readExpression(): Expression {
    const first = this.readOperand();
    if (!isOperator(this.peek(1))) return first;
    const links: Link[] = [];
    while (isOperator(this.peek(1))) {
      const sign = this.take();
      const value = this.readOperand();
      this.operators++;
      if (this.operators > MAX_OPERATORS) {
        this.fault("limit.operators", spanOf(sign), { limit: MAX_OPERATORS });
        this.skipMember();
        break;
      }
      links.push({ sign: sign.tokenType === Minus ? "-" : (sign.image as Link["sign"]), value });
    }
    return links.length === 0 ? first : chainOf(first, links);
  }

  /** One value of a chain, with its sign and its tolerance. */
  protected readOperand(): Expression {
    if (this.peek(1).tokenType === Plus) this.extraPlus();
    const start = this.next();
    const minus = this.peek(1).tokenType === Minus;
    if (minus) this.take();
    const plain = this.readPrimary();
    const value: Expression = minus
      ? { kind: "negation", span: { start, end: plain.span.end }, operand: plain }
      : plain;
    if (this.peek(1).tokenType !== PlusMinus) return value;
    this.take();
    const tolerance = this.readPrimary();
    return { kind: "toleranced", span: cover(value.span, tolerance.span), value, tolerance };
  }

  private readPrimary(): Expression {
    const token = this.peek(1);
    switch (token.tokenType) {
      case Numeral:
      case Fraction:
        return this.readQuantity();
      case FNumber:
        this.take();
        return fNumberOf(token);
      case Ratio:
        return ratioOf(this.take());
      case OpenRound:
        return this.readGroup();
      case Broken:
        return damaged(spanOf(this.take()));
      case IsoWord:
        return this.readIso();
    }
    if (!isWord(token) || this.isOperandMissing()) return this.missingOperand();
    return this.readReference();
  }

  private extraPlus(): void {
    const span = this.nextSpan();
    this.fault("operand.plus", span, {}, { fixes: [this.fix(span, "", true, "take it out")] });
    this.take();
  }

  /** Only a joining word that has its own value behind it: `a is within 5 %`. */
  private isOperandMissing(): boolean {
    if (!isJoining(this.peek(1))) return false;
    const after = this.peek(2);
    const type = after.tokenType;
    return isLiteral(after) || type === Text || type === Name || type === IsoWord;
  }

  private missingOperand(): Expression {
    const span = this.gap();
    const token = this.peek(1);
    if (token.tokenType === Text || token.tokenType === TextBlock) {
      const text = this.nextSpan();
      this.fault("operand.text", text, {});
      this.take();
      return damaged(text);
    }
    if (isEnd(token)) this.fault("line.unfinished", span, {}, this.behind(this.peek(0)));
    else this.fault("operand.missing", this.nextSpan(), { sign: shown(token) });
    return damaged(span);
  }

  /** What belongs behind a sign or a joining word at the end of a line; nothing to say behind anything else. */
  private behind(token: Token): { readonly help?: string } {
    const type = token.tokenType;
    if (type === PlusMinus)
      return { help: "behind `+-` stands how far the value may be off, such as `+- 2 cm` or `+- 5 %`" };
    const isSign = type === Plus || type === Minus || isOperator(token);
    return isSign || isJoining(token) ? { help: `a value belongs behind \`${token.image}\`` } : {};
  }

  protected readIso(): Expression {
    const word = this.take();
    const number = this.peek(1);
    if (number.tokenType === Numeral) {
      this.take();
      const span = this.since(word.startOffset);
      return { kind: "iso", span, value: numberOf(number), written: number.image };
    }
    this.fault("iso.form", spanOf(word), {});
    return damaged(spanOf(word));
  }

  /** A name, or a call: `throw`, `face.disc(towards: key)`. */
  protected readReference(): Expression {
    const path = this.readPath();
    const args = this.peek(1).tokenType === OpenRound ? this.readArguments() : null;
    const node: Reference = { kind: "reference", span: this.since(path.span.start), path, args };
    return args === null && path.parts.length === 1 ? this.singleName(node) : node;
  }
}
