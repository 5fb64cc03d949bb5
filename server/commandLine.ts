import { parseArgs } from 'node:util';
import { type Analysis, inOtherWater } from './analysis.ts';
import { waterOfKind } from './boat/readWater.ts';
import type { Correction } from './corrections/correction.ts';
import { roomAdvice } from './corrections/propose.ts';
import type { Paper } from './drawing/print/printStyle.ts';
import { sheetDocument } from './drawing/print/sheetDocument.ts';
import { standaloneSvg } from './drawing/standaloneSvg.ts';
import { PICTURES, type PictureId, trimSheet } from './drawing/trimSheet.ts';
import type { Finding } from './findings/finding.ts';
import { type MeshFile, missingMesh, outsideMesh, unreadableMesh } from './mesh/meshFile.ts';
import { readMeshFile } from './mesh/readMeshFile.ts';
import { correctionReport } from './report/correctionReport.ts';
import { explanationReport } from './report/explanationReport.ts';
import { jsonReport } from './report/jsonReport.ts';
import { type Paint, plainPaint } from './report/rows.ts';
import { textReport } from './report/textReport.ts';
import { createBoatService } from './service.ts';
import { applyChanges } from './text/edit.ts';
import type { TextSplice } from './text/layout.ts';
import { positionAt } from './text/lines.ts';
import { rangeOf } from './text/rangeOf.ts';

/** What the command line touches of the world, so that tests can stand in for it. */
export interface World {
  /** Text of a file; throws an error with a plain message when it cannot be read. */
  readonly readFile: (name: string) => string;
  readonly writeFile: (name: string, text: string) => void;
  /** Bytes of a file; null when it is not there. Throws as `readFile` does. */
  readonly readBytes: (name: string) => Uint8Array | null;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Output goes to a terminal: colours and progress are welcome. */
  readonly isTerminal: boolean;
}

