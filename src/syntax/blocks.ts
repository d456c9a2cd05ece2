import { EOF } from "chevrotain";
import type { Span } from "../core/span.js";
import {
  Colon,
  Comma,
  DefineWord,
  DoubleEquals,
  Equals,
  IsWord,
  LikeWord,
  Minus,
  Name as NameToken,
  Numeral,
  OpenBrace,
  Text,
  WithWord,
  Word,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type { Block, Entry, Name, Path, Property } from "./ast.js";
import { nameOf, shown, spanOf } from "./build.js";
import { classify, hasBraceBefore, isStop, opensBelow, pathEnd } from "./classify.js";
import { LineParser, statementWords } from "./lines.js";
import { nearest } from "./near.js";
import { isWord } from "./token-classes.js";

/** Settings and blocks. */
export abstract class BlockParser extends LineParser {
  // ------------------------------------------------------------ settings

  /** `key.distance: 3 m`, `calibration with octa: ...` */
  protected property = this.both(
    "property",
    () => {
      this.SUBRULE(this.path);
      this.OPTION(() => {
        this.CONSUME(WithWord);
        this.CONSUME(Word);
      });
      this.CONSUME(Colon);
      this.SUBRULE(this.value, { ARGS: [""] });
    },
    () => this.readProperty(),
  );

  private readProperty(): Property {
    let path = this.readPath();
    let companion: Name | null = null;
    if (this.peek(1).tokenType === WithWord && isWord(this.peek(2))) {
      this.take();
      companion = nameOf(this.take());
    }
    if (this.peek(1).tokenType !== Colon) path = this.colon(path);
    if (this.peek(1).tokenType === Colon) this.take();
    const value = this.readValue(written(path));
    return { kind: "property", span: this.since(path.span.start), path, companion, value };
  }

  /** Puts right what stands in place of a colon. Gives the path, joined when it was written in several words. */
  private colon(path: Path): Path {
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
    this.fault(
      "colon.missing",
      this.gap(),
      { name: written(path) },
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
  protected block = this.both(
    "block",
    () => {
      this.AT_LEAST_ONE(() => this.CONSUME(Word));
      this.OR([
        { ALT: () => this.SUBRULE1(this.body, { ARGS: [[]] }) },
        {
          ALT: () => {
            this.CONSUME(LikeWord);
            this.SUBRULE1(this.path);
            this.OPTION1(() => {
              this.CONSUME(WithWord);
              this.SUBRULE2(this.path);
              this.MANY(() => {
                this.CONSUME(Comma);
                this.SUBRULE3(this.path);
              });
            });
            this.OPTION2(() => this.SUBRULE2(this.body, { ARGS: [[]] }));
          },
        },
      ]);
    },
    () => this.readBlock(),
  );

  private readBlock(): Block {
    const faults = this.faults;
    const start = this.next();
    const words: Name[] = [];
    const companions: Path[] = [];
    const entries: Entry[] = [];
    let like: Path | null = null;
    while (isWord(this.peek(1)) && (words.length === 0 || !this.atLike())) words.push(nameOf(this.take()));
    if (this.peek(1).tokenType === LikeWord) {
      this.take();
      like = this.readPath();
      if (this.peek(1).tokenType === WithWord) this.readCompanions(companions);
    }
    like = this.endHead(words, like, companions, start);
    if (this.peek(1).tokenType === OpenBrace) this.readBraces(true, this.readEntry, entries);
    const span = this.since(start);
    const damaged = this.isDamaged(span, faults);
    return { kind: "block", span, words, like, companions, entries, damaged };
  }

  private readCompanions(companions: Path[]): void {
    this.take();
    companions.push(this.readPath());
    while (this.peek(1).tokenType === Comma && this.pathFollows()) {
      this.take();
      companions.push(this.readPath());
    }
  }

  private atLike(): boolean {
    return this.peek(1).tokenType === LikeWord && isWord(this.peek(2));
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

  protected body = this.both(
    "body",
    () => this.braces(true, this.entry),
    (entries: Entry[]): void => this.readBraces(true, this.readEntry, entries),
  );

  /** One setting or one block; half-read ones stay in the list. */
  protected entry = this.both(
    "entry",
    () =>
      this.OR([
        { ALT: () => this.SUBRULE(this.property) },
        { ALT: () => this.SUBRULE(this.block), IGNORE_AMBIGUITIES: true },
      ]),
    (entries: Entry[]): void => this.readEntry(entries),
  );

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
        entries.push(this.readBlock());
        return;
      case "setting":
      case "reading":
      case "title":
        entries.push(this.readProperty());
        return;
      case "word":
      case "unclear":
        this.loneWords();
        return;
    }
    kind satisfies never;
  }

  private isStatement(kind: string): boolean {
    if (this.namesSomething()) return false;
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

function written(path: Path): string {
  return path.parts.length === 1
    ? (path.parts[0]?.text ?? "")
    : path.parts.map((part) => part.text).join(".");
}
