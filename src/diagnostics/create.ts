import type { Place } from "../core/span.js";
import { type ArgsOf, type Code, catalogue } from "./catalogue/index.js";
import type { CatalogueRow } from "./catalogue/row.js";
import type { Diagnostic, Fix, Label } from "./diagnostic.js";

/** What a finder may add to the catalogue's row. */
export interface Extra {
  readonly label?: string;
  readonly related?: readonly Label[];
  readonly help?: string;
  readonly fixes?: readonly Fix[];
}

/** Fills `{words}` of a template; a missing word is our own mistake and stays visible. */
export function fill(template: string, args: Readonly<Record<string, string | number>>): string {
  return template.replace(/\{([a-zA-Z]+)\}/g, (hole, name: string) => {
    const value = Object.hasOwn(args, name) ? args[name] : undefined;
    return value === undefined ? hole : String(value);
  });
}

/** Makes one finding. Code and arguments are checked against the catalogue by the compiler. */
export function finding<C extends Code>(
  code: C,
  place: Place,
  args: ArgsOf<C>,
  extra: Extra = {},
): Diagnostic {
  const row: CatalogueRow = catalogue[code];
  return {
    code,
    severity: row.severity,
    place,
    args,
    label: extra.label ?? "",
    related: extra.related ?? [],
    help: extra.help ?? fill(row.help, args),
    fixes: extra.fixes ?? [],
  };
}

/** The finding's sentence. */
export function sentence(diagnostic: Diagnostic): string {
  const rows: Readonly<Record<string, CatalogueRow>> = catalogue;
  const row = Object.hasOwn(rows, diagnostic.code) ? rows[diagnostic.code] : undefined;
  return row === undefined ? diagnostic.code : fill(row.message, diagnostic.args);
}
