import { join } from "node:path";
import ts from "typescript";
import * as halfshade from "../../src/index.js";
import * as markdown from "../../src/markdown/index.js";
import * as physics from "../../src/physics/index.js";
import { ROOT } from "./pages.js";

/** What the entries of the package are in the sources. */
const ENTRIES: ReadonlyMap<
  string,
  { readonly file: string; readonly names: Readonly<Record<string, unknown>> }
> = new Map([
  ["halfshade", { file: "src/index.ts", names: halfshade }],
  ["halfshade/physics", { file: "src/physics/index.ts", names: physics }],
  ["halfshade/markdown", { file: "src/markdown/index.ts", names: markdown }],
]);

/** A sample of code, by the name under which findings about it are told. */
export interface Sample {
  readonly name: string;
  readonly text: string;
}

const fileOf = (sample: Sample): string => join(ROOT, "tests/docs", `${sample.name}.sample.ts`);

/** What the compiler says of samples that import the package by its own name; they are never written to disk. */
export function typeErrors(samples: readonly Sample[]): readonly string[] {
  const { config } = ts.readConfigFile(join(ROOT, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, include: [], files: [] }, ts.sys, ROOT);
  const paths = Object.fromEntries([...ENTRIES].map(([name, { file }]) => [name, [join(ROOT, file)]]));
  const all: ts.CompilerOptions = {
    ...options,
    paths,
    noEmit: true,
    noUnusedLocals: false,
    lib: ["lib.es2022.d.ts"],
  };
  const texts = new Map(samples.map((sample) => [fileOf(sample), sample.text]));
  const host = ts.createCompilerHost(all);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (name) => texts.has(name) || fileExists.call(host, name);
  host.getSourceFile = (name, version, ...rest) => {
    const text = texts.get(name);
    return text === undefined
      ? getSourceFile.call(host, name, version, ...rest)
      : ts.createSourceFile(name, `${text}\nexport {};\n`, version, true);
  };
  const program = ts.createProgram([...texts.keys()], all, host);
  return [...texts.keys()].flatMap((name) => {
    const file = program.getSourceFile(name);
    return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].map(
      (finding) => {
        const line = file === undefined ? 0 : file.getLineAndCharacterOfPosition(finding.start ?? 0).line + 1;
        return `${name.slice(ROOT.length)}:${line} ${ts.flattenDiagnosticMessageText(finding.messageText, " ")}`;
      },
    );
  });
}

const IMPORT = /import \{([^}]*)\} from "([^"]+)";/g;

/** Runs a sample; what it printed. */
export async function printed(sample: Sample): Promise<string> {
  const linked = sample.text.replace(IMPORT, (_whole, names: string, from: string) => {
    const kept = names.split(",").filter((name) => !/^\s*type\s/.test(name));
    return `const {${kept.join(",")}} = entries.get(${JSON.stringify(from)}).names;`;
  });
  const { outputText } = ts.transpileModule(`async function sample() {\n${linked}\n}`, {
    compilerOptions: { target: ts.ScriptTarget.ES2022 },
  });
  let text = "";
  const console = {
    log: (...values: readonly unknown[]): void => {
      text += `${values.map(String).join(" ")}\n`;
    },
  };
  const make = new Function("entries", "console", `${outputText}\nreturn sample();`);
  await make(ENTRIES, console);
  return text;
}
