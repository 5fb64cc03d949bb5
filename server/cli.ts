import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { runCommandLine } from './commandLine.ts';

/** The command line's entry: lends it the file system and the terminal. */
const code = runCommandLine(process.argv.slice(2), {
  readFile: name => readFileSync(name, 'utf8').replace(/^\uFEFF/, ''),
  readBytes: name => (existsSync(name) ? readFileSync(name) : null),
  writeFile: (name, text) => writeFileSync(name, text),
  out: text => process.stdout.write(text),
  err: text => process.stderr.write(text),
  isTerminal: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
});
process.exitCode = code;
