import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import { renderAnnotations } from "../../src/render/annotations.js";
import type { Remark } from "../../src/render/remark.js";
import { sarifLog, uriOf } from "../../src/render/sarif.js";

const place = { file: "book/a b.light", line: 3, column: 5, end_line: 3, end_column: 9 };
const whole = { file: "book/c.light", line: null, column: null, end_line: null, end_column: null };
const remarks: readonly Remark[] = [
  {
    code: "unit.unknown",
    level: "error",
    message: "There is no unit `mt`.",
    place,
    related: [{ ...place, line: 1, end_line: 2, text: "seen here" }],
    fixes: [{ title: "write `m`", edits: [{ ...place, text: "m" }] }],
  },
  {
    code: "flare",
    level: "warning",
    message: "Light falls into the lens.",
    place: whole,
    related: [],
    fixes: [],
  },
  { code: "unit.unknown", level: "note", message: "A note.", place: whole, related: [], fixes: [] },
];

const string = { type: "string" } as const;
const object = (required: string, properties: object): object => ({
  type: "object",
  additionalProperties: false,
  required: required.split(" ").filter((word) => word !== ""),
  properties,
});
const list = (items: object): object => ({ type: "array", items });
const message = object("text", { text: { ...string, minLength: 1 } });
const uri = { ...string, format: "uri-reference" };
const artifact = object("uri", { uri });
const from1 = { type: "integer", minimum: 1 };
const region = object("startLine startColumn endLine endColumn", {
  startLine: from1,
  startColumn: from1,
  endLine: from1,
  endColumn: from1,
});
const physical = object("artifactLocation", { artifactLocation: artifact, region });
const location = object("physicalLocation", { physicalLocation: physical, message });

/**
 * The objects that we write, as the standard (OASIS SARIF 2.1.0, written down from memory, sections named) has them:
 * what it requires, the types it gives, and nothing besides. The output was also checked by hand against the schema
 * that goes with the standard.
 */
const schema = object("$schema version runs", {
  $schema: uri,
  version: { const: "2.1.0" }, // 3.13.2
  runs: list(
    // 3.14
    object("tool columnKind results", {
      tool: object("driver", {
        // 3.18, 3.19
        driver: object("name version rules", {
          name: string,
          version: string,
          rules: list(object("id", { id: string, help: message })), // 3.49
        }),
      }),
      columnKind: { enum: ["utf16CodeUnits", "unicodeCodePoints"] }, // 3.14.17
      results: list(
        // 3.27
        object("ruleId ruleIndex level message locations", {
          ruleId: string,
          ruleIndex: { type: "integer", minimum: 0 },
          level: { enum: ["none", "note", "warning", "error"] }, // 3.27.10
          message,
          locations: { ...list(location), minItems: 1, maxItems: 1 },
          relatedLocations: list(location),
          fixes: list(
            // 3.55 to 3.57
            object("description artifactChanges", {
              description: message,
              artifactChanges: {
                ...list(
                  object("artifactLocation replacements", {
                    artifactLocation: artifact,
                    replacements: {
                      ...list(
                        object("deletedRegion insertedContent", {
                          deletedRegion: region,
                          insertedContent: object("text", { text: string }),
                        }),
                      ),
                      minItems: 1,
                    },
                  }),
                ),
                minItems: 1,
              },
            }),
          ),
        }),
      ),
    }),
  ),
});
const valid = new Ajv({ strict: true, formats: { "uri-reference": /^[\w\-.~:/?#@!$&'()*+,;=%]+$/ } }).compile(
  schema,
);

interface Log {
  readonly runs: readonly {
    readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string }[] } };
    readonly results: readonly {
      readonly ruleId: string;
      readonly ruleIndex: number;
      readonly locations: readonly { readonly physicalLocation: { readonly region?: unknown } }[];
    }[];
  }[];
}

describe("SARIF", () => {
  const log = sarifLog(remarks, { name: "halfshade", version: "1" }, [
    { id: "flare", text: "What flare is." },
  ]);

  test("holds what the standard requires", () => {
    expect(valid(log), JSON.stringify(valid.errors)).toBe(true);
    expect(valid(sarifLog([], { name: "halfshade", version: "1" }, []))).toBe(true);
  });

  test("the check itself refuses what is not so", () => {
    const spoilt = JSON.parse(JSON.stringify(log).replace('"startLine":3', '"startLine":0'));
    expect(valid(spoilt)).toBe(false);
    expect(valid(JSON.parse(JSON.stringify(log).replace('"level":"note"', '"level":"stop"')))).toBe(false);
    expect(valid(JSON.parse(JSON.stringify(log).replace("a%20b", "a b")))).toBe(false);
  });

  test("every result points at its rule, and places keep their lines", () => {
    const [run] = (log as Log).runs;
    expect(run?.tool.driver.rules.map(({ id }) => id)).toEqual(["flare", "unit.unknown"]);
    for (const { ruleId, ruleIndex } of run?.results ?? [])
      expect(run?.tool.driver.rules[ruleIndex]?.id).toBe(ruleId);
    const regions = run?.results.map(({ locations }) => locations[0]?.physicalLocation.region);
    expect(regions).toEqual([
      { startLine: 3, startColumn: 5, endLine: 3, endColumn: 9 },
      undefined,
      undefined,
    ]);
  });

  test.each([
    ["book/a b.light", "book/a%20b.light"],
    ["../a#1?.light", "../a%231%3F.light"],
    ["/book/ü.light", "file:///book/%C3%BC.light"],
    ["100%.light", "100%25.light"],
    ["a\ud800.light", "a%EF%BF%BD.light"],
  ])("the path %j is the reference %s (RFC 3986)", (path, uri) => expect(uriOf(path)).toBe(uri));
});

describe("annotations", () => {
  test("one line each, with the place and the code", () => {
    expect(renderAnnotations(remarks)).toBe(
      "::error file=book/a b.light,line=3,endLine=3,col=5,endColumn=9,title=unit.unknown::There is no unit `mt`.\n" +
        "::warning file=book/c.light,title=flare::Light falls into the lens.\n" +
        "::notice file=book/c.light,title=unit.unknown::A note.\n",
    );
  });

  test("a place over several lines has no end column, since the convention counts columns in one line", () => {
    const [first] = remarks;
    if (first === undefined) throw new Error("no remark");
    const long = { ...first, place: { ...place, end_line: 4 } };
    expect(renderAnnotations([long])).toContain("line=3,endLine=4,col=5,title=");
  });

  test("nothing in a name or message makes a line of its own or another value", () => {
    const [first] = remarks;
    if (first === undefined) throw new Error("no remark");
    const hostile = "100%\r\n::error file=x,line=1::gone, and: more";
    const line = renderAnnotations([{ ...first, message: hostile, place: { ...place, file: hostile } }]);
    expect(line.split("\n")).toHaveLength(2);
    expect(line).toContain("file=100%25%0D%0A%3A%3Aerror file=x%2Cline=1%3A%3Agone%2C and%3A more,line=3");
    expect(line).toMatch(/::100%25%0D%0A::error file=x,line=1::gone, and: more\n$/);
  });
});
