import { parseArgs } from 'node:util';
import { type Analysis, inOtherWater } from '../core/analysis/analysis.ts';
import { waterOfKind } from '../core/boat/readWater.ts';
import type { Paper } from '../core/drawing/print/printStyle.ts';
import { sheetDocument } from '../core/drawing/print/sheetDocument.ts';
import { standaloneSvg } from '../core/drawing/standaloneSvg.ts';
import { PICTURES, type PictureId, trimSheet } from '../core/drawing/trimSheet.ts';
import type { Finding } from '../core/findings/finding.ts';
import { type MeshFile, missingMesh, outsideMesh, unreadableMesh } from '../core/meshFiles/meshFile.ts';
import { readMeshFile } from '../core/meshFiles/readMeshFile.ts';
import { jsonReport } from '../core/report/jsonReport.ts';
import { textReport } from '../core/report/textReport.ts';
import { positionAt } from '../core/text/reading/lines.ts';
import { rangeOf } from '../core/text/reading/rangeOf.ts';
import { createBoatService } from '../editor/service.ts';
import { ERRORS_FOUND, hasErrors, OK, paintFor, type World, WRONG_USE } from '../editor/world.ts';
import { correctCommand } from './correctCommand.ts';
import { learnCommand } from './learnCommand.ts';

const USAGE = `Trim a scale submarine described in a boat file.

  trimwright check FILE...           findings as file:line:column; exit code 1 when there are errors
  trimwright report FILE [--json]    how the boat floats and dives, against its limits
  trimwright correct FILE [--json]   the lead and foam that trim it, with a cut list
                     [--write]       ... and put the best one into the file
                     [--explain]     ... and say why each piece is what it is
                     [--both-waters] the pieces to add for the sea, to take out again for fresh water

  trimwright learn FILE [--json]     what the trials tell: readings against the file, and what explains them
                   [--write]         ... and put the best explanation into the file

  trimwright sheet FILE -o OUT       a page for the bench and the pool: figures, drawings, cut list
                   [--paper a4|letter]
                   [--svg VIEW]      ... or one of its drawings: ${PICTURES.join(', ').replace(/(.{1,58}), /g, '$1,\n                                     ')}

  --water fresh|sea                  report, correct or draw for other water than the file's
`;

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
  const [ofFile] = analyses;
  if (!ofFile) return WRONG_USE;
  const analysis = parsed.water
    ? inOtherWater(ofFile, waterOfKind(parsed.water, ofFile.boat.water.temperature))
    : ofFile;
  if (command === 'correct') return correctCommand(files[0]!, analysis, parsed, world);
  if (command === 'learn') return learnCommand(files[0]!, analysis, parsed, world);
  if (command === 'sheet') return sheet(analysis, parsed, world);
  world.out(json ? `${JSON.stringify(jsonReport(analysis), null, 2)}\n` : textReport(analysis, paintFor(world)));
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Writes the sheet, or one drawing of it, to a file or to the output. */
function sheet(analysis: Analysis, { output, paper, svg }: Command, world: World): number {
  const correction = analysis.corrections()[0] ?? null;
  const [picture] = svg === null ? [] : trimSheet(analysis, { only: [svg], correction }).pictures;
  if (svg !== null && !picture) {
    world.err(`There is no ${svg} to draw for this boat as it is: see its report.\n`);
    return ERRORS_FOUND;
  }
  const text = picture ? standaloneSvg(picture) : sheetDocument(analysis, { paper });
  if (output === null) world.out(text);
  else world.writeFile(output, text);
  if (output !== null) world.err(`${output}: written.\n`);
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

const COMMANDS = ['check', 'report', 'correct', 'learn', 'sheet'] as const;

interface Command {
  readonly command: (typeof COMMANDS)[number] | 'help';
  readonly files: readonly string[];
  readonly json: boolean;
  readonly write: boolean;
  readonly explain: boolean;
  readonly bothWaters: boolean;
  readonly water: 'fresh' | 'sea' | null;
  readonly output: string | null;
  readonly paper: Paper;
  readonly svg: PictureId | null;
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
  const {
    json = false,
    write = false,
    explain = false,
    'both-waters': bothWaters = false,
    help,
    water = null,
    output = null,
    paper,
    svg,
  } = read.values;
  const options = {
    ...{ files, json, write, explain, bothWaters, output },
    water: water === 'fresh' || water === 'sea' ? water : null,
    paper: paper === 'letter' ? paper : 'a4',
    svg: PICTURES.find(id => id === svg) ?? null,
  } as const;
  if (help || named === undefined || named === 'help') return { ...options, command: 'help' };
  const command = COMMANDS.find(each => each === named);
  if (!command) return `There is no command “${named}”.`;
  if (files.length === 0) return `“${command}” needs a boat file, such as: trimwright ${command} petrel.boat.yaml`;
  if (command !== 'check' && files.length > 1) return `“${command}” takes one boat file at a time.`;
  if ((command === 'check' || command === 'sheet') && json)
    return '“--json” belongs to “report”, “correct” and “learn”.';
  if (write && command !== 'correct' && command !== 'learn') return '“--write” belongs to “correct” and “learn”.';
  if (command !== 'correct' && (explain || bothWaters)) return '“--explain” and “--both-waters” belong to “correct”.';
  if (bothWaters && (write || explain || water !== null)) {
    return '“--both-waters” goes with “--json” alone: what to write depends on the water.';
  }
  if (water !== null && options.water === null) return `“--water” is fresh or sea, not “${water}”.`;
  if (water !== null && (command === 'check' || command === 'learn'))
    return '“--water” belongs to “report”, “correct” and “sheet”.';
  if (command !== 'sheet' && (output !== null || paper !== undefined || svg !== undefined)) {
    return '“-o”, “--paper” and “--svg” belong to “sheet”.';
  }
  if (paper !== undefined && paper !== options.paper) return `“--paper” is a4 or letter, not “${paper}”.`;
  if (svg !== undefined && options.svg === null) return `“--svg” is one of ${PICTURES.join(', ')}, not “${svg}”.`;
  return { ...options, command };
}

const parseRaw = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      write: { type: 'boolean' },
      explain: { type: 'boolean' },
      'both-waters': { type: 'boolean' },
      water: { type: 'string' },
      output: { type: 'string', short: 'o' },
      paper: { type: 'string' },
      svg: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
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
  const meshes = new Map<string, MeshFile>();
  const analysis = createBoatService().analyse(text, undefined, mesh => {
    const file = meshes.get(mesh) ?? meshBeside(name, mesh, world);
    meshes.set(mesh, file);
    return file;
  });
  if (world.isTerminal) world.err(`\r${' '.repeat(name.length + 13)}\r`);
  return analysis;
}

/** A mesh file by its name from the folder of the boat file; nothing outside that folder is read. */
function meshBeside(boatFile: string, name: string, world: World): MeshFile {
  if (name.split('/').includes('..')) return outsideMesh();
  try {
    const bytes = world.readBeside(boatFile, name);
    if (bytes === 'outside') return outsideMesh();
    return bytes ? readMeshFile(bytes) : missingMesh();
  } catch (problem) {
    return unreadableMesh(problem instanceof Error ? problem.message : String(problem));
  }
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
