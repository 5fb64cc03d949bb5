import { parseDocument } from 'yaml';
import { createDescriber } from '../../schema/describe.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { readBoat, readWhole } from '../helpers/atOnce.ts';
import { boatOfParts } from './boatOfParts.ts';
import { inBlocks, inside, versionsOf } from './typed.ts';

/*
 * What one keystroke costs, as ratios to one bare `yaml` parse of the same text: a digit more or less in a mass in the
 * middle of the file. Everything is done in turn, round after round, and medians are taken of processor time, so that
 * other programs on the same cores matter little.
 */

const describer = createDescriber();
const ROUNDS = 80;
const WARM = 20;

function processorTime(call: () => unknown): number {
  const before = process.cpuUsage();
  call();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Of a call, the median of its processor time in ms, after what it does. */
type Median = readonly [what: string, milliseconds: number];

/** The bare parse first, the edit last. */
export function keystrokeMedians(text: string): readonly Median[] {
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
  return calls.map(([what], i) => [what, times[i]!.sort((a, b) => a - b)[times[i]!.length >> 1]!]);
}

function ratios(what: string, text: string): void {
  const medians = keystrokeMedians(text);
  const bare = medians[0]![1];
  console.log(`  ${what}, ${text.length.toLocaleString('en')} characters`);
  for (const [name, median] of medians)
    console.log(`    ${name.padEnd(48)} ${(median / bare).toFixed(3)} (${median.toFixed(2)} ms)`);
}

/** Ratios to a bare parse; what is aimed at for an edit of 200 entries is 0.35, and better 0.12. */
export function keystroke(): void {
  console.log('\nA keystroke, in bare yaml parses of the text (processor time)');
  for (const count of [20, 200, 400]) ratios(`${count} entries in blocks, all inside`, inside(boatOfParts(count)));
  ratios('200 parts in blocks, most in the water', inBlocks(boatOfParts(200)));
  ratios('200 parts in brackets, most in the water', boatOfParts(200));
}
