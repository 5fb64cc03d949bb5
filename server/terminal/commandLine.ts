import { parseArgs } from 'node:util';
import { type MeshFile, meshFrom } from '../service/meshes.ts';
import { type Analysis, createBoatService, type Paper, type PictureId } from '../service/service.ts';

import { correctCommand } from './correctCommand.ts';
import { learnCommand } from './learnCommand.ts';
import { newCommand } from './newCommand.ts';
import { poolsideCommand, takeCommand } from './poolsideCommand.ts';
import { printableInLine } from './printable.ts';
import { sheetCommand, unpackCommand } from './sheetCommand.ts';
import { attempted, ERRORS_FOUND, OK, safely, type World, WRONG_USE } from './world.ts';

const service = createBoatService();

/** Words between commas, in lines of a terminal; `indent`: where each line begins, columns. */
function inLines(words: readonly string[], indent: number): string {
  let text = '';
  let column = indent;
  for (const word of words) {
    const isFull = column + word.length > 96;
    if (text !== '') text += isFull ? `,\n${' '.repeat(indent)}` : ', ';
    text += word;
    column = (isFull ? indent : column) + word.length + 2;
  }
  return text;
}

const USAGE = `Trim a scale submarine described in a boat file.

  trimwright new NAME                a boat file to fill in, NAME.boat.yaml
                 [--units inches|metric] [-o OUT]
                 [--plan "900, 90, 62, 1:60"] ... planned from length, beam, waterline and scale

  trimwright check FILE...           findings as file:line:column; exit code 1 when there are errors
  trimwright report FILE [--json]    how the boat floats and dives, against its limits
  trimwright correct FILE [--json]   the lead and foam that trim it, with a cut list
                     [--write]       ... and put the best one into the file
                     [--explain]     ... and say why each piece is what it is
                     [--both-waters] the pieces to add for the sea, to take out again for fresh water

  trimwright learn FILE [--json]     what the trials tell: readings against the file, and what explains them
                   [--write]         ... and put the best explanation into the file

  trimwright sheet FILE -o OUT       two pages for the bench and the pool, NAME.html or NAME.pdf: the
                                     verdict, side views, cut list; a form for the pool, the parts
                   [--paper a4|letter]
                   [--appendix]      ... and all the rest: figures, findings, views, plots, blank forms
                   [--svg VIEW]      ... or one of its drawings: ${inLines(service.drawings, 37)}

                   [--overwrite]     ... in the place of a file of that name

  trimwright unpack PAGE [-o OUT]    the boat file out of such a page (NAME.html)

  trimwright poolside FILE -o OUT    a page for the phone, at the pool: what to read, what it tells, what to put aboard
  trimwright take FILE TRIALS        the trials of that page that the file has not yet
                  [--write]          ... and put them into the file

  trimwright serve                   the language server on standard input and output, for any editor

  --water fresh|sea                  report, correct or draw for other water than the file's
  --version                          which version this is

  “-” for FILE reads what is piped in, “-o -” writes to the output.
  Exit codes: 0 fine, 1 errors in a file, 2 wrong use, or a file that cannot be read or written.
`;

/** Runs one command and gives the exit code: 0 fine, 1 errors in a file, 2 wrong use or an unreadable file. */
export function runCommandLine(args: readonly string[], terminal: World): number {
  const parsed = parse(args);
  const isJson = typeof parsed !== 'string' && parsed.json;
  const world = safely(terminal, isJson);
  if (typeof parsed === 'string') {
    world.err(`${parsed}\n\n${USAGE}`);
    return WRONG_USE;
  }
  const { command, files, json } = parsed;
  if (command === 'help') {
    world.out(USAGE);
    return OK;
  }
  if (command === 'version') {
    world.out(`${world.version}\n`);
    return OK;
  }
  if (command === 'new')
    return newCommand(
      { name: files.join(' '), units: parsed.units, plan: parsed.plan, output: parsed.output },
      { service, world },
    );
  if (command === 'check') return Math.max(...files.map(name => check(name, world)));
  if (command === 'unpack') return unpackCommand(files[0]!, parsed, { service, world });
  const ofFile = analysed(files[0]!, world);
  if (!ofFile) return WRONG_USE;
  if (command === 'take')
    return takeCommand(files[0]!, ofFile, { from: files[1]!, write: parsed.write }, { service, world });
  const analysis = parsed.water ? service.inWater(ofFile, parsed.water) : ofFile;
  if (command === 'correct') return correctCommand(files[0]!, analysis, parsed, { service, world });
  if (command === 'learn') return learnCommand(files[0]!, analysis, parsed, { service, world });
  if (command === 'poolside') return poolsideCommand(files[0]!, analysis, parsed, { service, world });
  if (command === 'sheet') return sheetCommand(files[0]!, analysis, parsed, { service, world });
  if (json) world.out(`${JSON.stringify(service.reportData(analysis), null, 2)}\n`);
  else world.painted(paint => service.report(analysis, paint));
  return exitOf(analysis);
}

