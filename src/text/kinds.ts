import { createToken, Lexer, type TokenType } from "chevrotain";

/** What a kind of token is to somebody who colours or describes the language. */
export type Role =
  | "name"
  | "keyword"
  | "number"
  | "unit"
  | "text"
  | "operator"
  | "bracket"
  | "separator"
  | "mistake";

/** One kind of token: the one place where its name, its look and its words for people are written. */
export interface Kind {
  readonly type: TokenType;
  readonly role: Role;
  /** The look as a regular expression (flag `u`), for tools that read the language without our lexer. */
  readonly pattern: string;
  /** What a person would call it. */
  readonly label: string;
}

const kinds: Kind[] = [];

function kind(name: string, role: Role, pattern: string, label: string, category?: TokenType): TokenType {
  const type = createToken({ name, pattern: Lexer.NA, ...(category ? { categories: category } : {}) });
  kinds.push({ type, role, pattern, label });
  return type;
}

/** Anything that can be a name: a plain name, a name in backticks, or a word of the language. */
export const Word = createToken({ name: "Word", pattern: Lexer.NA });

const number = "\\d+(?:\\.\\d+)?";

export const NewLine = kind("NewLine", "separator", "\\r\\n|\\r|\\n", "line end");
export const TextBlock = kind("TextBlock", "text", '"""(?:[^"\\\\]|\\\\[\\s\\S]|"(?!""))*"""', "text block");
export const Text = kind("Text", "text", '"(?:[^"\\\\\\r\\n]|\\\\.)*"', "text");
export const FNumber = kind(
  "FNumber",
  "number",
  `(?<!\\.)(?<![\\p{L}\\p{M}\\p{N}_])[fFƒ]/${number}`,
  "f-number",
);
export const Fraction = kind("Fraction", "number", `${number}/${number}`, "fraction");
export const Ratio = kind("Ratio", "number", `${number}:${number}`, "ratio");
export const Numeral = kind("Numeral", "number", number, "number");
/** `x` between two numbers, `60 x 90`; only there. */
export const By = kind("By", "operator", "[x×X](?=[ \\t]*\\d)", "by");
/** Two unit words glued by a slash, `lm/W`; only behind a number or `as`. */
export const CompoundUnit = kind(
  "CompoundUnit",
  "unit",
  "\\p{L}[\\p{L}\\p{M}\\p{N}_]*/\\p{L}[\\p{L}\\p{M}\\p{N}_]*",
  "unit",
);
export const Percent = kind("Percent", "unit", "%", "per cent sign");
export const Degree = kind("Degree", "unit", "°", "degree sign");
export const PlusMinus = kind("PlusMinus", "operator", "\\+-|±", "tolerance sign");
export const Plus = kind("Plus", "operator", "\\+", "plus");
export const Minus = kind("Minus", "operator", "[-−]", "minus");
export const Times = kind("Times", "operator", "\\*", "times");
export const Slash = kind("Slash", "operator", "/", "slash");
export const LessEqual = kind("LessEqual", "operator", "<=|≤", "at most");
export const GreaterEqual = kind("GreaterEqual", "operator", ">=|≥", "at least");
export const Less = kind("Less", "operator", "<", "less than");
export const Greater = kind("Greater", "operator", ">", "more than");
export const DoubleEquals = kind("DoubleEquals", "mistake", "==", "double equals sign");
export const Equals = kind("Equals", "operator", "=", "equals sign");
export const Question = kind("Question", "operator", "\\?", "question mark");
export const Colon = kind("Colon", "separator", ":", "colon");
export const Comma = kind("Comma", "separator", ",", "comma");
export const Dot = kind("Dot", "separator", "\\.", "point");
export const OpenBrace = kind("OpenBrace", "bracket", "\\{", "opening brace");
export const CloseBrace = kind("CloseBrace", "bracket", "\\}", "closing brace");
export const OpenRound = kind("OpenRound", "bracket", "\\(", "opening bracket");
export const CloseRound = kind("CloseRound", "bracket", "\\)", "closing bracket");
export const OpenSquare = kind("OpenSquare", "bracket", "\\[", "opening square bracket");
export const CloseSquare = kind("CloseSquare", "bracket", "\\]", "closing square bracket");
/** Something that no rule can read; it has been reported. */
export const Broken = kind("Broken", "mistake", "(?!)", "unreadable");
export const Quoted = kind("Quoted", "name", "`[^`\\r\\n]+`", "name in backticks", Word);

const keywordTypes = new Map<string, TokenType>();

function keyword(word: string): TokenType {
  const name = word.slice(0, 1).toUpperCase() + word.slice(1);
  const type = kind(`${name}Word`, "keyword", `${word}(?![\\p{L}\\p{M}\\p{N}_])`, word, Word);
  keywordTypes.set(word, type);
  return type;
}

export const UseWord = keyword("use");
export const LetWord = keyword("let");
export const DefineWord = keyword("define");
export const ExpectWord = keyword("expect");
export const HoldWord = keyword("hold");
export const TableWord = keyword("table");
export const VariantWord = keyword("variant");
export const SolveWord = keyword("solve");
export const MeasuredWord = keyword("measured");
export const LikeWord = keyword("like");
export const WithWord = keyword("with");
export const FromWord = keyword("from");
export const OfWord = keyword("of");
export const UnderWord = keyword("under");
export const OverWord = keyword("over");
export const IsWord = keyword("is");
export const WithinWord = keyword("within");
export const BetweenWord = keyword("between");
export const AndWord = keyword("and");
export const BecauseWord = keyword("because");
export const SurelyWord = keyword("surely");
export const AsWord = keyword("as");
export const ByWord = keyword("by");
export const SweepWord = keyword("sweep");
export const ShowWord = keyword("show");
export const ToWord = keyword("to");
export const StepWord = keyword("step");
export const CountWord = keyword("count");
export const RemoveWord = keyword("remove");
export const KeepWord = keyword("keep");
export const FindWord = keyword("find");
export const NearWord = keyword("near");
export const MeetWord = keyword("meet");
export const PreferWord = keyword("prefer");
export const IsoWord = keyword("ISO");

/** A plain name; tried last, since every word of the language looks like one. */
export const Name = kind("Name", "name", "\\p{L}[\\p{L}\\p{M}\\p{N}_]*", "name", Word);

/** Every kind of token, in the order in which a reader that tries patterns must try them. */
export const tokenKinds: readonly Kind[] = kinds;

/** The words of the language, each with its token type. All of them may also be names. */
export const keywords: ReadonlyMap<string, TokenType> = keywordTypes;

/** All token types, for the parser. */
export const tokenTypes: TokenType[] = [Word, ...kinds.map((each) => each.type)];

/** What a person would call a token of this type. */
export function labelOf(type: TokenType): string {
  return kinds.find((each) => each.type === type)?.label ?? "word";
}
