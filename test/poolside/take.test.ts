import { describe, expect, it } from 'vitest';
import { closeTrials, enter, putAboard } from '../../client/poolside/dayLog.ts';
import { dayText, emptyDay, type PoolReading } from '../../server/core/poolside/day.ts';
import { takeTrials } from '../../server/core/poolside/take.ts';
import { splice } from '../../server/core/text/editing/edit.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { keysOf, valueAt } from '../../server/core/text/reading/values.ts';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { textLines } from '../helpers/boatText.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';
import { NOON } from './days.ts';

const heel = (size: number): PoolReading => ({ key: 'heel', station: null, size, unit: '°', way: 1 });
const mark: PoolReading = { key: 'marks', station: '60 mm', size: 80, unit: 'mm', way: null };
const piece = { name: 'lead bow', fields: [['material', 'lead'] as const, ['mass', '20 g'] as const] };

const first = closeTrials(enter(enter(emptyDay('T'), 'surfaced', heel(1), NOON), 'surfaced', mark, NOON));
const both = enter(putAboard(first, piece), 'surfaced', heel(2), { ...NOON, time: '12:20' });

const FILE = `boat: T          # the old one
trials:                # by hand
  - date: 2026-04-01   # cold
    condition: surfaced
    heel: 0.5°
limits: { heel: 1° }   # mine
`;

function taken(file: string, text: string): string {
  const taking = takeTrials(readSyntax(file), text);
  if (taking.status === 'refused') throw new Error(taking.reason);
  return splice(file, taking.splices);
}

describe('the trials of a day', () => {
  it('go below those of the file, and nothing else is touched', () => {
    expect(taken(FILE, dayText(both))).toBe(`boat: T          # the old one
trials:                # by hand
  - date: 2026-04-01   # cold
    condition: surfaced
    heel: 0.5°
  - date: 2026-05-02
    condition: surfaced
    marks: [{ station: 60 mm, height: 80 mm }]
    heel: 1°
    note: read at 12:00
  - date: 2026-05-02
    condition: surfaced
    aboard: [{ name: lead bow, material: lead, mass: 20 g }]
    heel: 2°
    note: read at 12:20
limits: { heel: 1° }   # mine
`);
  });
  it('count once, however often they are taken, and whatever layout they have there', () => {
    const once = taken(FILE, dayText(first));
    expect(taken(once, dayText(first))).toBe(once);
    expect(taken(once, dayText(both))).toBe(taken(FILE, dayText(both)));
    const relaid = once.replace(
      'marks: [{ station: 60 mm, height: 80 mm }]',
      'marks: [{ height:   80 mm, station: 60 mm }]  # well seen',
    );
    expect(taken(relaid, dayText(first))).toBe(relaid);
  });
  it('that are the same twice are two', () => {
    const twice = dayText({ ...first, closed: [...first.closed, ...first.closed] });
    const count = (text: string) => text.split('read at 12:00').length - 1;
    expect(count(taken(FILE, twice))).toBe(2);
    expect(count(taken(taken(FILE, dayText(first)), twice))).toBe(2);
  });
  it.each([
    ['a: b', '5'],
    ['- y', '5'],
    ['*z', '5'],
    ['{', '5'],
    ['"', '5'],
    ['a #b', '5'],
    ['# x', '5'],
    ['x: 1\nlimits', '{ heel: 90° }'],
    ['null', '[{ "b: c": 1 }]'],
  ])('go in whatever their keys are called, and nowhere else: %j', (key, value) => {
    const text = textLines([
      'trials:',
      '  - date: d',
      '    condition: surfaced',
      `    ${JSON.stringify(key)}: ${value}`,
    ]);
    const syntax = readSyntax(taken(FILE, text));
    expect(syntax.findings).toEqual([]);
    expect(keysOf(syntax, [])).toEqual(['boat', 'trials', 'limits']);
    expect(valueAt(syntax, ['trials', 1])).toEqual(valueAt(readSyntax(text), ['trials', 0]));
  });
  it.each([
    ['12345678901234567890', '12345678901234567890'],
    ['0123', '0123'],
    ['0x1F', '0x1F'],
    ['"null"', '"null"'],
    ['"1e3"', '"1e3"'],
    ["'it''s'", "it's"],
    ['!!binary aGk=', 'aGk='],
    ['"x\\e[2Jy\\x9b"', '"x\\u001b[2Jy\\u009b"'],
  ])('say the same of a note %s, and count once with it', (note, written) => {
    const text = textLines(['trials:', '  - date: d', `    note: ${note}`, '    place:']);
    const once = taken(FILE, text);
    expect(once).toContain(textLines(['  - date: d', `    note: ${written}`]));
    expect(once).not.toContain('place');
    expect(taken(once, text)).toBe(once);
  });
  it('make the section where there is none', () => {
    expect(taken('boat: T', dayText(first))).toContain('trials:');
  });
  it.each([
    ['of another boat', dayText({ ...first, boat: 'Other' }), FILE],
    ['that are none', 'hello', FILE],
    ['of a boat that is no name', 'boat: { toString: 1 }', FILE],
    ['that are a list of words', 'trials: [one, two]', FILE],
    ['for a file whose trials are no list', dayText(first), 'trials: none yet'],
  ])('%s are refused in words', (_, text, file) => {
    const taking = takeTrials(readSyntax(file), text);
    expect(taking).toMatchObject({ status: 'refused', reason: expect.stringMatching(/^[“A-Z].*\.$/) });
  });
});

describe('trimwright take', () => {
  const files = { 'a.boat.yaml': FILE, day: dayText(both), other: 'boat: Other' };
  const run = (...args: readonly string[]) => {
    const { world, written, said } = memoryWorld(files);
    return { code: runCommandLine(['take', ...args], world), written, ...said() };
  };
  it('shows what it would write', () => {
    const { code, out, written } = run('a.boat.yaml', 'day');
    expect([code, written]).toEqual([0, {}]);
    expect(out).toMatch(/^2 trials to take\.\n {2}- date: 2026-05-02/);
  });
  it('writes it', () => {
    expect(run('a.boat.yaml', 'day', '--write').written).toEqual({ 'a.boat.yaml': taken(FILE, dayText(both)) });
  });
  it.each([
    ['other', 1, /^other: There are no trials in this text/],
    ['nowhere', 2, /^nowhere: there is no such file or folder\.$/m],
  ])('says why not %s', (from, code, words) => {
    expect(run('a.boat.yaml', from)).toMatchObject({ code, err: expect.stringMatching(words) });
  });
});
