import type { Remark, RemarkPlace } from "./remark.js";

/**
 * Remarks in the Static Analysis Results Interchange Format, version 2.1.0 (an OASIS standard). Numbers of sections in
 * this file are those of the standard.
 */

/** What one code means, for the list of rules. */
export interface SarifRule {
  readonly id: string;
  readonly text: string;
}

/** The program that found something. */
export interface SarifTool {
  readonly name: string;
  readonly version: string;
}

const schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/** A path as a reference by RFC 3986 (3.4.3): each part by itself, so that the slashes stay. */
export function uriOf(path: string): string {
  const parts = path.split("/").map((part) => encodeURIComponent(wellFormed(part)));
  if (path.startsWith("/")) return `file://${parts.join("/")}`;
  return parts.join("/");
}

/** Half of a pair of surrogates has no letters in UTF-8. */
const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, "\ufffd");

/** A region counts lines and columns from 1 and ends behind its last letter (3.30). */
function region(place: RemarkPlace) {
  return {
    startLine: place.line,
    startColumn: place.column,
    endLine: place.end_line,
    endColumn: place.end_column,
  };
}

/** A place in a file, or the file (3.29). */
const physical = (place: RemarkPlace) => ({
  artifactLocation: { uri: uriOf(place.file) },
  ...(place.line === null ? {} : { region: region(place) }),
});

/** A way out as changes of files (3.55); the edits of one file stand together. */
function fix({ title, edits }: Remark["fixes"][number]) {
  const files = [...new Set(edits.map((edit) => edit.file))];
  return {
    description: { text: title },
    artifactChanges: files.map((file) => ({
      artifactLocation: { uri: uriOf(file) },
      replacements: edits
        .filter((edit) => edit.file === file)
        .map((edit) => ({ deletedRegion: region(edit), insertedContent: { text: edit.text } })),
    })),
  };
}

/** All remarks of one run as one log. `rules` explains the codes; those that do not occur are left out. */
export function sarifLog(remarks: readonly Remark[], tool: SarifTool, rules: readonly SarifRule[]): unknown {
  const codes = [...new Set(remarks.map((remark) => remark.code))].sort();
  const known = new Map(rules.map((rule) => [rule.id, rule.text]));
  return {
    $schema: schema,
    version: "2.1.0",
    runs: [
      {
        tool: {
          driver: {
            name: tool.name,
            version: tool.version,
            rules: codes.map((id) => {
              const text = known.get(id);
              return text === undefined ? { id } : { id, help: { text } };
            }),
          },
        },
        columnKind: "utf16CodeUnits",
        results: remarks.map(({ code, level, message, place, related, fixes }) => ({
          ruleId: code,
          ruleIndex: codes.indexOf(code),
          level,
          message: { text: message },
          locations: [{ physicalLocation: physical(place) }],
          ...(related.length === 0
            ? {}
            : {
                relatedLocations: related.map((other) => ({
                  physicalLocation: physical(other),
                  ...(other.text === "" ? {} : { message: { text: other.text } }),
                })),
              }),
          ...(fixes.length === 0 ? {} : { fixes: fixes.map(fix) }),
        })),
      },
    ],
  };
}
