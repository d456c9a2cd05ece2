/**
 * Runs one command of the built program and leaves the compiled code of every chunk that was loaded beside it. The
 * code is taken after the run, so that functions which are compiled when they are first called are in it too.
 *
 * node tests/generate/code-cache.cjs CLI ARGUMENTS...
 */
const { writeFileSync } = require("node:fs");
const { dirname, join } = require("node:path");
const vm = require("node:vm");

const [, , program, ...args] = process.argv;
const made = [];
const Script = vm.Script;

vm.Script = class extends Script {
  constructor(text, options) {
    super(text, { filename: options.filename });
    made.push({ script: this, file: options.filename });
  }
};

process.argv = [process.argv[0], program, ...args];
process.on("exit", () => {
  for (const { script, file } of made) {
    writeFileSync(
      `${join(dirname(program), file)}.${process.versions.v8}.${process.arch}.cache`,
      script.createCachedData(),
    );
  }
});
require(program);
