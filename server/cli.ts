import { createRequire } from 'node:module';
import { version } from '../package.json';
import { readBoatFile, readPage, rewriteBoatFile } from './terminal/boatFiles.ts';
import { runCommandLine } from './terminal/commandLine.ts';
import { writeOutput } from './terminal/outputFiles.ts';
import { pdfOf } from './terminal/pdf.ts';
import { inPlainWords } from './terminal/plainErrors.ts';
import { printable } from './terminal/printable.ts';
import { readBeside } from './terminal/readBeside.ts';
import { readPoolsideFiles } from './terminal/readPoolsideFiles.ts';
import { WRONG_USE } from './terminal/world.ts';
import { writeOut } from './terminal/writeOut.ts';

const { stdout, stderr, env } = process;
/** A terminal that can do no more than print has neither colours nor a cursor. */
const isSmart = env.TERM !== 'dumb';

/** Whoever reads the output may have seen enough, as `head` has; that it cannot be written otherwise is said. */
function onOutputFailure(problem: unknown): never {
  const isReadersWish = problem instanceof Error && 'code' in problem && problem.code === 'EPIPE';
  if (!isReadersWish) say(`The output could not be written: ${inPlainWords(problem)}.\n`);
  process.exit(isReadersWish ? process.exitCode : WRONG_USE);
}
stdout.on('error', onOutputFailure);
// With nobody to tell there is nothing to tell.
stderr.on('error', () => {});

function say(text: string): void {
  try {
    stderr.write(text);
  } catch {
    // As above.
  }
}

function put(text: string): void {
  try {
    // A terminal has a way of its own on Windows.
    if (stdout.isTTY) stdout.write(text);
    else writeOut(stdout.fd, text);
  } catch (problem) {
    onOutputFailure(problem);
  }
}

let shown = 0;

/** The command line's entry: lends it the file system and the terminal. */
function run(): number {
  return runCommandLine(process.argv.slice(2), {
    version,
    readFile: readBoatFile,
    readPage,
    rewriteFile: rewriteBoatFile,
    writeOutput,
    pdfOf,
    readBeside,
    readPoolsideFiles,
    out: put,
    document: text => put(stdout.isTTY ? printable(text) : text),
    err: say,
    progress: text => {
      if (!stderr.isTTY || !isSmart) return;
      say(text === null ? `\r${' '.repeat(shown)}\r` : `\r${text}`);
      shown = text?.length ?? 0;
    },
    isTerminal: stdout.isTTY === true && isSmart && !env.NO_COLOR,
  });
}

/** How editors start a server, beside what they talk over. */
const SERVES = /^--(?:stdio$|clientProcessId=)/;

/** The language server is a bundle of its own beside this one: what only checks files need not load it. */
function serve(): void {
  if (!process.argv.includes('--stdio')) process.argv.push('--stdio');
  createRequire(__filename)('./server.cjs');
}

try {
  if (process.argv[2] === 'serve' && process.argv.slice(3).every(given => SERVES.test(given))) serve();
  else process.exitCode = run();
} catch (problem) {
  say(`Trimwright itself failed here: ${inPlainWords(problem)}. Please report it, with the boat file.\n`);
  process.exitCode = WRONG_USE;
}
