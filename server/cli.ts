import { readFileSync, writeFileSync } from 'node:fs';
import { runCommandLine } from './terminal/commandLine.ts';
import { readBeside } from './terminal/readBeside.ts';

const PLAIN: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'this is a folder, not a boat file',
  EACCES: 'this file may not be read',
};

/** The command line's entry: lends it the file system and the terminal. */
const code = runCommandLine(process.argv.slice(2), {
  readFile: name => readText(name).replace(/^\uFEFF/, ''),
  readBeside,
  writeFile: (name, text) => writeFileSync(name, text),
  out: text => process.stdout.write(text),
  err: text => process.stderr.write(text),
  isTerminal: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
});
process.exitCode = code;

/** Text of a file, or an error in plain words. */
function readText(name: string): string {
  try {
    return readFileSync(name, 'utf8');
  } catch (problem) {
    const code = problem instanceof Error && 'code' in problem ? String(problem.code) : '';
    throw new Error(PLAIN[code] ?? (problem instanceof Error ? problem.message : String(problem)));
  }
}
