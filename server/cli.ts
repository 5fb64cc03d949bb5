import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { runCommandLine } from './commandLine.ts';
import { MOST_BYTES } from './mesh/meshFile.ts';

const PLAIN: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'this is a folder, not a boat file',
  EACCES: 'this file may not be read',
};

/** The command line's entry: lends it the file system and the terminal. */
const code = runCommandLine(process.argv.slice(2), {
  readFile: name => readText(name).replace(/^\uFEFF/, ''),
  readBytes,
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

/** Too large a file is refused before it is read. */
function readBytes(name: string): Uint8Array | null {
  if (!existsSync(name)) return null;
  const megabytes = Math.ceil(statSync(name).size / 1024 / 1024);
  const most = MOST_BYTES / 1024 / 1024;
  if (megabytes > most) throw new Error(`it has ${megabytes} MB, more than ${most} MB.`);
  return readFileSync(name);
}
