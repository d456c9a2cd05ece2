import { cover } from "../core/span.js";
import {
  By,
  Colon,
  Comma,
  CompoundUnit,
  Degree,
  Fraction,
  IsoWord,
  Name,
  Numeral,
  OpenRound,
  Percent,
  Slash,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type { Amount, Expression, Quantity, Reference, Unit } from "./ast.js";
import { amountSpan, damaged, numberOf, shown, spanOf } from "./build.js";
import { RecoveringParser } from "./recover.js";
import { endOfMember } from "./structure.js";

/** Words of directions, which take their amount in brackets. */
const directionWords: readonly string[] = ["left", "right", "ahead", "behind", "up", "down"];

/** Reads numbers with their units, and names that were meant as such. */
export abstract class QuantityParser extends RecoveringParser {
  /** Single names that look like an f-number or an ISO value without its sign: told when the whole file is known. */
  protected suspects: Token[] = [];

  /** `2.4 m`, `60 x 90 cm`, `5 ft 7 1/2 in`. The next token is a number. */
  protected readQuantity(): Expression {
    const first = this.readAmount();
    const amounts = [first];
    let joined: Quantity["joined"] = "single";
    let mixed = false;
    for (;;) {
      const type = this.peek(1).tokenType;
      const by = type === By;
      if (!by && type !== Numeral && type !== Fraction) break;
      if (by) this.take();
      const before = amounts[amounts.length - 1] ?? first;
      const amount = this.readAmount();
      const join = by ? "by" : "beside";
      if (joined !== "single" && joined !== join) mixed = true;
      if (!by && before.unit === null) this.sideBySide(before, amount);
      joined = join;
      amounts.push(amount);
    }
    const node: Quantity = { kind: "quantity", span: this.since(first.span.start), joined, amounts };
    if (!mixed) return this.afterQuantity(node);
    this.fault("number.mixed-join", node.span, {});
    return damaged(node.span);
  }

  private sideBySide(before: Amount, amount: Amount): void {
    const span = cover(before.span, amount.span);
    if (/^\d{1,3}$/.test(before.written) && /^\d{3}$/.test(amount.written)) {
      const digits = before.written + amount.written;
      const numbers = { start: before.span.start, end: amount.span.start + amount.written.length };
      this.fault("number.grouped", span, {}, { fixes: [this.fix(numbers, digits, false)] });
    } else {
      this.fault("number.side-by-side", span, {});
    }
  }

  /** Looks at what stands behind a quantity and cannot belong to it. */
  private afterQuantity(node: Quantity): Expression {
    const token = this.peek(1);
    const amount = node.amounts[0];
    const unit = amount?.unit?.text ?? "";
    const side = /^(?:deg |degrees? )?(left|right)$/.exec(unit)?.[1];
    if (side !== undefined && amount !== undefined && node.amounts.length === 1) {
      const fix = this.fix(node.span, `${side}(${amount.written} deg)`, false);
      this.fault("bearing.brackets", node.span, { word: side }, { fixes: [fix] });
      return damaged(node.span);
    }
    if (token.tokenType === IsoWord && amount?.unit === null && this.peek(2).tokenType !== Numeral) {
      const span = { start: node.span.start, end: token.endOffset + 1 };
      this.fault("iso.form", span, {}, { fixes: [this.fix(span, `ISO ${amount.written}`, true)] });
      this.take();
      return { kind: "iso", span, value: amount.value, written: amount.written };
    }
    if (this.startsUnit(token) && node.amounts[node.amounts.length - 1]?.unit?.text.includes(" ")) {
      this.fault("unit.words", spanOf(token), { word: shown(token) });
      while (this.startsUnit(this.peek(1))) this.take();
    }
    return node;
  }

  private readAmount(): Amount {
    const number = this.take();
    const next = this.peek(1);
    const mixed = number.tokenType === Numeral && next.tokenType === Fraction;
    if (mixed) this.take();
    const value = numberOf(number) + (mixed ? numberOf(next) : 0);
    const unit = this.readUnit();
    const span = amountSpan(number, mixed ? next : number, unit);
    const written = mixed ? `${number.image} ${next.image}` : number.image;
    if (Number.isFinite(value)) return { span, value, written, unit };
    this.fault("number.too-large", span, {});
    return { span, value: 0, written, unit };
  }

  /** A unit, where one follows. */
  protected readUnit(): Unit | null {
    const token = this.peek(1);
    switch (token.tokenType) {
      case Name: {
        if (!this.startsUnit(token)) return null;
        this.take();
        const second = this.peek(1);
        if (!this.startsUnit(second)) return { span: spanOf(token), text: token.image };
        this.take();
        return { span: this.since(token.startOffset), text: `${token.image} ${second.image}` };
      }
      case CompoundUnit:
      case Percent:
        this.take();
        return { span: spanOf(token), text: token.image };
      case Degree:
        this.take();
        return { span: spanOf(token), text: "°" };
    }
    return null;
  }

  /** A name behind a number is its unit, unless it is the name of the next setting. */
  private startsUnit(token: Token): boolean {
    return token.tokenType === Name && this.peek(2).tokenType !== Colon;
  }

  /** A name without a call: `f 8`, `iso 200` and `m 3` are told here, `f8` and `iso200` when the file is known. */
  protected singleName(node: Reference): Expression {
    const name = node.path.parts[0];
    if (name === undefined || name.quoted) return node;
    const isF = name.text === "f" || name.text === "F" || name.text === "ƒ";
    const type = this.peek(1).tokenType;
    if (type === Numeral || type === Fraction) {
      if (this.isArgumentName()) return this.argumentWithoutColon(name);
      const number = this.take();
      const span = { start: node.span.start, end: number.endOffset + 1 };
      if (isF) return this.wrongFNumber(span.start, number);
      if (name.text.toLowerCase() === "iso") {
        this.fault("iso.form", span, {}, { fixes: [this.fix(span, `ISO ${number.image}`, true)] });
        return { kind: "iso", span, value: numberOf(number), written: number.image };
      }
      if (directionWords.includes(name.text))
        return this.directionWithoutBrackets(name.text, span.start, number);
      this.fault("unit.order", span, {}, { fixes: [this.fix(span, `${number.image} ${name.text}`, false)] });
      return damaged(span);
    }
    if (isF && type === Slash && this.peek(2).tokenType === Numeral) {
      this.take();
      return this.wrongFNumber(node.span.start, this.take());
    }
    if (isWithoutSign(name.text)) this.suspects.push(this.peek(0));
    return node;
  }

  /** Whether the name just read begins an argument of a call and stands before a number that has its unit behind it. */
  private isArgumentName(): boolean {
    const { tokens } = this.run;
    const at = this.index() - 1;
    const opener = this.brackets().around[at] ?? -1;
    const isCall = tokens[opener]?.tokenType === OpenRound && tokens[opener - 1]?.tokenType === Name;
    const isFirst = at - 1 === opener || tokens[at - 1]?.tokenType === Comma;
    const unit = this.peek(2).tokenType;
    return (
      isCall &&
      isFirst &&
      (unit === Name || unit === Degree) &&
      !directionWords.includes(tokens[at]?.image ?? "")
    );
  }

  /** `metered(f/8, at 2 m, ISO 100)`: an argument whose colon is missing. */
  private argumentWithoutColon(name: Reference["path"]["parts"][number]): Expression {
    const after = endOfMember(this.run.tokens, this.brackets(), this.index());
    const last = this.run.tokens[after - 1] ?? this.peek(0);
    const span = { start: name.span.start, end: last.endOffset + 1 };
    const value = this.run.text.slice(name.span.end, span.end).trim();
    const fixes = [this.fix(span, `${name.text}: ${value}`, false)];
    this.fault("colon.missing", name.span, { name: name.text }, { fixes });
    this.skipMember();
    return damaged(span);
  }

  /** `left 60`, `right 80 cm`: an angle or a step of an offset whose brackets are missing. */
  private directionWithoutBrackets(word: string, start: number, number: Token): Expression {
    const unit = this.readUnit();
    const first = this.since(start);
    const amount = this.run.text.slice(number.startOffset, first.end);
    const steps = [`${word}: ${amount}`, ...this.furtherSteps()];
    const span = this.since(start);
    if (steps.length > 1) {
      this.fault(
        "bearing.brackets",
        span,
        { word },
        { fixes: [this.fix(span, `offset(${steps.join(", ")})`, false)] },
      );
      return damaged(span);
    }
    const angle = unit === null || /^(deg|degrees?|°)$/.test(unit.text);
    const side = word === "left" || word === "right";
    const written =
      angle && side ? `${word}(${unit === null ? `${amount} deg` : amount})` : `offset(${word}: ${amount})`;
    this.fault("bearing.brackets", span, { word }, { fixes: [this.fix(span, written, false)] });
    return damaged(span);
  }

  /** What goes on like `, behind 30 cm`: more steps of the same offset. */
  private furtherSteps(): readonly string[] {
    const steps: string[] = [];
    while (
      this.peek(1).image === "," &&
      directionWords.includes(this.peek(2).image) &&
      this.peek(3).tokenType === Numeral
    ) {
      this.take();
      const word = this.take().image;
      const number = this.take();
      this.readUnit();
      steps.push(`${word}: ${this.run.text.slice(number.startOffset, this.since(number.startOffset).end)}`);
    }
    return steps;
  }

  private wrongFNumber(start: number, number: Token): Expression {
    const span = { start, end: number.endOffset + 1 };
    const written = `f/${number.image}`;
    this.fault("f-number.slash", span, {}, { fixes: [this.fix(span, written, true)] });
    return { kind: "f-number", span, value: numberOf(number), written };
  }
}

/** `f8`, `iso200` */
function isWithoutSign(word: string): boolean {
  const last = word.charCodeAt(word.length - 1);
  return last >= 48 && last <= 57 && /^(?:f|iso)\d+$/i.test(word);
}