const USAGE = `Trim a scale submarine described in a boat file.

  trimwright check FILE...           findings as file:line:column; exit code 1 when there are errors
  trimwright report FILE [--json]    how the boat floats and dives, against its limits
  trimwright correct FILE [--json]   the lead and foam that trim it, with a cut list
                     [--write]       ... and put the best one into the file
                     [--explain]     ... and say why each piece is what it is

  trimwright sheet FILE -o OUT       a page for the bench and the pool: figures, drawings, cut list
                   [--paper a4|letter]
                   [--svg VIEW]      ... or one of its drawings: ${PICTURES.join(', ').replace(/(.{1,58}), /g, '$1,\n                                     ')}

  --water fresh|sea                  report, correct or draw for other water than the file's
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
  const [ofFile] = analyses;
  if (!ofFile) return WRONG_USE;
  const analysis = parsed.water
    ? inOtherWater(ofFile, waterOfKind(parsed.water, ofFile.boat.water.temperature))
    : ofFile;
  if (command === 'correct') return correct(files[0]!, analysis, parsed, world);
  if (command === 'sheet') return sheet(analysis, parsed, world);
  world.out(json ? `${JSON.stringify(jsonReport(analysis), null, 2)}\n` : textReport(analysis, paintFor(world)));
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Prints the corrections, and with --write puts the best one into the file, as the editor's code action does. */
function correct(file: string, analysis: Analysis, { json, write, explain }: Command, world: World): number {
  const corrections = analysis.corrections();
  const [best] = corrections;
  const shown = (correction: Correction) => {
    const report = correctionReport(analysis, correction, paintFor(world));
    return explain ? `${report}\n\n${explanationReport(analysis, correction, paintFor(world))}` : report;
  };
  if (json) {
    world.out(`${JSON.stringify(jsonReport(analysis).corrections, null, 2)}\n`);
  } else {
    world.out(
      best ? `${corrections.map(correction => shown(correction)).join('\n\n\n')}\n` : `${nothingToCorrect(analysis)}\n`,
    );
    world.out(adviceOf(analysis, corrections));
  }
  if (write && best) {
    const splices = applyChanges(analysis.syntax, best.changes);
    if (splices === null) {
      world.err(`${file}: the pieces could not be written into this file; add them by hand.\n`);
      return ERRORS_FOUND;
    }
    world.writeFile(file, splice(analysis.syntax.text, splices));
    world.err(`${file}: written.\n`);
  }
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

/** Why there is nothing to add, or what room would help when nothing meets both conditions. */
function nothingToCorrect(analysis: Analysis): string {
  if (analysis.isFaulty) return 'The file has errors: mend them first (trimwright check).';
  const isOut = analysis.findings.some(({ severity }) => severity === 'warning' || severity === 'error');
  if (!isOut) return 'Nothing to correct: the boat is within its limits.';
  if (analysis.boat.bays.length === 0) {
    return 'The file names no bays, so there is no room for lead or foam. The editor’s quick fix proposes some, or add them under “bays:”.';
  }
  return `No lead or foam that the bays and the stock allow brings the boat within its limits.${sawAdvice(analysis.boat)}`;
}

/** Lead that nobody said may be cut: counted in when it may. */
function sawAdvice({ payload }: Analysis['boat']): string {
  const lead = payload.filter(({ material, fixed }) => material === 'lead' && fixed).map(({ name }) => `“${name}”`);
  return lead.length > 0
    ? ` If ${lead.join(' or ')} may be cut or moved, add “fixed: false” to it: then it is counted in.`
    : '';
}

function adviceOf(analysis: Analysis, corrections: readonly Correction[]): string {
  if (corrections.some(({ condition, left }) => condition === 'both' && left.length === 0)) return '';
  const advice = analysis.patient && roomAdvice(analysis.patient);
  return advice === null ? '' : `\n${advice}\n`;
}

const splice = (text: string, splices: readonly TextSplice[]): string =>
  splices.reduceRight((whole, { start, end, text: put }) => whole.slice(0, start) + put + whole.slice(end), text);

interface Command {
  readonly command: 'check' | 'report' | 'correct' | 'sheet' | 'help';
  readonly files: readonly string[];
  readonly json: boolean;
  readonly write: boolean;
  readonly explain: boolean;
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
  const [command, ...files] = read.positionals;
  const { json = false, write = false, explain = false, help, water = null, output = null, paper, svg } = read.values;
  const options = {
    ...{ files, json, write, explain, output },
    water: water === 'fresh' || water === 'sea' ? water : null,
    paper: paper === 'letter' ? paper : 'a4',
    svg: PICTURES.find(id => id === svg) ?? null,
  } as const;
  if (help || command === undefined || command === 'help') return { ...options, command: 'help' };
  if (command !== 'check' && command !== 'report' && command !== 'correct' && command !== 'sheet') {
    return `There is no command “${command}”.`;
  }
  if (files.length === 0) return `“${command}” needs a boat file, such as: trimwright ${command} petrel.boat.yaml`;
  if (command !== 'check' && files.length > 1) return `“${command}” takes one boat file at a time.`;
  if ((command === 'check' || command === 'sheet') && json) return '“--json” belongs to “report” and “correct”.';
  if (command !== 'correct' && (write || explain)) return '“--write” and “--explain” belong to “correct”.';
  if (water !== null && options.water === null) return `“--water” is fresh or sea, not “${water}”.`;
  if (water !== null && command === 'check') return '“--water” belongs to “report”, “correct” and “sheet”.';
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
    const bytes = world.readBytes(boatFile.replace(/[^/\\]*$/, '') + name);
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

const hasErrors = ({ findings }: Analysis): boolean => findings.some(finding => finding.severity === 'error');

function paintFor(world: World): Paint {
  if (!world.isTerminal) return plainPaint;
  const ink = (code: number) => (text: string) => `\u001b[${code}m${text}\u001b[0m`;
  return { heading: ink(1), good: ink(32), bad: ink(31) };
}