const COMMANDS = ['new', 'check', 'report', 'correct', 'learn', 'sheet', 'unpack', 'poolside', 'take'] as const;
/** Those that write a page, and those that can say it for programs. */
const PAGES: readonly string[] = ['sheet', 'unpack', 'poolside'];
const WITH_JSON: readonly string[] = ['report', 'correct', 'learn'];

interface Command {
  readonly command: (typeof COMMANDS)[number] | 'help' | 'version';
  readonly files: readonly string[];
  readonly json: boolean;
  readonly write: boolean;
  readonly explain: boolean;
  readonly bothWaters: boolean;
  readonly water: 'fresh' | 'sea' | null;
  readonly units: 'metric' | 'inches';
  readonly plan: string | null;
  readonly output: string | null;
  readonly overwrite: boolean;
  readonly paper: Paper;
  readonly svg: PictureId | null;
  readonly appendix: boolean;
}

/** The command, or what is wrong with it. */
function parse(args: readonly string[]): Command | string {
  let read: ReturnType<typeof parseRaw>;
  try {
    read = parseRaw(args);
  } catch (problem) {
    // The first sentence: the rest is advice for programmers.
    return `${(problem instanceof Error ? problem.message : String(problem)).split('. ')[0]}.`;
  }
  const [named, ...files] = read.positionals;
  const given = read.tokens.flatMap(token => (token.kind === 'option' ? [token.name] : []));
  const twice = given.find((name, i) => given.indexOf(name) < i);
  if (twice !== undefined) return `“--${twice}” is given twice.`;
  const {
    json = false,
    write = false,
    explain = false,
    'both-waters': bothWaters = false,
    help,
    water = null,
    output = null,
    overwrite = false,
    appendix = false,
    version,
    paper,
    svg,
    units,
    plan = null,
  } = read.values;
  const options = {
    ...{ files, json, write, explain, bothWaters, output, overwrite, appendix },
    water: water === 'fresh' || water === 'sea' ? water : null,
    paper: paper === 'letter' ? paper : 'a4',
    units: units === 'inches' ? units : 'metric',
    plan,
    svg: svg === undefined ? null : service.drawingNamed(svg),
  } as const;
  if (version) return { ...options, command: 'version' };
  if (help || named === undefined || named === 'help') return { ...options, command: 'help' };
  const command = COMMANDS.find(each => each === named);
  if (named === 'serve') return '“serve” stands alone: trimwright serve';
  if (!command) return `There is no command “${named}”.`;
  if (units !== undefined && units !== options.units) return `“--units” is inches or metric, not “${units}”.`;
  if (plan !== null && command !== 'new') return '“--plan” belongs to “new”.';
  if (units !== undefined && command !== 'new') return '“--units” belongs to “new”.';
  if (command === 'new') {
    if (files.length === 0) return '“new” needs the name of the boat, such as: trimwright new Petrel';
    const isPlain = !json && !write && !explain && !bothWaters && !overwrite && water === null && !paper && !svg;
    return isPlain ? { ...options, command } : '“new” goes with “--units”, “--plan” and “-o” alone.';
  }
  if (files.length === 0) {
    const [needed, such] = command === 'unpack' ? ['page', 'petrel.html'] : ['boat file', 'petrel.boat.yaml'];
    return `“${command}” needs a ${needed}, such as: trimwright ${command} ${such}`;
  }
  if (command === 'take') {
    if (files.length !== 2)
      return '“take” needs a boat file and the trials, such as: trimwright take petrel.boat.yaml day.yaml';
    if (files.every(name => name === '-')) return 'One of the boat file and the trials can be piped in, not both.';
  } else if (command !== 'check' && files.length > 1) return `“${command}” takes one boat file at a time.`;
  if (json && !WITH_JSON.includes(command)) return '“--json” belongs to “report”, “correct” and “learn”.';
  if (write && command !== 'correct' && command !== 'learn' && command !== 'take')
    return '“--write” belongs to “correct”, “learn” and “take”.';
  if (command !== 'correct' && (explain || bothWaters)) return '“--explain” and “--both-waters” belong to “correct”.';
  if (bothWaters && (write || explain || water !== null)) {
    return '“--both-waters” goes with “--json” alone: what to write depends on the water.';
  }
  if (water !== null && options.water === null) return `“--water” is fresh or sea, not “${water}”.`;
  if (water !== null && !['report', 'correct', 'sheet'].includes(command))
    return '“--water” belongs to “report”, “correct” and “sheet”.';
  if (command !== 'sheet' && (paper !== undefined || svg !== undefined || appendix))
    return '“--paper”, “--appendix” and “--svg” belong to “sheet”.';
  if (svg !== undefined && appendix) return '“--svg” is one drawing, without “--appendix”.';
  if (!PAGES.includes(command) && output !== null) return '“-o” belongs to “sheet”, “unpack” and “poolside”.';
  if (overwrite && output === null) return '“--overwrite” goes with “-o”.';
  if (write && files[0] === '-') return '“--write” needs a file to write into, not what is piped in.';
  if (paper !== undefined && paper !== options.paper) return `“--paper” is a4 or letter, not “${paper}”.`;
  if (svg !== undefined && options.svg === null)
    return `“--svg” is one of ${service.drawings.join(', ')}, not “${svg}”.`;
  return { ...options, command };
}

