import { EOF, type TokenType } from "chevrotain";
import type { Span } from "../core/span.js";
import {
  CloseBrace,
  CloseRound,
  CloseSquare,
  Colon,
  Comma,
  DefineWord,
  Dot,
  DoubleEquals,
  Equals,
  ExpectWord,
  HoldWord,
  IsWord,
  LetWord,
  LikeWord,
  MeasuredWord,
  Minus,
  Name as NameToken,
  NewLine,
  Numeral,
  OpenBrace,
  SolveWord,
  TableWord,
  Text,
  UseWord,
  VariantWord,
  WithWord,
  Word,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type { Block, Entry, Name, Path, Property } from "./ast.js";
import { nameOf, shown, spanOf } from "./build.js";
import { classify, hasBraceBefore, isStop, isWord, opensBelow, pathEnd } from "./classify.js";
import { ExpressionParser } from "./expressions.js";
import { nearest } from "./near.js";
import { firstUnclosed } from "./unclosed.js";

/** Words that start a statement of the file. */
export const statementWords: readonly TokenType[] = [
  UseWord,
  LetWord,
  DefineWord,
  ExpectWord,
  HoldWord,
  TableWord,
  VariantWord,
  SolveWord,
  MeasuredWord,
];

/** Settings, blocks, and the lines in braces. */
export abstract class BlockParser extends ExpressionParser {
  // ------------------------------------------------------------ lines in braces

  /**
   * Braces with lines in them, separated by line ends and, where `commas` says so, by commas.
   * Used once in a rule. A block that is not closed is reported and taken as closed.
   */
  protected braced(commas: boolean, line: (place: 0 | 1) => void): void {
    const indented = this.run.unbalanced && this.isIndented(this.index());
    this.consume(0, OpenBrace);
    this.OPTION3(() => this.CONSUME3(NewLine));
    this.startLine();
    this.oneLine(commas, 0, line);
    this.MANY5({
      GATE: () => !indented || !this.leaves(),
      DEF: () => {
        if (commas) {
          this.OR5([
            { ALT: () => this.CONSUME4(NewLine) },
            {
              ALT: () => {
                this.CONSUME4(Comma);
                this.OPTION5(() => this.CONSUME5(NewLine));
              },
            },
          ]);
        } else this.CONSUME6(NewLine);
        this.startLine();
        this.oneLine(commas, 1, line);
      },
    });
    if (this.RECORDING_PHASE || this.at(CloseBrace)) this.consume(0, CloseBrace);
    else this.unclosedBlock();
  }

  /** A line that starts with any word; which words make sense is for its rule. */
  private oneLine(commas: boolean, place: 0 | 1, line: (place: 0 | 1) => void): void {
    if (this.RECORDING_PHASE) this.option(place === 0 ? 4 : 6, () => line(place));
    else if (this.at(Word)) {
      line(place);
      this.endLine(commas);
    }
  }

  /** Comes to a word, or to the end of the line or block. Whatever else stands at the start of a line is reported. */
  protected startLine(): void {
    if (this.RECORDING_PHASE) return;
    this.operators = 0;
    while (!this.at(Word) && !this.atAny([NewLine, CloseBrace, EOF])) {
      const token = this.peek(1);
      if (token.tokenType === Comma) this.extraComma();
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
    if (this.RECORDING_PHASE) return;
    while (!this.atAny([NewLine, CloseBrace, EOF]) && !(commas && this.at(Comma))) {
      if (this.extraBracket()) continue;
      const token = this.peek(1);
      const before = this.index();
      const gap = this.gap();
      if (commas && isWord(token) && this.run.tokens[pathEnd(this.run.tokens, before)]?.tokenType === Colon) {
        this.fault(
          "comma.missing",
          spanOf(token),
          { sign: shown(token) },
          {
            fixes: [
              this.fix(gap, ",", false, "put a comma between them"),
              this.fix(gap, "\n", false, "start a new line"),
            ],
          },
        );
      } else this.fault("line.surplus", spanOf(token), { sign: shown(token) });
      this.skipLine();
      if (this.index() === before) this.take();
    }
  }

  private extraBracket(): boolean {
    const token = this.peek(1);
    if (!this.atAny([CloseRound, CloseSquare])) return false;
    const span = spanOf(token);
    this.fault(
      "bracket.extra",
      span,
      { sign: token.image },
      { fixes: [this.fix(span, "", false, "take it out")] },
    );
    this.take();
    return true;
  }

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
        : [
            {
              place: this.edit(spanOf(opener), "").place,
              text: "this brace has no partner",
            },
          ];
    this.fault(
      "brace.unclosed",
      this.gap(),
      {},
      { related, fixes: [this.fix(this.gap(), "\n}", false, "close it here")] },
    );
  }

  // ------------------------------------------------------------ settings

  /** `key.distance: 3 m`, `calibration with octa: ...` */
  protected property = this.RULE(
    "property",
    (): Property => {
      const path = this.SUBRULE(this.path);
      const companion =
        this.OPTION({
          GATE: () => isWord(this.peek(2)),
          DEF: () => {
            this.CONSUME(WithWord);
            return nameOf(this.CONSUME(Word) as Token);
          },
        }) ?? null;
      const whole = this.RECORDING_PHASE ? path : this.colon(path);
      if (this.RECORDING_PHASE || this.at(Colon)) this.CONSUME(Colon);
      const name = this.RECORDING_PHASE ? "" : whole.parts.map((part) => part.text).join(".");
      const value = this.SUBRULE(this.value, { ARGS: [name] });
      return {
        kind: "property",
        span: this.since(path?.span?.start ?? 0),
        path: whole,
        companion,
        value,
      };
    },
    { resyncEnabled: false },
  );

  /** Puts right what stands in place of a colon. Gives the path, joined when it was written in several words. */
  private colon(path: Path): Path {
    if (this.at(Colon)) return path;
    const token = this.peek(1);
    if (this.atAny([Equals, DoubleEquals, IsWord])) {
      const span = spanOf(token);
      const glued = token.startOffset === this.here() ? span : { start: this.here(), end: span.end };
      this.fault(
        "colon.sign",
        span,
        { sign: token.image },
        { fixes: [this.fix(glued, ":", true, "write a colon")] },
      );
      this.take();
      return path;
    }
    let ahead = 1;
    while (isWord(this.peek(ahead))) ahead++;
    if (ahead > 1 && this.peek(ahead).tokenType === Colon) return this.spacedName(path);
    const name = path.parts.map((part) => part.text).join(".");
    this.fault(
      "colon.missing",
      this.gap(),
      { name },
      { fixes: [this.fix(this.gap(), ":", true, "put a colon here")] },
    );
    return path;
  }

  private spacedName(path: Path): Path {
    const start = path.parts[path.parts.length - 1]?.span.start ?? this.here();
    let text = path.parts[path.parts.length - 1]?.text ?? "";
    let ahead = 1;
    for (; isWord(this.peek(ahead)); ahead++) text = `${text}_${nameOf(this.peek(ahead)).text}`;
    const span = { start, end: this.peek(ahead - 1).endOffset + 1 };
    this.fault("name.spaced", span, {}, { fixes: [this.fix(span, text, false)] });
    for (; ahead > 1; ahead--) this.take();
    const joined: Name = { kind: "name", span, text, quoted: false };
    return {
      ...path,
      span: { start: path.span.start, end: span.end },
      parts: [...path.parts.slice(0, -1), joined],
    };
  }

  // ------------------------------------------------------------ blocks

  /** `light key like head_a with octa { ... }` */
  protected block = this.RULE(
    "block",
    (): Block => {
      const faults = this.faults;
      const start = this.next();
      const words: Name[] = [];
      const companions: Path[] = [];
      const entries: Entry[] = [];
      let like: Path | null = null;
      this.AT_LEAST_ONE({
        GATE: () => words.length === 0 || !this.atLike(),
        DEF: () => words.push(nameOf(this.CONSUME(Word) as Token)),
      });
      this.OPTION1(() => {
        this.CONSUME(LikeWord);
        like = this.SUBRULE1(this.path);
        this.OPTION2(() => {
          this.CONSUME(WithWord);
          companions.push(this.SUBRULE2(this.path));
          this.MANY({
            GATE: () => this.pathFollows(),
            DEF: () => {
              this.CONSUME(Comma);
              companions.push(this.SUBRULE3(this.path));
            },
          });
        });
      });
      const parent = this.endHead(words, like, companions, start);
      this.OPTION3(() => this.SUBRULE(this.body, { ARGS: [entries] }));
      const span = this.since(start);
      const damaged = this.isDamaged(span, faults);
      return {
        kind: "block",
        span,
        words,
        like: parent,
        companions,
        entries,
        damaged,
      };
    },
    { resyncEnabled: false },
  );

  private atLike(): boolean {
    return this.at(LikeWord) && isWord(this.peek(2));
  }

  /** Whether behind this comma another path follows that is not the start of the next setting or block. */
  protected pathFollows(): boolean {
    const tokens = this.run.tokens;
    const from = this.index() + 1;
    if (!isWord(tokens[from])) return false;
    const behind = tokens[pathEnd(tokens, from)];
    return isStop(behind) || behind?.tokenType === OpenBrace;
  }

  /** Comes to the body of a block, puts a misspelt `like` right, and reports whatever else stands in the head. */
  private endHead(words: Name[], like: Path | null, companions: Path[], start: number): Path | null {
    if (this.RECORDING_PHASE) return like;
    const parent = like ?? (words.length > 2 ? this.wrongLike(words, companions) : null);
    const bare = parent !== null && isStop(this.run.tokens[this.index()]) && !this.opensBelow();
    if (!this.at(OpenBrace) && !bare) this.openBrace(words.map((word) => word.text).join(" "), start);
    return parent;
  }

  /** `light key lik head_a {` and `light key with octa {`: takes the last two words out of the head. */
  private wrongLike(words: Name[], companions: Path[]): Path | null {
    const last = words[words.length - 1];
    const before = words[words.length - 2];
    if (last === undefined || before === undefined || before.quoted || last.quoted) return null;
    const path: Path = { kind: "path", span: last.span, parts: [last] };
    if (before.text === "with") {
      this.fault("head.with", before.span, {});
      words.length -= 2;
      companions.push(path);
      return null;
    }
    const meant = ["from", "as", "is", "of", "extends", "copies"].includes(before.text);
    if (!meant && nearest(before.text, ["like"]) === null) return null;
    this.fault("head.like", before.span, {}, { fixes: [this.fix(before.span, "like", false)] });
    words.length -= 2;
    return path;
  }

  private opensBelow(): boolean {
    return opensBelow(this.run.tokens, this.index());
  }

  /** Comes to the brace that opens a block called `head`. Gives false where there is none. */
  protected openBrace(head: string, start: number): boolean {
    if (this.at(OpenBrace)) return true;
    const gap = this.gap();
    if (this.opensBelow()) {
      const brace = spanOf(this.peek(2));
      const edits = [this.edit(gap, " {"), this.edit(brace, "")];
      this.fault("brace.line", brace, {}, { fixes: [{ title: "move the brace up", certain: true, edits }] });
      this.take();
      return true;
    }
    const token = this.peek(1);
    if (isStop(token) || token.tokenType === EOF) {
      const fixes = [this.fix(gap, " { }", false, "put an empty block there")];
      this.fault("brace.missing", { start, end: gap.end }, { head }, { fixes });
      return false;
    }
    this.headFault(token);
    if (!hasBraceBefore(this.run.tokens, this.index())) {
      this.skipLine();
      return false;
    }
    while (!this.at(OpenBrace)) this.take();
    return true;
  }

  private headFault(token: Token): void {
    const span = spanOf(token);
    const after = this.peek(2);
    if (
      token.tokenType === Minus &&
      after.tokenType === NameToken &&
      after.startOffset === token.endOffset + 1
    ) {
      this.fault("name.hyphen", span, {}, { fixes: [this.fix(span, "_", false)] });
    } else if (token.tokenType === Numeral) {
      this.fault("name.start", span, {});
    } else if (token.tokenType === Text) {
      const name = typeof token.value === "string" ? token.value : "";
      const fixes = /^[^`\r\n]+$/.test(name)
        ? [this.fix(span, `\`${name}\``, true, "put it in backticks")]
        : [];
      this.fault("name.quotes", span, {}, { fixes });
    } else if (this.atAny([Colon, Equals, DoubleEquals]) && after.tokenType === OpenBrace) {
      this.fault("head.sign", span, {}, { fixes: [this.fix(span, "", true, "take it out")] });
    } else {
      this.fault("line.unreadable", span, { sign: shown(token) });
    }
  }

  protected body = this.RULE(
    "body",
    (entries: Entry[]): void => {
      this.braced(true, (place) => this.subrule(place, this.entry, { ARGS: [entries] }));
    },
    { resyncEnabled: false },
  );

  /** One setting or one block; half-read ones stay in the list. */
  protected entry = this.RULE("entry", (entries: Entry[]): void => {
    if (!this.RECORDING_PHASE) {
      this.readEntry(entries);
      return;
    }
    this.OR([
      { ALT: () => this.SUBRULE(this.property) },
      { ALT: () => this.SUBRULE(this.block), IGNORE_AMBIGUITIES: true },
    ]);
  });

  protected readEntry(entries: Entry[]): void {
    const tokens = this.run.tokens;
    const kind = classify(tokens, this.index());
    const token = this.peek(1);
    if (statementWords.includes(token.tokenType) && this.isStatement(kind)) {
      this.fault("statement.place", spanOf(token), { statement: token.image });
      this.skipLine();
      return;
    }
    switch (kind) {
      case "block":
      case "titled":
        entries.push(this.SUBRULE(this.block));
        return;
      case "setting":
      case "reading":
      case "title":
        entries.push(this.SUBRULE(this.property));
        return;
      case "word":
      case "unclear":
        this.loneWords();
        return;
    }
    kind satisfies never;
  }

  private isStatement(kind: string): boolean {
    const next = this.peek(2).tokenType;
    if (next === Colon || next === Equals || next === Dot || next === OpenBrace) return false;
    return kind !== "block" || (this.at(DefineWord) && isWord(this.peek(2)) && isWord(this.peek(3)));
  }

  /** A line of words alone is neither a setting nor a block. */
  protected loneWords(): void {
    const words: Token[] = [];
    while (isWord(this.peek(words.length + 1))) words.push(this.peek(words.length + 1));
    const first = words[0];
    const last = words[words.length - 1];
    if (first === undefined || last === undefined) return;
    const span: Span = { start: first.startOffset, end: last.endOffset + 1 };
    const written = words.map((word) => word.image);
    const fixes =
      words.length === 2
        ? [this.fix(span, written.join(": "), false), this.fix(span, `${written.join(" ")} { }`, false)]
        : [];
    this.fault("line.unfinished", span, {}, { fixes });
    this.skipLine();
  }
}
