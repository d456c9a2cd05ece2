/** Broken texts with everything that is found in them: code, line and column, and the text at the place. The two first lines of every text, a header and a title, are left out. */
export interface BrokenText {
  readonly text: string;
  readonly found: readonly string[];
}

export const settings: readonly BrokenText[] = [
  { text: "light key {\n  distance 2 m\n}", found: ["colon.missing 2:11"] },
  {
    text: "light key {\n  distance = 2 m\n  power == 1/4\n}",
    found: ["colon.sign 2:12 =", "colon.sign 3:9 =="],
  },
  {
    text: "light key {\n  bearing left(30 deg)\n  aim subject.face\n}",
    found: ["colon.missing 2:10", "colon.missing 3:6"],
  },
  {
    text: "light key {\n  kind flash\n  steady\n}",
    found: ["line.unfinished 2:3 kind flash", "line.unfinished 3:3 steady"],
  },
  { text: "light key {\n  distance is 2 m\n}", found: ["colon.sign 2:12 is"] },
  { text: "camera {\n  focal length: 85 mm\n}", found: ["name.spaced 2:3 focal length"] },
  { text: "light key {\n  distance:\n  height: 2 m\n}", found: ["value.missing 2:12"] },
  { text: "light key { distance:, height: 2 m }", found: ["value.missing 1:22"] },
  { text: "light key {\n  distance: * 2 m\n}", found: ["value.unreadable 2:13 *"] },
  { text: "light key {\n  a: 2 m b: 3 m\n}", found: ["comma.missing 2:10 b"] },
  {
    text: 'light key {\n  c: 3 m "tape"\n  d: back left\n}',
    found: ['line.surplus 2:10 \\"tape\\"', "line.surplus 3:11 left"],
  },
  {
    text: "distance: 2 m\nkey.power: 1/2",
    found: ["setting.outside 1:1 distance", "setting.outside 2:1 key.power"],
  },
  {
    text: "light key {\n  distance: 2 m,, height: 1 m\n  , power: 1/2\n}",
    found: ["comma.extra 2:17 ,", "comma.extra 3:3 ,"],
  },
  {
    text: "light key {\n  .distance: 2 m\n  key.: 3 m\n  3: 4\n}",
    found: ["line.unreadable 2:3 .", "name.missing 3:7 :", "line.unreadable 4:3 3"],
  },
  { text: 'camera {\n  note: "one" "two"\n}', found: ['line.surplus 2:15 \\"two\\"'] },
];

export const blocks: readonly BrokenText[] = [
  {
    text: "light key {\n  distance: 2 m\nlight fill {\n  distance: 3 m\n}\n",
    found: ["brace.unclosed 2:16"],
  },
  {
    text: "light key {\n  distance: 2 m\n\nexpect key.distance > 3 m\nlight fill {\n  distance: 3 m\n}\n",
    found: ["brace.unclosed 2:16"],
  },
  {
    text: "set {\n  flat back {\n    size: 2 x 2 m\n  flat wing {\n    size: 1 x 2 m\n  }\n}\nroom { size: 3 x 4 x 2 m }\n",
    found: ["brace.unclosed 7:2"],
  },
  { text: "light key {\n  distance: 2 m\n  light {\n", found: ["brace.unclosed 4:1"] },
  { text: "light key { distance: 2 m } }\nlight fill { distance: 1 m }", found: ["brace.extra 1:29 }"] },
  { text: "}\n}\nlight a { b: 1 }", found: ["brace.extra 1:1 }", "brace.extra 2:1 }"] },
  { text: "light key lik head_a {\n  distance: 2 m\n}", found: ["head.like 1:11 lik"] },
  { text: "light key as head_a { }", found: ["head.like 1:11 as"] },
  { text: "light key with octa {\n  distance: 2 m\n}", found: ["head.with 1:11 with"] },
  { text: "light key = {\n  distance: 2 m\n}", found: ["head.sign 1:11 ="] },
  { text: "camera: {\n  aperture: f/8\n}", found: ["head.sign 1:7 :"] },
  { text: "light key-light {\n  distance: 2 m\n}", found: ["name.hyphen 1:10 -"] },
  { text: "light key\n{\n  distance: 2 m\n}", found: ["brace.line 2:1 {"] },
  { text: 'light "key" {\n  distance: 2 m\n}', found: ['name.quotes 1:7 \\"key\\"'] },
  { text: "light 2nd {\n  distance: 2 m\n}", found: ["name.start 1:7 2"] },
  {
    text: "light\nlight key\nlight one two three",
    found: [
      "line.unfinished 1:1 light",
      "line.unfinished 2:1 light key",
      "line.unfinished 3:1 light one two three",
    ],
  },
  { text: "light key like", found: ["line.unfinished 1:1 light key like"] },
  { text: "define light head_a", found: ["brace.missing 1:8 light head_a"] },
  { text: "light key ( {\n  a: 1\n}", found: ["line.unreadable 1:11 ("] },
];

