import { EOF, type ParserMethod, type TokenType } from "chevrotain";
import {
  CloseBrace,
  CloseRound,
  CloseSquare,
  Colon,
  Comma,
  DefineWord,
  Dot,
  Equals,
  ExpectWord,
  FNumber,
  HoldWord,
  LetWord,
  MeasuredWord,
  Name,
  NewLine,
  Numeral,
  OpenBrace,
  SolveWord,
  SurelyWord,
  TableWord,
  UseWord,
  VariantWord,
  WithWord,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import { shown, spanOf } from "./build.js";
import { classify, pathEnd } from "./classify.js";
import { isWord } from "./token-classes.js";
import { firstUnclosed } from "./unclosed.js";
import { ValueRules } from "./value-rules.js";

/** Words that start a statement of the file. */
export const statementWords: readonly TokenType[] = [
  UseWord,
  LetWord,
  DefineWord,
  ExpectWord,
  FNumber,
  HoldWord,
  TableWord,
  VariantWord,
  SolveWord,
  MeasuredWord,
];

/** Lines: where they start, where they end, and those that stand in braces. */
export abstract class LineParser extends ValueRules {
  /** Blocks that are open where the parser is. */
  protected openBlocks = 0;

  /**
   * Reads braces with lines in them, separated by line ends and, where `commas` says so, by commas. The next token
   * is the opening brace. A block that is not closed is reported and taken as closed.
   *
   * @param line - Reads one line and adds what it holds to `lines`: a method of this parser, since one made for every
   *   block would be compiled again and again.
   */
  protected readBraces<L>(commas: boolean, line: (lines: L[]) => void, lines: L[]): void {
    const indented = this.run.unbalanced && this.isIndented(this.index());
    this.take();
    this.openBlocks++;
    if (this.peek(1).tokenType === NewLine) this.take();
    this.readLine(commas, line, lines);
    for (;;) {
      const type = this.peek(1).tokenType;
      if (type === NewLine) {
        if (indented && this.leaves()) break;
        this.take();
      } else if (type === Comma && commas) {
        this.take();
        if (this.peek(1).tokenType === NewLine) this.take();
      } else break;
      this.readLine(commas, line, lines);
    }
    if (this.peek(1).tokenType === CloseBrace) this.take();
    else this.unclosedBlock();
    this.openBlocks--;
  }

  /** The grammar of braces with lines in them. */
  protected braces(commas: boolean, line: ParserMethod<never[], unknown>): void {
    this.CONSUME(OpenBrace);
    this.OPTION7(() => this.CONSUME7(NewLine));
    this.OPTION8(() => this.SUBRULE8(line));
    this.MANY9(() => {
      if (commas) {
        this.OR9([
          { ALT: () => this.CONSUME8(NewLine) },
          {
            ALT: () => {
              this.CONSUME9(Comma);
              this.OPTION9(() => this.CONSUME9(NewLine));
            },
          },
        ]);
      } else this.CONSUME8(NewLine);
      this.option(10, () => this.SUBRULE9(line));
    });
    this.CONSUME(CloseBrace);
  }

  private readLine<L>(commas: boolean, line: (lines: L[]) => void, lines: L[]): void {
    this.startLine();
    if (!isWord(this.peek(1))) return;
    line.call(this, lines);
    this.endLine(commas);
  }

  /** Comes to a word, or to the end of the line or block. Whatever else stands at the start of a line is reported. */
  protected startLine(): void {
    this.operators = 0;
    for (;;) {
      const token = this.peek(1);
      const type = token.tokenType;
      if (isWord(token) || type === NewLine || type === CloseBrace || type === EOF) return;
      if (type === Comma) this.extraComma();
      else if (!this.extraBracket()) {
        this.fault("line.unreadable", spanOf(token), { sign: shown(token) });
        const before = this.index();
        this.skipLine();
        if (this.index() === before) this.take();
      }
    }
  }

  /** Comes to the end of a line that should be complete. */
  protected endLine(commas: boolean): void {
    for (;;) {
      const token = this.peek(1);
      const type = token.tokenType;
      if (type === NewLine || type === CloseBrace || type === EOF || (type === Comma && commas)) return;
      if (this.extraBracket()) continue;
      const before = this.index();
      if (commas && isWord(token) && this.run.tokens[pathEnd(this.run.tokens, before)]?.tokenType === Colon) {
        this.missingComma(token);
      } else if (!this.readingAt(token) && !this.surelyBehind(token))
        this.fault("line.surplus", spanOf(token), { sign: shown(token) });
      this.skipLine();
      if (this.index() === before) this.take();
    }
  }

  /** `f/8 at 2 m`: a meter reading whose brackets are missing. */
  private readingAt(token: Token): boolean {
    const before = this.peek(0);
    if (token.image !== "at" || before.tokenType !== FNumber || this.peek(2).tokenType !== Numeral)
      return false;
    const unit = this.peek(3).tokenType === Name ? ` ${this.peek(3).image}` : "";
    const number = this.peek(2);
    const end = unit === "" ? number.endOffset : this.peek(3).endOffset;
    const span = { start: before.startOffset, end: end + 1 };
    const written = `metered(${before.image}, at: ${number.image}${unit === "" ? " m" : unit}, ISO 100)`;
    this.fault(
      "line.surplus",
      spanOf(token),
      { sign: "at" },
      {
        help: "a meter reading has brackets around it, with the sensitivity at which it was taken",
        fixes: [this.fix(span, written, false)],
      },
    );
    return true;
  }

  /** `expect key.distance > 2 m surely`: the word stands before what it is about. */
  private surelyBehind(token: Token): boolean {
    if (token.tokenType !== SurelyWord) return false;
    const { tokens } = this.run;
    let first = this.index() - 1;
    while (first >= 0 && tokens[first]?.tokenType !== ExpectWord) {
      if (tokens[first]?.tokenType === NewLine) return false;
      first--;
    }
    const expect = tokens[first];
    if (expect === undefined) return false;
    const span = spanOf(token);
    const after = { start: expect.endOffset + 1, end: expect.endOffset + 1 };
    const edits = [this.edit(after, " surely"), this.edit({ start: this.here(), end: span.end }, "")];
    this.fault(
      "line.surplus",
      span,
      { sign: "surely" },
      {
        help: "`surely` stands right behind `expect`, before the quantity: `expect surely ...`",
        fixes: [{ title: "write `expect surely`", certain: false, edits }],
      },
    );
    return true;
  }

  /** Whether the word at the start of the line is the name of a setting or block, whatever else it may mean. */
  protected namesSomething(): boolean {
    const next = this.peek(2).tokenType;
    if (next === Colon || next === Equals || next === Dot || next === OpenBrace) return true;
    return next === WithWord && this.peek(4).tokenType === Colon;
  }

  private missingComma(token: Token): void {
    const gap = this.gap();
    const fixes = [
      this.fix(gap, ",", false, "put a comma between them"),
      this.fix(gap, "\n", false, "start a new line"),
    ];
    this.fault("comma.missing", spanOf(token), { sign: shown(token) }, { fixes });
  }

  private extraBracket(): boolean {
    const token = this.peek(1);
    if (token.tokenType !== CloseRound && token.tokenType !== CloseSquare) return false;
    const span = spanOf(token);
    const fixes = [this.fix(span, "", false, "take it out")];
    this.fault("bracket.extra", span, { sign: token.image }, { fixes });
    this.take();
    return true;
  }

  // ------------------------------------------------------------ a brace too few

  /**
   * In a file with a brace too few, and a block with indented lines: whether the next line, at the left edge, starts
   * something of the file itself. Then the block ends here.
   */
  private leaves(): boolean {
    const tokens = this.run.tokens;
    const next = tokens[this.index() + 1];
    if (next === undefined || !isWord(next) || !this.isAtEdge(next)) return false;
    if (statementWords.includes(next.tokenType)) return true;
    return classify(tokens, this.index() + 1) === "block";
  }

  /** Whether the second line of the block that opens at `brace` is indented. */
  private isIndented(brace: number): boolean {
    const tokens = this.run.tokens;
    const closer = this.brackets().closer[brace] ?? -1;
    const end = closer < 0 ? tokens.length : closer;
    for (let index = brace + 1; index < end; index++) {
      if (tokens[index]?.tokenType !== NewLine) continue;
      const after = tokens[index + 1];
      return after !== undefined && after.tokenType !== EOF && !this.isAtEdge(after);
    }
    return false;
  }

  private isAtEdge(token: Token): boolean {
    const before = this.run.text.charCodeAt(token.startOffset - 1);
    return before === 10 || before === 13;
  }

  protected unclosedBlock(): void {
    const opener = firstUnclosed(this.run.text, this.run.tokens, this.brackets());
    const related =
      opener === null
        ? []
        : [{ place: this.edit(spanOf(opener), "").place, text: "this brace has no partner" }];
    const missing = this.peek(1).tokenType === EOF ? Math.max(1, this.openBlocks) : 1;
    const fixes = [this.fix(this.gap(), "\n}".repeat(missing), false, "close it here")];
    this.fault("brace.unclosed", this.gap(), {}, { related, fixes });
  }
}
