import {
  EmbeddedActionsParser,
  EOF,
  type IRecognitionException,
  type IToken,
  type TokenType,
} from "chevrotain";
import { MAX_DIAGNOSTICS } from "../core/limits.js";
import { placeIn, type Span } from "../core/span.js";
import type { ArgsOf, Code } from "../diagnostics/catalogue/index.js";
import { type Extra, finding } from "../diagnostics/create.js";
import type { Edit, Fix, Sink } from "../diagnostics/diagnostic.js";
import { Broken, Text, TextBlock, tokenTypes } from "../text/kinds.js";
import type { Token } from "../text/token.js";
import { shown } from "./build.js";
import { keepQuick, lazyLookahead } from "./quick-start.js";
import { endOfLine, endOfMember, type Structure, structureOf } from "./structure.js";

/** How a parser is made. */
export interface ParserOptions {
  /** Skips the library's check of the grammar itself; tests switch the check on. */
  readonly skipValidations: boolean;
}

/** What one run of the parser works on. */
export interface Run {
  readonly file: string;
  readonly text: string;
  readonly tokens: Token[];
  readonly sink: Sink;
  /** Offsets of the mistakes that the lexer reported, rising. */
  readonly lexFaults: readonly number[];
  /** True when more braces are opened than closed. */
  readonly unbalanced: boolean;
  /** True when round or square brackets are not as many opened as closed. */
  readonly unpaired: boolean;
}

const nothing: Run = {
  file: "",
  text: "",
  tokens: [],
  sink: () => {},
  lexFaults: [],
  unbalanced: false,
  unpaired: false,
};

/**
 * What the grammar stands on: reporting (one finding a token, none that follows from another) and going on after a
 * mistake. The library's own guesses are switched off: it may not delete or invent tokens; after an exception reading
 * goes on at the end of the member or line, found with the brackets in view.
 */
export abstract class RecoveringParser extends EmbeddedActionsParser {
  protected run: Run = nothing;
  /** Mistakes met so far, reported or not. */
  protected faults = 0;
  private reported = 0;
  /** Tokens of the text, without the end marks that the library appends. */
  private count = 0;
  private lastAt = -1;
  private structure: Structure | null = null;
  private resumeAt = 0;
  declare private currIdx: number;

  constructor(options: ParserOptions) {
    super(tokenTypes, {
      recoveryEnabled: true,
      maxLookahead: 1,
      lookaheadStrategy: lazyLookahead(),
      skipValidations: options.skipValidations,
      errorMessageProvider: {
        buildMismatchTokenMessage: () => "",
        buildNotAllInputParsedMessage: () => "",
        buildNoViableAltMessage: () => "",
        buildEarlyExitMessage: () => "",
      },
    });
    Object.assign(this, { attemptInRepetitionRecovery: () => {} });
    keepQuick(this);
  }

  /** Makes the parser ready for a text. */
  protected begin(run: Run): void {
    this.run = run;
    this.faults = 0;
    this.reported = 0;
    this.lastAt = -1;
    this.structure = null;
    this.count = run.tokens.length;
    this.input = run.tokens;
  }

  /** Lets go of the text. */
  protected finish(): void {
    this.input = [];
    this.run = nothing;
    this.structure = null;
  }

  /** The token `ahead` places on; 1 is the next one. */
  protected peek(ahead: number): Token {
    return this.LA(ahead) as Token;
  }

  /** Whether the next token has this type (categories count). */
  protected at(type: TokenType): boolean {
    const token = this.LA(1);
    return token.tokenType === type || type.categoryMatchesMap?.[token.tokenTypeIdx] === true;
  }

  /** Whether the next token has exactly one of these types. */
  protected atAny(types: readonly TokenType[]): boolean {
    return types.includes(this.LA(1).tokenType);
  }

  /** Index of the next token. */
  protected index(): number {
    return this.currIdx + 1;
  }

  /** Offset behind the last token read. */
  protected here(): number {
    return this.currIdx < 0 ? 0 : this.peek(0).endOffset + 1;
  }

  /** Offset of the next token, or the end of the text. */
  protected next(): number {
    const token = this.peek(1);
    return token.tokenType === EOF ? this.run.text.length : token.startOffset;
  }

  /** The span of the next token; at the end of the text an empty one. */
  protected nextSpan(): Span {
    const token = this.peek(1);
    if (token.tokenType === EOF) return this.gap();
    return { start: token.startOffset, end: token.endOffset + 1 };
  }

