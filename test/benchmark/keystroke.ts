import { parseDocument } from 'yaml';
import { createDescriber } from '../../schema/describe.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import { readBoat } from '../../server/core/boat/readBoat.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';
import { readSyntax, readWhole } from '../../server/core/text/reading/syntax.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { boatOfParts } from './boatOfParts.ts';

/*
 * What one keystroke costs, as ratios to one bare `yaml` parse of the same text: a digit more or less in a mass in the
 * middle of the file. Everything is done in turn, round after round, and medians are taken of processor time, so that
 * other programs on the same cores matter little.
 */

const describer = createDescriber();
const ROUNDS = 80;
const WARM = 20;

/** The same boat with its parts as block entries, a key a line. */
const inBlocks = (text: string): string =>
  text.replace(
    /^ {2}- \{ (name: (?:dry part|lead|foam|rod|lump) .*) \}$/gm,
    (_, fields: string) => `  - ${fields.replaceAll(', ', '\n    ')}`,
  );

/** The same with every part in the dry cylinder, as most entries of a boat are: they weigh and displace nothing. */
const inside = (text: string): string =>
  inBlocks(text).replace(
    /^( {2}- name: \w+(?: part)? \d+\n(?: {4}(?:mass): .*\n)?)(?: {4}.*\n)*/gm,
    (_, lead: string) =>
      boatText`
        ${lead.includes('mass') ? lead : textLines([`${lead}    mass: 3.5 g`])}    station: 430 mm
            height: 40 mm
            in: dry cylinder
      `,
  );

/** The text and the text with one more digit in the mass in its middle. */
function versionsOf(text: string): readonly [string, string] {
  const masses = [...text.matchAll(/mass: [\d.]*(?= g)/g)];
  const { 0: said, index } = masses[masses.length >> 1]!;
  const end = index + said.length;
  return [text, `${text.slice(0, end)}${said.includes('.') ? '' : '.'}1${text.slice(end)}`];
}

function processorTime(call: () => unknown): number {
  const before = process.cpuUsage();
  call();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function ratios(what: string, text: string): void {
  const versions = versionsOf(text);
  const shapes = createShapes();
  let now = text;
  let syntax = readSyntax(text);
  let read = readBoat(syntax, describer, undefined, { meshes: () => null, shapes });
  let analysis = analyse(text, describer);
  const around = { meshes: () => null, shapes };
  const calls: readonly (readonly [string, () => void])[] = [
    ['bare yaml parse', () => void parseDocument(now)],
    ['whole text read', () => void readWhole(now)],
    ['text read from pieces, none kept', () => void readSyntax(now)],
    [
      'text read, one entry changed',
      () => {
        syntax = readSyntax(now, syntax);
      },
    ],
    [
      'boat read, one entry changed',
      () => {
        read = readBoat(syntax, describer, read.kept, around);
      },
    ],
    [
      'edit, without uncertainties',
      () => {
        analysis = analyse(now, describer, analysis);
      },
    ],
  ];
  const times = calls.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round += 1) {
    now = versions[round % 2]!;
    for (const [i, [, call]] of calls.entries()) {
      const time = processorTime(call);
      if (round >= WARM) times[i]!.push(time);
    }
  }
  const medians = times.map(each => each.sort((a, b) => a - b)[each.length >> 1]!);
  console.log(`  ${what}, ${text.length.toLocaleString('en')} characters`);
  for (const [i, [name]] of calls.entries())
    console.log(`    ${name.padEnd(48)} ${(medians[i]! / medians[0]!).toFixed(3)} (${medians[i]!.toFixed(2)} ms)`);
}

/** Ratios to a bare parse; what is aimed at for an edit of 200 entries is 0.35, and better 0.12. */
export function keystroke(): void {
  console.log('\nA keystroke, in bare yaml parses of the text (processor time)');
  for (const count of [20, 200, 400]) ratios(`${count} entries in blocks, all inside`, inside(boatOfParts(count)));
  ratios('200 parts in blocks, most in the water', inBlocks(boatOfParts(200)));
  ratios('200 parts in brackets, most in the water', boatOfParts(200));
}
