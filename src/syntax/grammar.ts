import { EOF } from "chevrotain";
import {
  CloseBrace,
  DoubleEquals,
  Fraction,
  Greater,
  GreaterEqual,
  IsWord,
  Less,
  LessEqual,
  NewLine,
  Numeral,
  OfWord,
  OpenBrace,
  SolveWord,
  TableWord,
  Text,
  VariantWord,
  Word,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type { Block, File, Header, Item, Title } from "./ast.js";
import { nameOf, plainAmount, shown, spanOf, textOf } from "./build.js";
import { classify, pathEnd } from "./classify.js";
import { statementWords } from "./lines.js";
import { nearest } from "./near.js";
import type { ParserOptions, Run } from "./recover.js";
import { StatementParser } from "./statements.js";
import { isWord } from "./token-classes.js";

const titleWords: readonly string[] = ["recipe", "kit", "session"];
const titledStatements: readonly string[] = ["table", "variant", "solve"];
const claimSigns = [IsWord, Less, LessEqual, Greater, GreaterEqual, DoubleEquals];

/** The rules of a whole file. One instance serves every text. */
export class RecipeParser extends StatementParser {
  constructor(options: ParserOptions) {
    super(options);
    this.performSelfAnalysis();
  }

  /** Reads a file; also gives the single names that may have been meant as f-numbers or ISO values. */
  read(run: Run): { readonly file: File; readonly suspects: readonly Token[] } {
    this.begin(run);
    this.suspects = [];
    this.openBlocks = 0;
    try {
      const file = this.file();
      return { file, suspects: this.suspects };
    } finally {
      this.finish();
    }
  }

  protected file = this.both(
    "file",
    () => {
      this.OPTION1(() => this.CONSUME1(NewLine));
      this.OR([
        {
          ALT: () => {
            this.SUBRULE1(this.header);
            this.OPTION2(() => {
              this.CONSUME2(NewLine);
              this.SUBRULE1(this.title, { ARGS: [[]] });
            });
          },
        },
        { ALT: () => this.SUBRULE2(this.title, { ARGS: [[]] }), IGNORE_AMBIGUITIES: true },
        { ALT: () => this.OPTION3(() => this.SUBRULE1(this.item, { ARGS: [[]] })), IGNORE_AMBIGUITIES: true },
      ]);
      this.MANY(() => {
        this.CONSUME3(NewLine);
        this.OPTION4(() => this.SUBRULE2(this.item, { ARGS: [[]] }));
      });
      this.CONSUME(EOF);
    },
    () => this.readFile(),
  );

  private readFile(): File {
    const items: Item[] = [];
    if (this.at(NewLine)) this.take();
    let header: Header | null = null;
    if (isWord(this.peek(1)) && this.atHeader()) {
      header = this.SUBRULE(this.header);
      if (this.at(NewLine)) this.take();
    }
    const title = isWord(this.peek(1)) && this.atTitle() ? this.SUBRULE(this.title, { ARGS: [items] }) : null;
    if (title !== null) this.endItem(false);
    this.SUBRULE(this.items, { ARGS: [items, false] });
    this.CONSUME(EOF);
    return { kind: "file", span: { start: 0, end: this.run.text.length }, header, title, items };
  }

  // ------------------------------------------------------------ first lines

  private atHeader(): boolean {
    const next = this.peek(2).tokenType;
    return next === Numeral || next === Fraction || this.peek(1).image === "halfshade";
  }

  /** What is wrong with the header is reported elsewhere; here the rest of its line is skipped. */
  protected header = this.RULE(
    "header",
    (): Header | null => {
      const start = this.next();
      const word = nameOf(this.CONSUME(Word) as Token);
      const number = this.RECORDING_PHASE || this.at(Numeral) ? (this.CONSUME(Numeral) as Token) : null;
      const span = this.since(start);
      if (!this.RECORDING_PHASE && !this.atAny([NewLine, EOF])) {
        if (number !== null)
          this.fault("line.surplus", this.nextSpan(), {
            sign: shown(this.peek(1)),
          });
        this.skipLine();
      }
      return number === null ? null : { kind: "header", span, word, version: plainAmount(number) };
    },
    { resyncEnabled: false },
  );

  private atTitle(): boolean {
    const token = this.peek(1);
    if (titleWords.includes(token.image)) return this.peek(2).tokenType === Text || this.isBareTitle();
    if (this.peek(2).tokenType !== Text) return false;
    if (token.tokenType === TableWord || token.tokenType === VariantWord || token.tokenType === SolveWord)
      return false;
    const meant = nearest(token.image, [...titleWords, ...titledStatements]);
    return meant === null || titleWords.includes(meant);
  }

  /** `recipe` with words behind it that lack their quotation marks. */
  private isBareTitle(): boolean {
    return classify(this.run.tokens, this.index()) !== "block";
  }

  protected title = this.RULE(
    "title",
    (items: Item[]): Title => {
      const start = this.next();
      const word = nameOf(this.CONSUME(Word) as Token);
      const bare = !this.RECORDING_PHASE && !this.at(Text);
      if (bare) {
        this.fault("title.text", this.gap(), { word: word.text });
        this.skipLine();
      }
      const text = bare
        ? ({ kind: "text", span: this.gap(), value: "", block: false } as const)
        : textOf(this.CONSUME1(Text) as Token, false);
      const of =
        this.OPTION1(() => {
          this.CONSUME(OfWord);
          return this.needText(2, "of", "the path of a recipe", 'session "first try" of "./bench.light" { }');
        }) ?? null;
      const example = 'session "first try" of "./bench.light" variant "Higher"';
      if (!this.RECORDING_PHASE && of !== null) this.wrongVariant(example);
      const variant =
        this.OPTION3(() => {
          this.CONSUME(VariantWord);
          return this.needText(3, "variant", "the title of a variant", example);
        }) ?? null;
      const span = this.since(start);
      this.OPTION2(() => {
        this.CONSUME(OpenBrace);
        this.SUBRULE(this.items, { ARGS: [items, true] });
        if (this.RECORDING_PHASE || this.at(CloseBrace)) this.CONSUME(CloseBrace);
        else this.unclosedBlock();
      });
      return { kind: "title", span, word, text, of, ...(variant === null ? {} : { variant }) };
    },
    { resyncEnabled: false },
  );

  /** `of "./x.light" from "Higher"`: another word where `variant` stands before a title. */
  private wrongVariant(example: string): void {
    const span = this.nextSpan();
    if (this.at(VariantWord) || !this.at(Word) || this.peek(2).tokenType !== Text) return;
    const part = "`variant` and the title of a variant";
    this.fault(
      "statement.part",
      span,
      { statement: "session", part, example },
      { fixes: [this.fix(span, "variant", false)] },
    );
    this.skipLine();
  }

  // ------------------------------------------------------------ items

  /** The lines of a file, or of a session's braces. */
  protected items = this.RULE(
    "items",
    (items: Item[], braces: boolean): void => {
      this.filled = { items, braces };
      this.startItem(braces);
      this.OPTION1(() => {
        this.SUBRULE1(this.item, { ARGS: [items] });
        this.endItem(braces);
      });
      this.MANY(this.nextLine);
    },
    { resyncEnabled: false },
  );

  /** What `items` fills: it is never read inside itself. */
  private filled: { readonly items: Item[]; readonly braces: boolean } = { items: [], braces: false };

  /** One more line of `items`: made once, since what is made for every file is compiled for every file. */
  private readonly nextLine = (): void => {
    this.CONSUME(NewLine);
    this.startItem(this.filled.braces);
    this.OPTION2(this.nextItem);
  };

  private readonly nextItem = (): void => {
    this.SUBRULE2(this.item, { ARGS: [this.filled.items] });
    this.endItem(this.filled.braces);
  };

  private startItem(braces: boolean): void {
    if (this.RECORDING_PHASE) return;
    do this.startLine();
    while (!braces && this.at(CloseBrace) && this.extraBrace());
  }

  private endItem(braces: boolean): void {
    if (this.RECORDING_PHASE) return;
    do this.endLine(false);
    while (!braces && this.at(CloseBrace) && this.extraBrace());
  }

  private extraBrace(): boolean {
    const span = this.nextSpan();
    this.fault("brace.extra", span, {}, { fixes: [this.fix(span, "", false, "take it out")] });
    this.take();
    return true;
  }

  protected item = this.RULE("item", (items: Item[]): void => {
    if (!this.RECORDING_PHASE && !statementWords.includes(this.LA(1).tokenType)) {
      this.readPlainItem(items);
      return;
    }
    const node = this.OR<Item | null>([
      { ALT: () => this.SUBRULE(this.use) },
      { ALT: () => this.SUBRULE(this.let) },
      { ALT: () => this.SUBRULE(this.define) },
      { ALT: () => this.SUBRULE(this.expect) },
      { ALT: () => this.SUBRULE(this.hold) },
      { ALT: () => this.SUBRULE(this.table) },
      { ALT: () => this.SUBRULE(this.variant) },
      { ALT: () => this.SUBRULE(this.solve) },
      { ALT: () => this.SUBRULE(this.measured) },
      { ALT: () => this.SUBRULE(this.block), IGNORE_AMBIGUITIES: true },
    ]);
    if (!this.RECORDING_PHASE && node !== null) items.push(node);
  });

  /** A line that starts with a word that is no statement: a block, or something that belongs elsewhere. */
  private readPlainItem(items: Item[]): void {
    const tokens = this.run.tokens;
    const token = this.peek(1);
    const behind = tokens[pathEnd(tokens, this.index())];
    switch (classify(tokens, this.index())) {
      case "block":
        items.push(this.SUBRULE(this.block) as Block);
        return;
      case "titled":
        if (nearest(token.image, titledStatements) === null) items.push(this.SUBRULE(this.block) as Block);
        else this.lateTitle(token);
        return;
      case "title":
        this.lateTitle(token);
        return;
      case "word":
      case "unclear":
        this.loneWords();
        return;
      case "reading":
        this.missingExpect(token);
        return;
      case "setting":
        break;
    }
    if (token.image === "halfshade" && behind?.tokenType === Numeral) {
      this.fault("header.place", spanOf(token), {});
      this.skipLine();
    } else if (behind !== undefined && claimSigns.includes(behind.tokenType)) this.missingExpect(token);
    else this.settingOutside();
  }

  private settingOutside(): void {
    const tokens = this.run.tokens;
    const first = this.peek(1);
    const last = tokens[pathEnd(tokens, this.index()) - 1] ?? first;
    const meant = nearest(first.image, ["expect", "define", "hold", "use", "let", "measured"]);
    if (last === first && meant !== null && isWord(this.peek(2))) {
      this.wrongWord(first, meant);
      return;
    }
    if (first.image === "and" && last === first) {
      this.fault(
        "claim.expect",
        spanOf(first),
        {},
        {
          help: "a claim ends with its line; `and` joins two claims on one line",
          fixes: [this.fix(spanOf(first), "expect", false)],
        },
      );
      this.skipLine();
      return;
    }
    const span = { start: first.startOffset, end: last.endOffset + 1 };
    this.fault("setting.outside", span, {
      name: this.run.text.slice(span.start, span.end),
    });
    this.skipLine();
  }

  private wrongWord(token: Token, meant: string | null): void {
    const span = spanOf(token);
    const fixes = meant === null ? [] : [this.fix(span, meant, false)];
    this.fault("statement.word", span, { word: shown(token) }, { fixes });
    this.skipLine();
  }

  private lateTitle(token: Token): void {
    const meant = titleWords.includes(token.image) ? token.image : nearest(token.image, titledStatements);
    if (meant !== null && titleWords.includes(meant)) {
      this.fault("title.place", spanOf(token), {});
      this.skipLine();
    } else this.wrongWord(token, meant);
  }

  private missingExpect(token: Token): void {
    const at = { start: token.startOffset, end: token.startOffset };
    this.fault(
      "claim.expect",
      spanOf(token),
      {},
      { fixes: [this.fix(at, "expect ", false, "put `expect` in front")] },
    );
    this.skipLine();
  }
}
