import type { TokenType } from "chevrotain";

/** One token. Offsets are UTF-16 units; `endOffset` is the last unit of the token, as the parsing library wants it. */
export interface Token {
  readonly image: string;
  readonly startOffset: number;
  readonly endOffset: number;
  readonly tokenTypeIdx: number;
  readonly tokenType: TokenType;
  /** The number, or the text without its marks and escapes, where the token has one. */
  readonly value: number | string | null;
  /** True when a mistake inside this token has been reported already. */
  readonly broken: boolean;
}

/** A comment with its `#`, up to the line end. */
export interface Comment {
  readonly image: string;
  readonly startOffset: number;
  readonly endOffset: number;
}

/** What the lexer makes of a text. */
export interface Lexed {
  readonly tokens: Token[];
  readonly comments: Comment[];
  /** False when a cap stopped the lexer before the end of the text. */
  readonly whole: boolean;
}
