import {
  AndWord,
  BetweenWord,
  Colon,
  Comma,
  DefineWord,
  Equals,
  ExpectWord,
  FindWord,
  FromWord,
  HoldWord,
  IsWord,
  KeepWord,
  LetWord,
  MeasuredWord,
  MeetWord,
  NearWord,
  PreferWord,
  RemoveWord,
  SolveWord,
  Text,
  UseWord,
  VariantWord,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type {
  Define,
  Entry,
  Expect,
  Find,
  Hold,
  Keep,
  Let,
  Measured,
  Meet,
  Name,
  Prefer,
  Reading,
  Remove,
  Solve,
  Use,
  Variant,
} from "./ast.js";
import { textOf } from "./build.js";
import { isReading } from "./classify.js";
import { TableParser } from "./tables.js";
import { isWord } from "./token-classes.js";

type VariantLine = Remove | Keep | Expect | Hold | Entry;
type SolveLine = Find | Meet | Prefer;
type MeasuredLine = Reading | Entry;

const variantWords = [RemoveWord, KeepWord, ExpectWord, HoldWord];
const solveWords = [FindWord, MeetWord, PreferWord];

/** The statements of a file that have a shape of their own. */
export abstract class StatementParser extends TableParser {
  // ------------------------------------------------------------ use, let, define

  protected use = this.RULE(
    "use",
    (): Use | null => {
      const example = 'use head_a, octa from "./kit.light"';
      const start = this.next();
      const names: Name[] = [];
      this.CONSUME(UseWord);
      const first = this.needName(0, "use", "the names of what is used", example);
      if (first !== null) names.push(first);
      this.MANY(() => {
        this.CONSUME(Comma);
        const name = this.needName(1, "use", "another name behind the comma", example);
        if (name !== null) names.push(name);
      });
      const from = this.need(0, FromWord, "use", "`from` and the path of a kit", example)
        ? this.needText(0, "use", "the path of a kit in quotation marks", example)
        : null;
      return from === null ? null : { kind: "use", span: this.since(start), names, from };
    },
    { resyncEnabled: false },
  );

  protected let = this.RULE(
    "let",
    (): Let | null => {
      const start = this.next();
      this.CONSUME(LetWord);
      const name = this.needName(0, "let", "a name", "let throw = 5 m");
      if (name === null) return null;
      if (this.RECORDING_PHASE || this.at(Equals)) this.CONSUME(Equals);
      else this.wrongLet();
      const value = this.SUBRULE(this.expression);
      return { kind: "let", span: this.since(start), name, value };
    },
    { resyncEnabled: false },
  );

  private wrongLet(): void {
    const gap = this.gap();
    const isSign = this.at(Colon) || this.at(IsWord);
    const span = isSign ? { start: gap.start, end: this.nextSpan().end } : gap;
    const fixes = [this.fix(span, " =", true, "write an equals sign")];
    this.fault("let.sign", isSign ? this.nextSpan() : gap, {}, { fixes });
    if (isSign) this.take();
  }

  protected define = this.RULE(
    "define",
    (): Define | null => {
      const start = this.next();
      this.CONSUME(DefineWord);
      if (!this.RECORDING_PHASE && !isWord(this.peek(1))) {
        this.part("define", "the kind and the name of a thing", "define light head_a { kind: flash }");
        return null;
      }
      const block = this.SUBRULE(this.block);
      return { kind: "define", span: this.since(start), block };
    },
    { resyncEnabled: false },
  );

  // ------------------------------------------------------------ variants

  protected remove = this.RULE(
    "remove",
    (): Remove | null => {
      const start = this.next();
      this.CONSUME(RemoveWord);
      const path = this.needPath(0, "remove", "remove fill");
      return path === null ? null : { kind: "remove", span: this.since(start), path };
    },
    { resyncEnabled: false },
  );

  protected keepLine = this.RULE(
    "keepLine",
    (): Keep | null => {
      const start = this.next();
      this.CONSUME(KeepWord);
      const what = this.needName(0, "keep", "the word expectations", "keep expectations");
      return what === null ? null : { kind: "keep", span: this.since(start), what };
    },
    { resyncEnabled: false },
  );

  protected variant = this.RULE(
    "variant",
    (): Variant => {
      const start = this.next();
      const lines: VariantLine[] = [];
      this.CONSUME(VariantWord);
      const title = this.titleOf("variant");
      const from =
        this.OPTION(() => {
          this.CONSUME(FromWord);
          return this.needText(
            1,
            "from",
            "the title of another variant",
            'variant "Later still" from "Later" { }',
          );
        }) ?? null;
      if (this.RECORDING_PHASE) this.braces(true, this.variantLine);
      else if (this.openBrace("variant", start))
        this.readBraces(true, (list) => this.SUBRULE(this.variantLine, { ARGS: [list] }), lines);
      return { kind: "variant", span: this.since(start), title, from, lines };
    },
    { resyncEnabled: false },
  );

  protected variantLine = this.RULE("variantLine", (lines: VariantLine[]): void => {
    if (!this.RECORDING_PHASE && !this.starts(variantWords)) {
      this.readEntry(lines as Entry[]);
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.remove)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.keepLine)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.expect)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.hold)) },
      {
        ALT: () => this.SUBRULE(this.entry, { ARGS: [lines as Entry[]] }),
        IGNORE_AMBIGUITIES: true,
      },
    ]);
  });

  // ------------------------------------------------------------ solve

  protected find = this.RULE(
    "find",
    (): Find | null => {
      const example = "find key.distance between 2 m and 9 m";
      const start = this.next();
      this.CONSUME(FindWord);
      const path = this.needPath(0, "find", example);
      if (path === null) return null;
      if (!this.need(0, BetweenWord, "find", "`between` and two values", example)) return null;
      const low = this.SUBRULE1(this.expression);
      if (!this.need(0, AndWord, "between", "`and` and the upper value", example)) return null;
      const high = this.SUBRULE2(this.expression);
      const near =
        this.OPTION(() => {
          this.CONSUME(NearWord);
          return this.SUBRULE3(this.expression);
        }) ?? null;
      return { kind: "find", span: this.since(start), path, low, high, near };
    },
    { resyncEnabled: false },
  );

  protected meet = this.RULE(
    "meet",
    (): Meet => {
      const start = this.next();
      this.CONSUME(MeetWord);
      const claim = this.SUBRULE(this.claim, { ARGS: ["meet"] });
      return { kind: "meet", span: this.since(start), claim };
    },
    { resyncEnabled: false },
  );

  protected prefer = this.RULE(
    "prefer",
    (): Prefer | null => {
      const start = this.next();
      this.CONSUME(PreferWord);
      const direction = this.needName(0, "prefer", "least or most", "prefer least key.power");
      if (direction === null) return null;
      const value = this.SUBRULE(this.expression);
      return { kind: "prefer", span: this.since(start), direction, value };
    },
    { resyncEnabled: false },
  );

  protected solve = this.RULE(
    "solve",
    (): Solve => {
      const start = this.next();
      const lines: SolveLine[] = [];
      this.CONSUME(SolveWord);
      const title = this.OPTION(() => textOf(this.CONSUME(Text) as Token, false)) ?? null;
      if (this.RECORDING_PHASE) this.braces(false, this.solveLine);
      else if (this.openBrace("solve", start))
        this.readBraces(false, (list) => this.SUBRULE(this.solveLine, { ARGS: [list] }), lines);
      return { kind: "solve", span: this.since(start), title, lines };
    },
    { resyncEnabled: false },
  );

  protected solveLine = this.RULE("solveLine", (lines: SolveLine[]): void => {
    if (!this.RECORDING_PHASE && !this.starts(solveWords)) {
      this.wrongLine("solve", ["find", "meet", "prefer"], "find, meet or prefer");
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.find)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.meet)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.prefer)) },
    ]);
  });

  // ------------------------------------------------------------ measured

  protected measured = this.RULE(
    "measured",
    (): Measured => {
      const start = this.next();
      const lines: MeasuredLine[] = [];
      this.CONSUME(MeasuredWord);
      if (this.RECORDING_PHASE) this.braces(true, this.measuredLine);
      else if (this.openBrace("measured", start))
        this.readBraces(true, (list) => this.SUBRULE(this.measuredLine, { ARGS: [list] }), lines);
      return { kind: "measured", span: this.since(start), lines };
    },
    { resyncEnabled: false },
  );

  protected measuredLine = this.RULE("measuredLine", (lines: MeasuredLine[]): void => {
    if (!this.RECORDING_PHASE) {
      if (isReading(this.run.tokens, this.index())) lines.push(this.SUBRULE(this.reading));
      else this.readEntry(lines as Entry[]);
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.reading)) },
      {
        ALT: () => this.SUBRULE(this.entry, { ARGS: [lines as Entry[]] }),
        IGNORE_AMBIGUITIES: true,
      },
    ]);
  });
}