export const brackets: readonly BrokenText[] = [
  { text: "light key { aim: offset(left: 1 m, up: 2 m\n  power: 1/2 }", found: ["bracket.unclosed 1:43"] },
  {
    text: "light key {\n  at: (1 m, 2 m\n  tags: [1, 2\n  d: 4)\n}",
    found: ["bracket.unclosed 2:16", "bracket.unclosed 3:14", "bracket.extra 4:7 )"],
  },
  { text: "light key { at: (1 m,, 2 m), tags: [, 1] }", found: ["comma.extra 1:22 ,", "comma.extra 1:37 ,"] },
  { text: "light key { at: (1 m 2 s 3 m), b: f(a b, c) }", found: ["comma.missing 1:39 b"] },
  { text: "light key { a: 3 m), b: 4 m] }", found: ["bracket.extra 1:19 )", "bracket.extra 1:28 ]"] },
  { text: "light key { a: [1), b: (1] }", found: ["bracket.unclosed 1:18", "bracket.unclosed 1:26"] },
  { text: 'light key {\n  tags: [\n    "a",\n    "b"\n  power: 1/2\n}', found: ["bracket.unclosed 4:8"] },
  { text: "light key { a: f(x: , y: 2) }", found: ["value.missing 1:20"] },
  { text: "light key { a: (1 m, = 2 m) }", found: ["line.unreadable 1:22 ="] },
  { text: "expect stops(a, b > 3 stop\nlet throw = 3 m", found: ["bracket.unclosed 1:18"] },
];

export const numbers: readonly BrokenText[] = [
  {
    text: "light key { a: 2,4 m, b: 12,000 lm, c: 1,234,567 lm, d: f/5,6 }",
    found: [
      "number.comma 1:16 2,4",
      "number.comma 1:26 12,000",
      "number.grouped 1:40 1,234,567",
      "number.comma 1:57 f/5,6",
    ],
  },
  {
    text: "light key { a: 1_000 m, b: 1'000 m, c: 1 000 m }",
    found: ["number.grouped 1:16 1_000", "number.grouped 1:28 1'000", "number.grouped 1:40 1 000 m"],
  },
  {
    text: "light key { a: 5'7\", b: 6', c: 11\", d: 5' 7 1/2\" }",
    found: [
      "number.marks 1:16 5'7\\\"",
      "number.marks 1:25 6'",
      'number.marks 1:32 11\\"',
      "number.marks 1:40 5' 7 1/2\\\"",
    ],
  },
  {
    text: "light key { a: 1e3 m, b: 2.5E-2 m, c: 0x1F m }",
    found: ["number.exponent 1:16 1e3", "number.exponent 1:26 2.5E-2", "number.hex 1:39 0x1F"],
  },
  {
    text: "light key { a: .5 m, b: 2. m, c: 1.2.3 m }",
    found: ["number.bare-point 1:16 .5", "number.trailing-point 1:25 2.", "number.points 1:34 1.2.3"],
  },
  {
    text: "light key { a: 7½ in, b: ¼, c: 1/0 s }",
    found: ["number.fraction-sign 1:17 ½", "number.fraction-sign 1:26 ¼", "number.zero-below 1:32 1/0"],
  },
  {
    text: "light key { time: 16:30:00, b: 1:2:3 }",
    found: ["number.ratio-chain 1:19 16:30:00", "number.ratio-chain 1:32 1:2:3"],
  },
  {
    text: "camera { aperture: f8, b: f 8, c: f / 8, d: F5.6, e: f/.95 }",
    found: [
      "f-number.slash 1:20 f8",
      "f-number.slash 1:27 f 8",
      "f-number.slash 1:35 f / 8",
      "f-number.slash 1:45 F5.6",
      "f-number.slash 1:54 f/.95",
    ],
  },
  {
    text: "camera { a: iso200, b: ISO200, c: iso 200, d: 200 ISO, e: ISO }",
    found: [
      "iso.form 1:13 iso200",
      "iso.form 1:24 ISO200",
      "iso.form 1:35 iso 200",
      "iso.form 1:47 200 ISO",
      "iso.form 1:59 ISO",
    ],
  },
  { text: "light key { a: m 3, b: EV 12 }", found: ["unit.order 1:16 m 3", "unit.order 1:24 EV 12"] },
  {
    text: "light key { a: left 60, b: behind 80 cm, c: 135 deg left }",
    found: [
      "bearing.brackets 1:16 left 60",
      "bearing.brackets 1:28 behind 80 cm",
      "bearing.brackets 1:45 135 deg left",
    ],
  },
  {
    text: "light key { a: 2 3 m, b: 5 ft x 6 ft 2 in, c: 1 lm s m q }",
    found: ["number.side-by-side 1:16 2 3 m", "number.mixed-join 1:26 5 ft x 6 ft 2 in", "unit.words 1:54 m"],
  },
  {
    text: "light key { a: +3 m, b: - -3 m, c: 2 m + }",
    found: ["operand.plus 1:16 +", "operand.missing 1:27 -", "line.unfinished 1:41"],
  },
  { text: "light key { a: 1/200/ s, b: 2 m / }", found: ["line.unfinished 1:34"] },
];