  /** The empty span behind the last token, where something is missing. */
  protected gap(): Span {
    return { start: this.here(), end: this.here() };
  }

  /** From an offset to the last token read. */
  protected since(start: number): Span {
    return { start, end: Math.max(start, this.here()) };
  }

  /** Takes the next token, whatever it is; the end of the text stays. */
  protected take(): Token {
    const token = this.peek(1);
    if (token.tokenType !== EOF) this.currIdx++;
    return token;
  }

  /** Leaves everything up to the token at `index` unread. */
  protected skipTo(index: number): void {
    const target = Math.min(index, this.count);
    if (target > this.currIdx + 1) this.currIdx = target - 1;
    this.lastAt = this.next();
  }

  /** Goes to the end of this line, or of this setting in a block of one line. */
  protected skipLine(): void {
    this.skipTo(endOfLine(this.run.tokens, this.brackets(), this.index()));
  }

  /** Goes to the next comma or the closing bracket of the brackets around, or else to the end of the line. */
  protected skipMember(): void {
    this.skipTo(endOfMember(this.run.tokens, this.brackets(), this.index()));
  }

  /** The pairs of brackets of this text. */
  protected brackets(): Structure {
    this.structure ??= structureOf(this.run.tokens);
    return this.structure;
  }

  /**
   * Reports a finding at a span. Nothing is said when the next token has been blamed already, or when it or the
   * one before it could not be read in the first place.
   */
  protected fault<C extends Code>(code: C, span: Span, args: ArgsOf<C>, extra: Extra = {}): void {
    this.faults++;
    const next = this.next();
    if (next === this.lastAt || this.peek(1).tokenType === Broken || this.isUnreadable(this.peek(0))) return;
    this.lastAt = next;
    this.report(code, span, args, extra);
  }

  /** Reports a finding that does not belong to the next token. */
  protected report<C extends Code>(code: C, span: Span, args: ArgsOf<C>, extra: Extra = {}): void {
    this.reported++;
    // One more than are shown, so that it can be said that there are more.
    if (this.reported > MAX_DIAGNOSTICS + 1) return;
    this.run.sink(finding(code, placeIn(this.run.file, span), args, extra));
  }

  private isUnreadable(token: Token): boolean {
    if (this.currIdx < 0) return false;
    return (
      token.tokenType === Broken ||
      (token.broken && (token.tokenType === Text || token.tokenType === TextBlock))
    );
  }

  /** One replacement of text. */
  protected edit(span: Span, text: string): Edit {
    return { place: placeIn(this.run.file, span), text };
  }

  /** A fix with one edit; its title shows the new text unless given. */
  protected fix(span: Span, text: string, certain: boolean, title?: string): Fix {
    return {
      title: title ?? `write \`${text.trim()}\``,
      certain,
      edits: [this.edit(span, text)],
    };
  }

  /** Whether something went wrong between two offsets, given the count of mistakes at the first. */
  protected isDamaged(span: Span, faultsBefore: number): boolean {
    if (this.faults > faultsBefore) return true;
    const offsets = this.run.lexFaults;
    let low = 0;
    let high = offsets.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((offsets[middle] ?? 0) < span.start) low = middle + 1;
      else high = middle;
    }
    return (offsets[low] ?? Number.POSITIVE_INFINITY) < span.end;
  }

  // What follows replaces the library's own recovery.

  /** Never invent a token. */
  protected override canTokenTypeBeInsertedInRecovery(): boolean {
    return false;
  }

  /** Never drop a token. */
  protected override canTokenTypeBeDeletedInRecovery(): boolean {
    return false;
  }

  protected getFollowsForInRuleRecovery(): TokenType[] {
    return [];
  }

  /** Where to go on after an exception; the library asks for a token type, the place is kept beside it. */
  protected findReSyncTokenType(): TokenType {
    this.resumeAt = endOfMember(this.run.tokens, this.brackets(), this.index());
    return EOF;
  }

  protected isInCurrentRuleReSyncSet(): boolean {
    return true;
  }

  protected reSyncTo(): IToken[] {
    this.skipTo(this.resumeAt);
    return [];
  }

  /** An exception of the library: a shape that no finer finding has named. */
  protected SAVE_ERROR(error: IRecognitionException): IRecognitionException {
    const token = this.peek(1);
    if (token.tokenType === EOF) this.fault("line.unfinished", this.gap(), {});
    else this.fault("line.unreadable", this.nextSpan(), { sign: shown(token) });
    return error;
  }
}
