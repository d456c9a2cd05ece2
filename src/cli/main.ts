#!/usr/bin/env node
import { machine } from "./machine.js";
import { version } from "./version.js";

/** The way in. Nothing is loaded before it is known to be needed: `--version` alone is answered here. */
async function main(args: readonly string[]): Promise<void> {
  const io = machine();
  if (args.length === 1 && (args[0] === "--version" || args[0] === "-V")) {
    io.out(`${version}\n`);
    return;
  }
  const { run } = await import("./run.js");
  process.exitCode = await run(args, io);
}

void main(process.argv.slice(2));