export const texts: readonly BrokenText[] = [
  { text: 'light key {\n  a: "open\n  b: 3\n}', found: ['text.unclosed 2:6 \\"open'] },
  {
    text: 'light key { a: "open }\nlight fill { b: f("open) }',
    found: ['text.unclosed 1:16 \\"open', 'text.unclosed 2:19 \\"open'],
  },
  { text: 'about { note: """\n  never closed\n}\n', found: ['text.unclosed 1:15 \\"\\"\\"'] },
  {
    text: "about { note: “curly”, by: 'single' }",
    found: ["text.curly-quotes 1:15 “curly”", "text.single-quotes 1:28 'single'"],
  },
  {
    text: 'about { note: "a\\qb", b: "\\u{d800}" }',
    found: ["text.escape 1:17 \\\\q", "text.escape 1:27 \\\\u{d800}"],
  },
  { text: 'about { note: "a​b" }  # ‮ evil', found: ["text.hidden 1:17 ​", "text.hidden 1:26 ‮"] },
  { text: "light `open { a: 1 }", found: ["name.unclosed 1:7 `open"] },
  { text: "light `` { a: 1 }", found: ["name.empty 1:7 ``"] },
  { text: "light _key { a: 1 }", found: ["name.start 1:7 _key"] },
];

export const signs: readonly BrokenText[] = [
  {
    text: "// slashes\n/* stars */\nlight key { a: 1 } /* more */",
    found: ["comment.sign 1:1 //", "comment.sign 2:1 /*", "comment.sign 3:20 /*"],
  },
  {
    text: "light key { a: 1; b: 2 }\nlight fill {\n  a: 1;\n}",
    found: ["line.semicolon 1:17 ;", "line.semicolon 3:7 ;"],
  },
  {
    text: "light key { a: 1 @ 2, b: 2 – 1, c: $x }",
    found: ["character.unknown 1:18 @", "character.unknown 1:28 –", "character.unknown 1:36 $"],
  },
  {
    text: "expect a != 3 m\nexpect a => 3 m\nexpect a =< 3 m\nexpect a <> 3 m",
    found: [
      "operator.unknown 1:10 !=",
      "operator.unknown 2:10 =>",
      "operator.unknown 3:10 =<",
      "operator.unknown 4:10 <>",
    ],
  },
  { text: "light key { a: 5 m +/- 5 cm }", found: ["operator.tolerance 1:20 +/-"] },
  { text: "light key { a: throw/half, b: 10 lm/W }", found: ["slash.glued 1:16 throw/half"] },
  { text: "light key { a: \u0007 1 }", found: ["text.hidden 1:16 \\u0007"] },
  { text: "let a = 2 m; let b = 3 m", found: ["line.semicolon 1:12 ;"] },
];

