import { parseArgs } from 'node:util';
import type { Analysis } from './analysis.ts';
import type { Finding } from './findings/finding.ts';
import { jsonReport } from './report/jsonReport.ts';
import { type Paint, plainPaint } from './report/rows.ts';
import { textReport } from './report/textReport.ts';
import { createBoatService } from './service.ts';
import { positionAt } from './text/lines.ts';
import { rangeOf } from './text/rangeOf.ts';

/** What the command line touches of the world, so that tests can stand in for it. */
export interface World {
  /** Text of a file; throws an error with a plain message when it cannot be read. */
  readonly readFile: (name: string) => string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Output goes to a terminal: colours and progress are welcome. */
  readonly isTerminal: boolean;
}

const USAGE = `Trim a scale submarine described in a boat file.

  trimwright check FILE...           findings as file:line:column; exit code 1 when there are errors
  trimwright report FILE [--json]    how the boat floats and dives, against its limits
`;

const OK = 0;
const ERRORS_FOUND = 1;
const WRONG_USE = 2;

/** Runs one command and gives the exit code: 0 fine, 1 errors in a file, 2 wrong use or an unreadable file. */
export function runCommandLine(args: readonly string[], world: World): number {
  const parsed = parse(args);
  if (typeof parsed === 'string') {
    world.err(`${parsed}\n\n${USAGE}`);
    return WRONG_USE;
  }
  const { command, files, json } = parsed;
  if (command === 'help') {
    world.out(USAGE);
    return OK;
  }
  const texts = files.map(name => read(name, world));
  if (texts.includes(null)) return WRONG_USE;
  const analyses = texts.map((text, i) => analyseWithProgress(files[i]!, text ?? '', world));
  if (command === 'check') return check(files, analyses, world);
  const [analysis] = analyses;
  if (!analysis) return WRONG_USE;
  world.out(json ? `${JSON.stringify(jsonReport(analysis), null, 2)}\n` : textReport(analysis, paintFor(world)));
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

interface Command {
  readonly command: 'check' | 'report' | 'help';
  readonly files: readonly string[];
  readonly json: boolean;
}

/** The command, or what is wrong with it. */
function parse(args: readonly string[]): Command | string {
  let read: ReturnType<typeof parseRaw>;
  try {
    read = parseRaw(args);
  } catch (problem) {
    return problem instanceof Error ? problem.message : String(problem);
  }
  const [command, ...files] = read.positionals;
  if (read.values.help || command === undefined || command === 'help')
    return { command: 'help', files: [], json: false };
  if (command !== 'check' && command !== 'report') return `There is no command “${command}”.`;
  if (files.length === 0) return `“${command}” needs a boat file, such as: trimwright ${command} petrel.boat.yaml`;
  if (command === 'report' && files.length > 1) return '“report” takes one boat file at a time.';
  if (command === 'check' && read.values.json) return '“--json” belongs to “report”.';
  return { command, files, json: read.values.json ?? false };
}

const parseRaw = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { json: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
  });

function read(name: string, world: World): string | null {
  try {
    return world.readFile(name);
  } catch (problem) {
    world.err(`${name}: ${problem instanceof Error ? problem.message : String(problem)}\n`);
    return null;
  }
}

function analyseWithProgress(name: string, text: string, world: World): Analysis {
  if (world.isTerminal) world.err(`\r${name}: computing …`);
  const analysis = createBoatService().analyse(text);
  if (world.isTerminal) world.err(`\r${' '.repeat(name.length + 13)}\r`);
  return analysis;
}

function check(files: readonly string[], analyses: readonly Analysis[], world: World): number {
  for (const [i, analysis] of analyses.entries()) {
    const lines = sorted(analysis).map(finding => findingLine(files[i]!, analysis, finding));
    world.out(lines.length > 0 ? `${lines.join('\n')}\n` : `${files[i]}: no findings\n`);
  }
  return analyses.some(hasErrors) ? ERRORS_FOUND : OK;
}

const sorted = (analysis: Analysis): readonly Finding[] =>
  [...analysis.findings].sort((a, b) => rangeOf(analysis.syntax, a.place)[0] - rangeOf(analysis.syntax, b.place)[0]);

function findingLine(file: string, { syntax }: Analysis, finding: Finding): string {
  const { line, character } = positionAt(syntax.lineStarts, rangeOf(syntax, finding.place)[0]);
  return `${file}:${line + 1}:${character + 1}: ${finding.severity}: ${finding.message} [${finding.code}]`;
}

const hasErrors = ({ findings }: Analysis): boolean => findings.some(finding => finding.severity === 'error');

function paintFor(world: World): Paint {
  if (!world.isTerminal) return plainPaint;
  const ink = (code: number) => (text: string) => `\u001b[${code}m${text}\u001b[0m`;
  return { heading: ink(1), good: ink(32), bad: ink(31) };
}