const parseRaw = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    tokens: true,
    options: {
      json: { type: 'boolean' },
      write: { type: 'boolean' },
      explain: { type: 'boolean' },
      'both-waters': { type: 'boolean' },
      water: { type: 'string' },
      output: { type: 'string', short: 'o' },
      overwrite: { type: 'boolean' },
      appendix: { type: 'boolean' },
      version: { type: 'boolean' },
      paper: { type: 'string' },
      svg: { type: 'string' },
      units: { type: 'string' },
      plan: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
  });

/** Null, and said, for a file that cannot be read. */
function analysed(name: string, world: World): Analysis | null {
  let text = '';
  if (!attempted(name, world, () => (text = world.readFile(name)))) return null;
  world.progress(`${name}: computing …`);
  const meshes = new Map<string, MeshFile>();
  const analysis = service.analyse(text, undefined, mesh => {
    const file = meshes.get(mesh) ?? meshBeside(name, mesh, world);
    meshes.set(mesh, file);
    return file;
  });
  world.progress(null);
  return analysis;
}

/** A mesh file by its name from the folder of the boat file; nothing outside that folder is read. */
function meshBeside(boatFile: string, name: string, world: World): MeshFile {
  if (name.split('/').includes('..')) return meshFrom({ status: 'outside' });
  try {
    const found = world.readBeside(boatFile, name);
    if (found === 'outside') return meshFrom({ status: found });
    return meshFrom(found ? { status: 'read', bytes: found } : { status: 'missing' });
  } catch (problem) {
    return meshFrom({ status: 'unreadable', problem: problem instanceof Error ? problem.message : String(problem) });
  }
}

function check(file: string, world: World): number {
  const analysis = analysed(file, world);
  if (!analysis) return WRONG_USE;
  const lines = service
    .findings(analysis)
    .map(
      ({ line, character, severity, message, code }) =>
        `${file}:${line}:${character}: ${severity}: ${message} [${code}]`,
    )
    .map(printableInLine);
  world.out(lines.length > 0 ? `${lines.join('\n')}\n` : `${printableInLine(file)}: no findings\n`);
  return exitOf(analysis);
}

const exitOf = (analysis: Analysis): number => (service.hasErrors(analysis) ? ERRORS_FOUND : OK);