export const claims: readonly BrokenText[] = [
  { text: "expect key.a == f/8", found: ["claim.equals 1:14 =="] },
  { text: "expect key.a = 3 m within 5 %", found: ["claim.equals 1:14 ="] },
  {
    text: "expect key.a is f/8\nexpect key.a is 3 m\nexpect key.a is 5600 K\nexpect key.a is 12 EV",
    found: ["claim.within 1:20", "claim.within 2:20", "claim.within 3:23", "claim.within 4:22"],
  },
  { text: "expect a is > 3 m", found: ["claim.comparison 1:10 is"] },
  { text: "expect a is between 1 m and 2 m", found: ["claim.comparison 1:10 is"] },
  { text: "expect a is under 3 m", found: ["claim.comparison 1:10 is under"] },
  { text: "expect a is within 5 %", found: ["operand.missing 1:13 within"] },
  {
    text: "expect a between 1 m\nexpect a between 1 m and",
    found: ["statement.part 1:21", "line.unfinished 2:25"],
  },
  { text: "expect\nexpect = 3", found: ["claim.empty 1:7", "value.unreadable 2:8 ="] },
  { text: 'expect a > "x"', found: ['operand.text 1:12 \\"x\\"'] },
  {
    text: "expect a > 3 m because\nexpect a > 3 m because of",
    found: ["statement.part 1:23", "statement.part 2:24 of"],
  },
  {
    text: "key.distance > 2 m\nface.disc(towards: key) is f/8 within 1/3 stop",
    found: ["claim.expect 1:1 key", "claim.expect 2:1 face"],
  },
  { text: "expct a > 3 m", found: ["statement.word 1:1 expct"] },
  { text: "expect a > 3 m, b > 2 m", found: ["line.surplus 1:15 ,"] },
  {
    text: "hold face.disc(towards: key)\nhold a is f/8 by\nhold a by 3",
    found: ["statement.part 1:29", "statement.part 2:17", "statement.part 3:11 3"],
  },
  { text: "expect a > 3 m and", found: ["claim.empty 1:19"] },
];

export const statements: readonly BrokenText[] = [
  {
    text: "let x: 3 m\nlet y 4 m\nlet = 3\nlet z =\nlet",
    found: [
      "let.sign 1:6 :",
      "let.sign 2:6",
      "statement.part 3:5 =",
      "line.unfinished 4:8",
      "statement.part 5:4",
    ],
  },
  {
    text: 'use a b from "./kit.light"\nuse a from\nuse a, from "./kit.light"\nuse a',
    found: [
      "statement.part 1:7 b",
      "statement.part 2:11",
      'statement.part 3:13 \\"./kit.light\\"',
      "statement.part 4:6",
    ],
  },
  {
    text: "table {\n  show a\n}\nvariant Late {\n  remove fill\n}",
    found: ["statement.title 1:6", "statement.title 4:8"],
  },
  {
    text: 'table "t"\nvariant "v" {\n  remove\n  keep\n  remove 3\n}',
    found: [
      'brace.missing 1:1 table \\"t\\"',
      "statement.part 3:9",
      "statement.part 4:7",
      "statement.part 5:10 3",
    ],
  },
  {
    text: 'table "t" {\n  swep a over [1]\n  show\n  show a as\n  sweep a\n  sweep a from 1 m\n  sweep a from 1 m to 2 m\n  sweep a from 1 m to 2 m count x\n  remove a\n}',
    found: [
      "statement.line 2:3 swep",
      "line.unfinished 3:7",
      "statement.part 4:12",
      "statement.part 5:10",
      "statement.part 6:19",
      "statement.part 7:26",
      "statement.part 8:33 x",
      "statement.line 9:3 remove",
    ],
  },
  {
    text: "solve {\n  find a\n  find a between 1 m\n  meet\n  prefer\n  prefer least\n  findd a\n}",
    found: [
      "statement.part 2:9",
      "statement.part 3:21",
      "claim.empty 4:7",
      "statement.part 5:9",
      "line.unfinished 6:15",
      "statement.line 7:3 findd",
    ],
  },
  {
    text: "measured {\n  face.disc(a) f/8\n  x is 3 m\n  a: 3 m\n  foo\n}",
    found: ["statement.part 2:16 f/8", "line.unfinished 5:3 foo"],
  },
  {
    text: 'light key {\n  let x = 3\n  expect a > 3\n  table "x" { show a }\n  define light b { }\n}',
    found: [
      "statement.place 2:3 let",
      "statement.place 3:3 expect",
      "statement.place 4:3 table",
      "statement.place 5:3 define",
    ],
  },
  {
    text: 'tabel "x" {\n  show a\n}\nvaraint "y" { remove a }',
    found: ["statement.word 1:1 tabel", "statement.word 4:1 varaint"],
  },
  { text: "define { a: 1 }\ndefine 3", found: ["statement.part 1:8 {", "statement.part 2:8 3"] },
  { text: 'recipe "again"\nhalfshade 1', found: ["title.place 1:1 recipe", "header.place 2:1 halfshade"] },
  { text: 'solve "x" { find a between 1 m and 2 m near }', found: ["line.unfinished 1:44"] },
];
