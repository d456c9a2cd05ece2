import { EOF, type TokenType } from "chevrotain";
import { cover, type Span } from "../core/span.js";
import {
  AndWord,
  BecauseWord,
  BetweenWord,
  ByWord,
  CloseBrace,
  Comma,
  Dot,
  DoubleEquals,
  Equals,
  ExpectWord,
  Greater,
  GreaterEqual,
  HoldWord,
  IsWord,
  Less,
  LessEqual,
  NewLine,
  OpenRound,
  OverWord,
  SurelyWord,
  Text,
  UnderWord,
  WithinWord,
  Word,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type { Claim, Comparison, Expect, Expression, Hold, Name, Path, Reading, TextLiteral } from "./ast.js";
import { BlockParser } from "./blocks.js";
import { damaged, nameOf, shown, spanOf, textOf } from "./build.js";

const comparisons: readonly TokenType[] = [Less, LessEqual, Greater, GreaterEqual];

const signs: ReadonlyMap<TokenType, Comparison> = new Map<TokenType, Comparison>([
  [Less, "<"],
  [LessEqual, "<="],
  [Greater, ">"],
  [GreaterEqual, ">="],
]);

/** Claims, and the statements that hold readings: `expect`, `hold`, and the lines of `measured`. */
export abstract class ClaimParser extends BlockParser {
  // ------------------------------------------------------------ parts of statements

  /** Reports that a statement does not go on as it has to. */
  protected part(statement: string, part: string, example: string): void {
    const span = this.atAny([NewLine, Comma, CloseBrace, EOF]) ? this.gap() : this.nextSpan();
    this.fault("statement.part", span, { statement, part, example });
  }

  /** Takes a word of the language, or reports that it is missing. */
  protected need(place: number, type: TokenType, statement: string, part: string, example: string): boolean {
    if (this.RECORDING_PHASE || this.at(type)) {
      this.consume(place, type);
      return true;
    }
    this.part(statement, part, example);
    return false;
  }

  /** Takes a name, or reports that it is missing. */
  protected needName(place: number, statement: string, part: string, example: string): Name | null {
    if (this.RECORDING_PHASE || this.at(Word)) return nameOf(this.consume(place, Word) as Token);
    this.part(statement, part, example);
    return null;
  }

  /** Takes a text, or reports that it is missing. */
  protected needText(place: number, statement: string, part: string, example: string): TextLiteral | null {
    if (this.RECORDING_PHASE || this.at(Text)) return textOf(this.consume(place, Text) as Token, false);
    this.part(statement, part, example);
    return null;
  }

  /** Takes a path, or reports that it is missing. */
  protected needPath(place: number, statement: string, example: string): Path | null {
    if (this.RECORDING_PHASE || this.at(Word)) return this.subrule(place, this.path);
    this.part(statement, "a name", example);
    return null;
  }

  // ------------------------------------------------------------ claims

  /** What an `expect` or a `meet` says. */
  protected claim = this.RULE(
    "claim",
    (statement: string): Claim => {
      const start = this.next();
      if (!this.RECORDING_PHASE && !this.startsOperand(1)) return this.emptyClaim(statement);
      const value = this.SUBRULE1(this.expression);
      if (!this.RECORDING_PHASE && this.atAny([DoubleEquals, Equals])) return this.equalsClaim(value, start);
      const claim = this.OPTION1(() =>
        this.OR1<Claim>([
          {
            ALT: () => {
              this.CONSUME(IsWord);
              return this.isClaim(value, start);
            },
          },
          {
            ALT: () => {
              this.CONSUME1(BetweenWord);
              return this.betweenClaim(value, start);
            },
          },
          { ALT: () => this.comparison(value, start) },
        ]),
      );
      return claim ?? { kind: "bare", span: this.since(start), value };
    },
    {
      recoveryValueFunc: (): Claim => ({
        kind: "bare",
        span: this.gap(),
        value: damaged(this.gap()),
      }),
    },
  );

  private emptyClaim(statement: string): Claim {
    const span = this.gap();
    if (this.atAny([NewLine, CloseBrace, EOF])) this.fault("claim.empty", span, { statement });
    else {
      this.fault("value.unreadable", this.nextSpan(), {
        sign: shown(this.peek(1)),
      });
      this.skipLine();
    }
    return { kind: "bare", span, value: damaged(span) };
  }

  /** Behind `is`. A comparison or `between` there is put right. */
  private isClaim(value: Expression, start: number): Claim {
    if (!this.RECORDING_PHASE) {
      const slip = this.comparisonBehindIs(value, start);
      if (slip !== null) return slip;
    }
    const target = this.SUBRULE2(this.expression);
    const side =
      this.OPTION2(() => {
        const word = this.OR2([
          { ALT: () => this.CONSUME(UnderWord) },
          { ALT: () => this.CONSUME(OverWord) },
        ]);
        const of = this.SUBRULE3(this.expression);
        return { word: word.image as "under" | "over", of };
      }) ?? null;
    let within: Expression | null = null;
    if (this.RECORDING_PHASE || this.at(WithinWord)) {
      this.CONSUME(WithinWord);
      within = this.SUBRULE4(this.expression);
    } else this.missingTolerance(target);
    return { kind: "is", span: this.since(start), value, target, side, within };
  }

  private comparisonBehindIs(value: Expression, start: number): Claim | null {
    const word = spanOf(this.peek(0));
    const token = this.peek(1);
    const after = this.peek(2).tokenType;
    const isWordOf = (type: TokenType): boolean =>
      token.tokenType === type && after !== OpenRound && after !== Dot;
    if (comparisons.includes(token.tokenType) || isWordOf(BetweenWord)) {
      this.fault(
        "claim.comparison",
        word,
        {},
        { fixes: [this.fix(this.tight(word), "", true, "take out `is`")] },
      );
      if (!this.at(BetweenWord)) return this.comparison(value, start);
      this.take();
      return this.betweenClaim(value, start);
    }
    if (!isWordOf(UnderWord) && !isWordOf(OverWord)) return null;
    const sign = token.tokenType === UnderWord ? "<" : ">";
    const span = cover(word, spanOf(token));
    this.fault("claim.comparison", span, {}, { fixes: [this.fix(span, sign, true)] });
    this.take();
    const target = this.SUBRULE2(this.expression);
    return { kind: "compare", span: this.since(start), value, sign, target };
  }

  /** A word with the blank before it. */
  private tight(span: Span): Span {
    return this.run.text.charAt(span.start - 1) === " " ? { start: span.start - 1, end: span.end } : span;
  }

  private missingTolerance(target: Expression): void {
    const tolerance = toleranceFor(target);
    this.fault(
      "claim.within",
      this.gap(),
      {},
      {
        fixes: [
          this.fix(
            this.gap(),
            ` within ${tolerance}`,
            false,
            `add \`within ${tolerance}\`, or another tolerance`,
          ),
        ],
      },
    );
  }

  private betweenClaim(value: Expression, start: number): Claim {
    const low = this.SUBRULE5(this.expression);
    if (!this.need(1, AndWord, "between", "`and` and the upper value", "between 2 m and 3 m")) {
      return {
        kind: "between",
        span: this.since(start),
        value,
        low,
        high: damaged(this.gap()),
      };
    }
    const high = this.SUBRULE6(this.expression);
    return { kind: "between", span: this.since(start), value, low, high };
  }

  private comparison(value: Expression, start: number): Claim {
    const sign = this.OR3([
      { ALT: () => this.CONSUME(Less) },
      { ALT: () => this.CONSUME(LessEqual) },
      { ALT: () => this.CONSUME(Greater) },
      { ALT: () => this.CONSUME(GreaterEqual) },
    ]);
    const target = this.SUBRULE7(this.expression);
    return {
      kind: "compare",
      span: this.since(start),
      value,
      sign: signs.get(sign.tokenType) ?? "<",
      target,
    };
  }

  /** `a == b` and `a = b`: reported, and read as `is`. */
  private equalsClaim(value: Expression, start: number): Claim {
    const sign = this.take();
    const target = this.readExpression();
    let within: Expression | null = null;
    const edits = [this.edit(this.spaced(spanOf(sign)), " is ")];
    if (this.at(WithinWord)) {
      this.take();
      within = this.readExpression();
    } else edits.push(this.edit(this.gap(), ` within ${toleranceFor(target)}`));
    const title =
      within === null
        ? `write \`is ... within ${toleranceFor(target)}\`, or another tolerance`
        : "write `is`";
    const fixes = [{ title, certain: within !== null, edits }];
    this.fault("claim.equals", spanOf(sign), { sign: sign.image }, { fixes });
    return { kind: "is", span: this.since(start), value, target, side: null, within };
  }

  /** A sign with the blanks around it. */
  private spaced(span: Span): Span {
    const text = this.run.text;
    let { start, end } = span;
    while (text.charAt(start - 1) === " ") start--;
    while (text.charAt(end) === " ") end++;
    return { start, end };
  }

  // ------------------------------------------------------------ expect, hold, readings

  protected expect = this.RULE(
    "expect",
    (): Expect => {
      const start = this.next();
      this.CONSUME(ExpectWord);
      const surely =
        this.OPTION1({
          GATE: () => this.isSurely(),
          DEF: () => this.CONSUME(SurelyWord),
        }) !== undefined;
      const claims: Claim[] = [this.SUBRULE1(this.claim, { ARGS: ["expect"] })];
      this.MANY(() => {
        this.CONSUME(AndWord);
        claims.push(this.SUBRULE2(this.claim, { ARGS: ["and"] }));
      });
      const because =
        this.OPTION2({
          GATE: () => this.becauseFollows(),
          DEF: () => {
            this.OPTION3(() => this.CONSUME(NewLine));
            this.CONSUME(BecauseWord);
            return this.needText(0, "because", "a text", 'because "the stand has to fit"');
          },
        }) ?? null;
      return {
        kind: "expect",
        span: this.since(start),
        surely,
        claims,
        because,
      };
    },
    { resyncEnabled: false },
  );

  private isSurely(): boolean {
    const after = this.peek(2).tokenType;
    // A place may be called `is` or `between`; a point then follows, and no value begins with one.
    const named = this.peek(3).tokenType === Dot;
    return this.startsOperand(2) && (named || (after !== IsWord && after !== BetweenWord));
  }

  private becauseFollows(): boolean {
    if (this.at(BecauseWord)) return true;
    return this.peek(2).tokenType === BecauseWord && this.peek(3).tokenType === Text;
  }

  protected hold = this.RULE(
    "hold",
    (): Hold => {
      const start = this.next();
      this.CONSUME(HoldWord);
      const reading = this.SUBRULE1(this.expression);
      const target =
        this.OPTION(() => {
          this.CONSUME(IsWord);
          return this.SUBRULE2(this.expression);
        }) ?? null;
      const by: Path[] = [];
      const example = "hold face.disc(towards: key) is f/8 by key.power";
      if (this.need(0, ByWord, "hold", "`by` and what may be changed", example)) {
        const first = this.needPath(3, "hold", example);
        if (first !== null) by.push(first);
        this.MANY({
          GATE: () => this.pathFollows(),
          DEF: () => {
            this.CONSUME(Comma);
            by.push(this.SUBRULE4(this.path));
          },
        });
      }
      return { kind: "hold", span: this.since(start), reading, target, by };
    },
    { resyncEnabled: false },
  );

  /** `face.disc(towards: key) is f/8`, a line of `measured`. */
  protected reading = this.RULE(
    "reading",
    (): Reading => {
      const start = this.next();
      const reading = this.SUBRULE1(this.expression);
      let value: Expression = damaged(this.gap());
      if (this.need(0, IsWord, "measured", "`is` and the value", "face.disc(towards: key) is f/8")) {
        value = this.SUBRULE2(this.expression);
      }
      return { kind: "reading", span: this.since(start), reading, value };
    },
    { resyncEnabled: false },
  );
}

/** A usual tolerance for a value of this kind; only ever offered, never taken. */
function toleranceFor(target: Expression): string {
  switch (target.kind) {
    case "f-number":
    case "iso":
    case "ratio":
      return "1/3 stop";
    case "quantity": {
      const unit = target.amounts[target.amounts.length - 1]?.unit?.text;
      if (unit === "EV" || unit === "stop" || unit === "stops") return "1/3 stop";
      return unit === "K" ? "10 mired" : "5 %";
    }
    default:
      return "5 %";
  }
}
