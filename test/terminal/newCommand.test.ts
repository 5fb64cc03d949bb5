import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { analysed } from '../helpers/analysed.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';

/** What a command wrote and said, and its exit code. */
function run(args: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const { world, written, said } = memoryWorld(files);
  const code = runCommandLine(args, world);
  return { code, written, ...said() };
}

describe('trimwright new', () => {
  it.each([
    [['new', 'Ringed', 'Plover'], 'ringed-plover.boat.yaml', 'mm'],
    [['new', 'Knot', '--units', 'inches'], 'knot.boat.yaml', 'in'],
    [['new', 'Knot', '-o', 'pond.boat.yaml'], 'pond.boat.yaml', 'mm'],
    [['new', 'ponds/reed-warbler.boat.yaml'], 'ponds/reed-warbler.boat.yaml', 'mm'],
  ])('%j writes %s', (args, file, length) => {
    const { code, written, err } = run(args);
    expect([code, Object.keys(written), err]).toEqual([0, [file], `${file}: written.\n`]);
    const { boat, file: read } = analysed(written[file]!);
    expect([read.isWhole, boat.units.length]).toEqual([true, length]);
  });

  it.each([
    ['reed-warbler.boat.yaml', 'Reed warbler'],
    ['ponds\\Knot.boat.yaml', 'Knot'],
    ['.boat.yaml', 'Boat'],
  ])('%s is the file of %s', (file, name) => {
    expect(analysed(run(['new', file]).written[file]!).boat.name).toBe(name);
  });

  it('takes nothing into the file that cannot be seen', () => {
    const [text] = Object.values(run(['new', 'a\u001b[31mb\u202e']).written);
    expect(text).not.toMatch(/(?!\n)[\p{Cc}\p{Bidi_Control}]/u);
    expect(analysed(text!).boat.name).toBe('a [31mb');
    expect(run(['new', 'caf\ufffd'])).toMatchObject({ code: 2, written: {}, err: expect.stringContaining('UTF-8') });
  });

  it('leaves a file of that name as it is', () => {
    const { code, written } = run(['new', 'Knot'], { 'knot.boat.yaml': 'boat: Knot' });
    expect([code, written]).toEqual([2, {}]);
  });

  it.each([
    [['new']],
    [['new', 'Knot', '--units', 'cubits']],
    [['new', 'Knot', '--json']],
    [['check', 'a', '--units', 'inches']],
  ])('%j is wrong use', args => {
    expect(run(args).code).toBe(2);
  });

  it('prints it', () => {
    expect(run(['new', 'Knot', '-o', '-']).out).toMatch(/^# Knot\..*\nboat: Knot\n/s);
  });
});
