import { EOF, type TokenType } from "chevrotain";
import { MAX_OPERATORS } from "../core/limits.js";
import { cover, type Span } from "../core/span.js";
import {
  AndWord,
  BecauseWord,
  BetweenWord,
  Broken,
  By,
  ByWord,
  CloseBrace,
  CloseRound,
  CloseSquare,
  Colon,
  Comma,
  CompoundUnit,
  Degree,
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
  Percent,
  Plus,
  PlusMinus,
  Question,
  Ratio,
  Slash,
  Text,
  TextBlock,
  Times,
  ToWord,
  UnderWord,
  WithinWord,
  Word,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type {
  Amount,
  Argument,
  Expression,
  FNumber as FNumberNode,
  Group,
  ListValue,
  Name as NameNode,
  Path,
  Quantity,
  Ratio as RatioNode,
  Reference,
  Relation,
  Unit,
  Value,
} from "./ast.js";
import { chainOf, damaged, type Link, nameOf, numberOf, shown, spanOf, textOf } from "./build.js";
import { isWord } from "./classify.js";
import { RecoveringParser } from "./recover.js";

/** Words that join two values; a value is missing where one of them stands with a value behind it. */
const joining: readonly TokenType[] = [
  FromWord,
  UnderWord,
  OverWord,
  IsWord,
  WithinWord,
  BetweenWord,
  AndWord,
  BecauseWord,
  ByWord,
  ToWord,
];
const literalStarts: readonly TokenType[] = [Numeral, Fraction, FNumber, Ratio, Broken];
const stops: readonly TokenType[] = [NewLine, Comma, CloseBrace, CloseRound, CloseSquare, EOF];

/** The rules of values and expressions. Expressions are read as one flat chain and folded by precedence afterwards. */
export abstract class ExpressionParser extends RecoveringParser {
  /** Operators on the line at hand. */
  protected operators = 0;
  /** Single names that look like an f-number or an ISO value without its sign: told when the whole file is known. */
  protected suspects: Token[] = [];

  // ------------------------------------------------------------ names

  protected path = this.RULE(
    "path",
    (): Path => {
      const parts: NameNode[] = [];
      const first = this.next();
      if (this.RECORDING_PHASE || this.at(Word)) parts.push(nameOf(this.CONSUME1(Word) as Token));
      else this.missingName();
      this.MANY(() => {
        this.CONSUME(Dot);
        if (this.RECORDING_PHASE || this.at(Word)) parts.push(nameOf(this.CONSUME2(Word) as Token));
        else this.missingName();
      });
      if (parts.length === 0) parts.push({ kind: "name", span: this.gap(), text: "", quoted: false });
      return {
        kind: "path",
        span: this.since(Math.min(first, this.here())),
        parts,
      };
    },
    { resyncEnabled: false },
  );

  /** A name has to stand here and does not. */
  protected missingName(): void {
    const token = this.peek(1);
    if (this.atAny(stops)) this.fault("line.unfinished", this.gap(), {});
    else this.fault("name.missing", this.nextSpan(), { sign: shown(token) });
  }

  // ------------------------------------------------------------ values

  /** What stands behind `name:` and in lists and calls. `of` is the name that the value belongs to. */
  protected value = this.RULE(
    "value",
    (of: string): Value => {
      if (!this.RECORDING_PHASE) {
        if (this.at(Plus)) this.extraPlus();
        if (!this.startsValue()) return this.missingValue(of);
      }
      return this.OR<Value>([
        { ALT: () => textOf(this.CONSUME(Text) as Token, false) },
        { ALT: () => textOf(this.CONSUME(TextBlock) as Token, true) },
        {
          ALT: () => ({
            kind: "unknown",
            span: spanOf(this.CONSUME(Question) as Token),
          }),
        },
        { ALT: () => this.SUBRULE(this.list) },
        { ALT: () => this.relationOrExpression() },
      ]);
    },
    { recoveryValueFunc: () => damaged(this.gap()) },
  );

  private relationOrExpression(): Value {
    const left = this.SUBRULE1(this.expression);
    const relation = this.OPTION((): Value => {
      const word = this.OR2([
        { ALT: () => this.CONSUME(FromWord) },
        { ALT: () => this.CONSUME(UnderWord) },
        { ALT: () => this.CONSUME(OverWord) },
        { ALT: () => this.CONSUME(IsWord) },
      ]);
      const right = this.SUBRULE2(this.expression);
      if (this.RECORDING_PHASE) return left;
      return {
        kind: "relation",
        span: cover(left.span, right.span),
        word: word.image as Relation["word"],
        left,
        right,
      };
    });
    return relation ?? left;
  }

  private startsValue(): boolean {
    const type = this.LA(1).tokenType;
    return (
      type === Text || type === TextBlock || type === Question || type === OpenSquare || this.startsOperand(1)
    );
  }

  /** Whether the token `ahead` can start an operand (with or without a minus). */
  protected startsOperand(ahead: number): boolean {
    const token = this.peek(ahead);
    const type = token.tokenType;
    return (
      isWord(token) || type === OpenRound || type === Minus || type === Plus || literalStarts.includes(type)
    );
  }

  private missingValue(of: string): Value {
    const span = this.gap();
    const close = this.peek(1).tokenType;
    if (stops.includes(close)) {
      if (of === "") this.fault("line.unfinished", span, {});
      else this.fault("value.missing", span, { name: of });
    } else {
      this.fault("value.unreadable", this.nextSpan(), {
        sign: shown(this.peek(1)),
      });
      this.skipMember();
    }
    return damaged(span);
  }

  protected list = this.RULE(
    "list",
    (): ListValue => {
      const items: Value[] = [];
      const start = this.next();
      this.members(OpenSquare, CloseSquare, (place) =>
        items.push(this.subrule(place, this.value, { ARGS: [""] })),
      );
      return { kind: "list", span: this.since(start), items };
    },
    { resyncEnabled: false },
  );

  /**
   * What stands between two brackets, with commas between and line ends where they do no harm.
   * Used once in a rule; a bracket that is not closed is reported and taken as closed.
   */
  private members(open: TokenType, close: TokenType, member: (place: 0 | 1) => void): void {
    const place = this.index();
    const first = this.consume(9, open) as Token;
    this.OPTION7({
      GATE: () => this.goesOn(place),
      DEF: () => this.CONSUME7(NewLine),
    });
    if (!this.RECORDING_PHASE && this.at(Comma)) this.extraComma();
    this.OPTION8({
      DEF: () => {
        member(0);
        this.afterMember(place, close);
        this.MANY9(() => {
          this.CONSUME9(Comma);
          this.OPTION9({
            GATE: () => this.goesOn(place),
            DEF: () => this.CONSUME9(NewLine),
          });
          if (!this.RECORDING_PHASE && this.at(Comma)) this.extraComma();
          this.option(1, () => member(1));
          this.afterMember(place, close);
        });
      },
    });
    this.option(2, {
      GATE: () => this.peek(2).tokenType === close,
      DEF: () => this.CONSUME8(NewLine),
    });
    this.afterMember(place, close);
    if (this.RECORDING_PHASE || this.at(close)) this.consume(8, close);
    else this.unclosed(first, close);
  }

  /** Whether a bracket goes on over this line end: the next line does not look like a setting. */
  private goesOn(place: number): boolean {
    const after = this.peek(2);
    if (after.tokenType === EOF || after.tokenType === CloseBrace) return false;
    if (!isWord(after) || this.peek(3).tokenType !== Colon) return true;
    return (!this.run.unpaired && !this.run.unbalanced) || this.brackets().closer[place] !== -1;
  }

  protected extraComma(): void {
    while (this.at(Comma)) {
      const span = this.nextSpan();
      this.fault("comma.extra", span, {}, { fixes: [this.fix(span, "", true, "take it out")] });
      this.take();
    }
  }

  /** After a member in brackets: a comma, the closing bracket or nothing that could be read on. */
  private afterMember(place: number, close: TokenType): void {
    if (this.RECORDING_PHASE || this.at(Comma) || this.at(close) || this.atAny(stops)) return;
    if (this.brackets().closer[place] === -1) return;
    const token = this.peek(1);
    const span = this.gap();
    if (this.startsOperand(1) || this.atAny([Text, OpenSquare])) {
      this.fault(
        "comma.missing",
        this.nextSpan(),
        { sign: shown(token) },
        { fixes: [this.fix(span, ",", false)] },
      );
    } else {
      this.fault("line.unreadable", this.nextSpan(), { sign: shown(token) });
    }
    this.skipMember();
  }

  private unclosed(first: Token, close: TokenType): void {
    const closing = close === CloseRound ? ")" : "]";
    const opened = spanOf(first);
    this.fault(
      "bracket.unclosed",
      this.gap(),
      {},
      {
        related: [{ place: this.edit(opened, "").place, text: "opened here" }],
        fixes: [this.fix(this.gap(), closing, false)],
      },
    );
    if (this.atAny([CloseRound, CloseSquare])) this.take();
  }

  // ------------------------------------------------------------ expressions

  /** `a + b * c`: one chain of operands; precedence is worked out when the chain is complete. */
  protected expression = this.RULE(
    "expression",
    (): Expression => {
      const first = this.SUBRULE1(this.operand);
      let links: Link[] | null = null;
      this.MANY(() => {
        const sign = this.OR([
          { ALT: () => this.CONSUME(Plus) },
          { ALT: () => this.CONSUME(Minus) },
          { ALT: () => this.CONSUME(Times) },
          { ALT: () => this.CONSUME(Slash) },
        ]);
        const value = this.SUBRULE2(this.operand);
        if (this.RECORDING_PHASE) return;
        this.operators++;
        if (this.operators > MAX_OPERATORS) {
          this.fault("limit.operators", spanOf(sign as Token), {
            limit: MAX_OPERATORS,
          });
          this.skipMember();
          return;
        }
        links ??= [];
        links.push({
          sign: sign.tokenType === Minus ? "-" : (sign.image as Link["sign"]),
          value,
        });
      });
      return links === null ? first : chainOf(first, links);
    },
    { recoveryValueFunc: () => damaged(this.gap()) },
  );

  /** One value of a chain, with its sign and its tolerance. */
  protected operand = this.RULE(
    "operand",
    (): Expression => {
      if (!this.RECORDING_PHASE && this.at(Plus)) this.extraPlus();
      const start = this.next();
      const minus = this.OPTION1(() => this.CONSUME(Minus));
      if (!this.RECORDING_PHASE && this.isOperandMissing()) return this.missingOperand();
      const plain = this.primary(0);
      const value: Expression =
        minus === undefined
          ? plain
          : {
              kind: "negation",
              span: { start, end: plain?.span?.end ?? start },
              operand: plain,
            };
      const tolerance = this.OPTION2(() => {
        this.CONSUME(PlusMinus);
        if (!this.RECORDING_PHASE && this.isOperandMissing()) return this.missingOperand();
        return this.primary(1);
      });
      if (this.RECORDING_PHASE || tolerance === undefined) return value;
      return {
        kind: "toleranced",
        span: cover(value.span, tolerance.span),
        value,
        tolerance,
      };
    },
    { resyncEnabled: false },
  );

  private primary(place: 0 | 1): Expression {
    return this.or<Expression>(place, [
      { ALT: () => this.subrule(place, this.quantity) },
      { ALT: () => this.fNumber(this.consume(place, FNumber) as Token) },
      { ALT: () => this.subrule(place, this.iso) },
      { ALT: () => this.ratio(this.consume(place, Ratio) as Token) },
      {
        ALT: () => this.subrule(place, this.reference),
        IGNORE_AMBIGUITIES: true,
      },
      { ALT: () => this.subrule(place, this.group) },
      { ALT: () => damaged(spanOf(this.consume(place, Broken) as Token)) },
    ]);
  }

  private extraPlus(): void {
    const span = this.nextSpan();
    this.fault("operand.plus", span, {}, { fixes: [this.fix(span, "", true, "take it out")] });
    this.take();
  }

  /** No operand starts here, or only a joining word that has its own value behind it. */
  private isOperandMissing(): boolean {
    const token = this.peek(1);
    if (!isWord(token)) return !(token.tokenType === OpenRound || literalStarts.includes(token.tokenType));
    if (!joining.includes(token.tokenType)) return false;
    const after = this.peek(2);
    return (
      literalStarts.includes(after.tokenType) ||
      after.tokenType === Text ||
      after.tokenType === Name ||
      after.tokenType === IsoWord
    );
  }

  private missingOperand(): Expression {
    const span = this.gap();
    const token = this.peek(1);
    if (this.atAny([Text, TextBlock])) {
      const text = this.nextSpan();
      this.fault("operand.text", text, {});
      this.take();
      return damaged(text);
    }
    if (this.atAny(stops)) this.fault("line.unfinished", span, {});
    else this.fault("operand.missing", this.nextSpan(), { sign: shown(token) });
    return damaged(span);
  }

  private fNumber(token: Token): FNumberNode {
    return {
      kind: "f-number",
      span: spanOf(token),
      value: numberOf(token),
      written: token.image,
    };
  }

  private ratio(token: Token): RatioNode {
    const colon = token.image.indexOf(":");
    const left = Number(token.image.slice(0, colon));
    const right = Number(token.image.slice(colon + 1));
    return { kind: "ratio", span: spanOf(token), left, right };
  }

  protected iso = this.RULE(
    "iso",
    (): Expression => {
      const word = this.CONSUME(IsoWord) as Token;
      if (this.RECORDING_PHASE || this.at(Numeral)) {
        const number = this.CONSUME(Numeral) as Token;
        return {
          kind: "iso",
          span: this.since(word.startOffset),
          value: numberOf(number),
          written: number.image,
        };
      }
      this.fault("iso.form", this.since(word.startOffset), {});
      return damaged(spanOf(word));
    },
    { resyncEnabled: false },
  );

  protected group = this.RULE(
    "group",
    (): Group => {
      const members: Expression[] = [];
      const start = this.next();
      this.members(OpenRound, CloseRound, (place) => members.push(this.subrule(place, this.expression)));
      return { kind: "group", span: this.since(start), members };
    },
    { resyncEnabled: false },
  );

  // ------------------------------------------------------------ quantities

  /** `2.4 m`, `60 x 90 cm`, `5 ft 7 1/2 in`. */
  protected quantity = this.RULE(
    "quantity",
    (): Expression => {
      const start = this.next();
      const amounts: Amount[] = [this.SUBRULE1(this.amount)];
      let joined: Quantity["joined"] = "single";
      let mixed = false;
      this.MANY(() => {
        const by = this.OPTION(() => this.CONSUME(By));
        const before = amounts[amounts.length - 1];
        const amount = this.SUBRULE2(this.amount);
        if (this.RECORDING_PHASE) return;
        const join = by === undefined ? "beside" : "by";
        if (joined !== "single" && joined !== join) mixed = true;
        if (join === "beside" && before?.unit === null) this.sideBySide(before, amount);
        joined = join;
        amounts.push(amount);
      });
      const node: Quantity = {
        kind: "quantity",
        span: this.since(start),
        joined,
        amounts,
      };
      if (this.RECORDING_PHASE) return node;
      if (mixed) {
        this.fault("number.mixed-join", node.span, {});
        return damaged(node.span);
      }
      return this.afterQuantity(node);
    },
    { resyncEnabled: false },
  );

  private sideBySide(before: Amount, amount: Amount): void {
    const span = cover(before.span, amount.span);
    if (/^\d{1,3}$/.test(before.written) && /^\d{3}$/.test(amount.written)) {
      const digits = before.written + amount.written;
      const numbers = {
        start: before.span.start,
        end: amount.span.start + amount.written.length,
      };
      this.fault("number.grouped", span, {}, { fixes: [this.fix(numbers, digits, false)] });
    } else {
      this.fault("number.side-by-side", span, {});
    }
  }

  /** Looks at what stands behind a quantity and cannot belong to it. */
  private afterQuantity(node: Quantity): Expression {
    const amount = node.amounts[0];
    const token = this.peek(1);
    if (token.tokenType === IsoWord && amount?.unit === null && this.peek(2).tokenType !== Numeral) {
      const span = { start: node.span.start, end: token.endOffset + 1 };
      this.fault("iso.form", span, {}, { fixes: [this.fix(span, `ISO ${amount.written}`, true)] });
      this.take();
      return {
        kind: "iso",
        span,
        value: amount.value,
        written: amount.written,
      };
    }
    if (token.tokenType === Name && this.peek(2).tokenType !== Colon) {
      const last = node.amounts[node.amounts.length - 1]?.unit;
      if (last?.text.includes(" ")) {
        this.fault("unit.words", spanOf(token), { word: shown(token) });
        while (this.peek(1).tokenType === Name && this.peek(2).tokenType !== Colon) this.take();
      }
    }
    return node;
  }

  protected amount = this.RULE(
    "amount",
    (): Amount => {
      let written: Token | null = null;
      let part: Token | undefined;
      this.OR1([
        {
          ALT: () => {
            written = this.CONSUME(Numeral) as Token;
            part = this.OPTION1(() => this.CONSUME1(Fraction) as Token);
          },
        },
        {
          ALT: () => {
            written = this.CONSUME2(Fraction) as Token;
          },
        },
      ]);
      const unit = this.OPTION2({
        GATE: () => this.startsUnit(),
        DEF: () => this.SUBRULE(this.unit),
      });
      if (written === null) return { span: this.gap(), value: 0, written: "", unit: null };
      return this.amountOf(written, part, unit ?? null);
    },
    { resyncEnabled: false },
  );

  private amountOf(number: Token, part: Token | undefined, unit: Unit | null): Amount {
    const value = numberOf(number) + (part === undefined ? 0 : numberOf(part));
    const span = {
      start: number.startOffset,
      end: unit?.span?.end ?? (part ?? number).endOffset + 1,
    };
    const written = part === undefined ? number.image : `${number.image} ${part.image}`;
    if (Number.isFinite(value)) return { span, value, written, unit };
    this.fault("number.too-large", span, {});
    return { span, value: 0, written, unit };
  }

  /** A name behind a number is its unit, unless it is the name of the next setting. */
  private startsUnit(): boolean {
    return this.peek(1).tokenType !== Name || this.peek(2).tokenType !== Colon;
  }

  protected unit = this.RULE(
    "unit",
    (): Unit => {
      let text = "";
      const start = this.next();
      this.OR([
        {
          ALT: () => {
            text = this.CONSUME1(Name).image;
            this.OPTION({
              GATE: () => this.startsUnit(),
              DEF: () => {
                text = `${text} ${this.CONSUME2(Name).image}`;
              },
            });
          },
        },
        {
          ALT: () => {
            text = this.CONSUME(CompoundUnit).image;
          },
        },
        {
          ALT: () => {
            text = this.CONSUME(Percent).image;
          },
        },
        {
          ALT: () => {
            this.CONSUME(Degree);
            text = "°";
          },
        },
      ]);
      return { span: this.since(start), text };
    },
    { resyncEnabled: false },
  );

  // ------------------------------------------------------------ references

  /** A name, or a call: `throw`, `face.disc(towards: key)`. */
  protected reference = this.RULE(
    "reference",
    (): Expression => {
      const path = this.SUBRULE(this.path);
      const args = this.OPTION(() => this.SUBRULE(this.callArguments)) ?? null;
      if (this.RECORDING_PHASE) return damaged({ start: 0, end: 0 });
      const node: Reference = {
        kind: "reference",
        span: this.since(path.span.start),
        path,
        args,
      };
      return args === null && path.parts.length === 1 ? this.singleName(node) : node;
    },
    { resyncEnabled: false },
  );

  protected callArguments = this.RULE(
    "callArguments",
    (): Argument[] => {
      const args: Argument[] = [];
      this.members(OpenRound, CloseRound, (place) => args.push(this.subrule(place, this.argument)));
      return args;
    },
    { resyncEnabled: false },
  );

  protected argument = this.RULE(
    "argument",
    (): Argument => {
      const start = this.next();
      const name =
        this.OPTION({
          GATE: () => this.peek(2).tokenType === Colon,
          DEF: () => {
            const word = nameOf(this.CONSUME(Word) as Token);
            this.CONSUME(Colon);
            return word;
          },
        }) ?? null;
      const value = this.SUBRULE(this.value, { ARGS: [name?.text ?? ""] });
      return { span: this.since(start), name, value };
    },
    { resyncEnabled: false },
  );

  /** A name without a call: `f 8`, `iso 200` and `m 3` are told apart here, `f8` and `iso200` when the file is known. */
  private singleName(node: Reference): Expression {
    const name = node.path.parts[0];
    if (name === undefined || name.quoted) return node;
    const isF = name.text === "f" || name.text === "F" || name.text === "ƒ";
    const type = this.peek(1).tokenType;
    if (type === Numeral || type === Fraction) {
      const number = this.take();
      const span: Span = { start: node.span.start, end: number.endOffset + 1 };
      if (isF) return this.wrongFNumber(span, number);
      if (name.text.toLowerCase() === "iso") {
        this.fault("iso.form", span, {}, { fixes: [this.fix(span, `ISO ${number.image}`, true)] });
        return {
          kind: "iso",
          span,
          value: numberOf(number),
          written: number.image,
        };
      }
      this.fault("unit.order", span, {}, { fixes: [this.fix(span, `${number.image} ${name.text}`, false)] });
      return damaged(span);
    }
    if (isF && type === Slash && this.peek(2).tokenType === Numeral) {
      this.take();
      const number = this.take();
      return this.wrongFNumber({ start: node.span.start, end: number.endOffset + 1 }, number);
    }
    if (/^(?:[fF]|iso)\d+$/i.test(name.text)) this.suspects.push(this.peek(0));
    return node;
  }

  private wrongFNumber(span: Span, number: Token): Expression {
    this.fault("f-number.slash", span, {}, { fixes: [this.fix(span, `f/${number.image}`, true)] });
    return {
      kind: "f-number",
      span,
      value: numberOf(number),
      written: `f/${number.image}`,
    };
  }
}
