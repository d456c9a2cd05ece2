import { run } from "../../src/cli/run.js";

/** What one run of the command gave. */
export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

/** What the machine is like for one run. */
export interface Given {
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly terminal?: boolean;
  readonly columns?: number;
}

/** Runs the command in this process with its own input, output and environment. */
export async function halfshade(args: readonly string[], given: Given = {}): Promise<Ran> {
  let out = "";
  let err = "";
  const exit = await run(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    async *input() {
      if (given.input !== undefined) yield Buffer.from(given.input);
    },
    env: (name) => given.env?.[name],
    cores: () => 2,
    workerFile: () => null,
    columns: () => (given.terminal === true ? (given.columns ?? 80) : null),
    outIsTerminal: given.terminal === true,
    errIsTerminal: given.terminal === true,
  });
  return { exit, out, err };
}
