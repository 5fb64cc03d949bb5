import { describe, expect, test } from 'vitest';
import { LONGEST_FIGURE } from '../../schema/quantityText.ts';
import { longestLine } from '../../server/core/text/reading/bound.ts';
import { createBoatService } from '../../server/service/service.ts';
import { textLines } from '../helpers/boatText.ts';
import { MACHINE_WORDS } from '../helpers/finite.ts';
import { drawsFreely, isLong } from '../helpers/long.ts';
import { type HostileText, hostileTexts } from './hostileTexts.ts';

const service = createBoatService();
const URI = 'file:///hostile.boat.yaml';

/** Everything that an editor asks for; what is wrong with the answers. Where one never comes the test hangs. */
function* wrongWith({ text, at }: HostileText): Generator<string> {
  const analysis = service.analyse(text);
  for (const { range, message } of service.diagnostics(analysis, null)) {
    const [from, to] = [range.start, range.end];
    if (to.line < from.line || (to.line === from.line && to.character < from.character)) yield `ends early: ${message}`;
    if (MACHINE_WORDS.test(String(message).replace(/“[^”]*”/gs, ''))) yield `a machine’s word: ${message}`;
  }
  for (const place of [at, text.length]) {
    service.hover(analysis, place);
    service.completions(analysis, place);
    service.codeActions(analysis, [place, place], { uri: URI, version: null });
    service.definition(analysis, place, URI);
    service.references(analysis, place, { uri: URI, withDefinition: true });
    service.rename(analysis, place, 'new name', { uri: URI, version: null });
  }
  service.symbols(analysis);
  service.inlayHints(analysis, [0, text.length]);
  service.foldingRanges(analysis);
  service.summary(analysis);
}

describe('long runs of one thing, in every kind of place', () => {
  // `npm test` takes a few of each, the long run each in some places; in the free mode, in minutes, each in every place.
  const step = drawsFreely ? 1 : isLong ? 11 : 251;
  test('every answer comes', { timeout: 1_200_000 }, () => {
    let count = 0;
    for (const text of hostileTexts(isLong ? 18_000 : 1500, step)) {
      expect({ where: text.where, of: text.of, faults: [...wrongWith(text)] }).toMatchObject({ faults: [] });
      count += 1;
    }
    expect(count).toBeGreaterThan(30);
  });

  const most = longestLine - 200;
  /** A profile of so many points. */
  const bulge = (points: number): string =>
    Array.from({ length: points }, (_, i) => {
      const t = i / (points - 1);
      return `[${(60 * t).toFixed(2)}, ${(10 * Math.sin(Math.PI * t)).toFixed(2)}]`;
    }).join(', ');
  const lines = (line: string, count: number): readonly string[] => new Array(count).fill(line);
  test.each([
    ['blanks before a colon', textLines(['boat: T', `note:${' '.repeat(most)}\u2028x`])],
    ['notes between brackets', textLines(['payload:', `  - { name: a # ${'# '.repeat(9000)}`, '    , mass: 5 g }'])],
    ['digits before a comma', `payload: [{ name: a, mass: ${'9'.repeat(most)}a,5 g }]`],
    ['brackets before an open quote', `limits: ${'{'.repeat(90)}${'x'.repeat(most)}} "a`],
    ['ands', `hull: { length: between 5 ${'and 5 '.repeat(3000)} }`],
    ['blanks within a figure', `hull: { length: "5${' '.repeat(most)}x" }`],
    ['quotes of a letter', textLines(lines('note: “a”', 4000))],
    ['blanks before such a quote', textLines(lines(`note:${' '.repeat(12_000)}“a`, 20))],
    ['bullets', textLines(['payload:', ...lines('  • name: a', 4000)])],
    ['blank lines above a scale', textLines([...lines('', 15_000), 'hull: { length: 5 mm full size }'])],
    ['brackets that close nothing', textLines(lines(']'.repeat(40), 500))],
    ['one key twice, many times', textLines(lines('a: 1', 5000))],
    [
      'entries behind an open bracket',
      textLines(['payload: [', ...lines('  - name: a', 2000).flatMap(line => [line, '    mass: 5 g'])]),
    ],
    ['keys in one line, line after line', textLines(lines('a: a: a:', 5000))],
    [
      'parts in each other’s room',
      textLines([
        'hull: { length: 900 mm }',
        'payload:',
        ...Array.from(
          { length: 250 },
          (_, i) =>
            `  - { name: p${i}, mass: 1 g, box: 20 x 20 mm, station: ${2 * i} to ${2 * i + 60} mm, height: 5 mm }`,
        ),
      ]),
    ],
    [
      'turned parts in each other’s room',
      textLines([
        'hull: { length: 900 mm }',
        'payload:',
        ...Array.from(
          { length: 25 },
          (_, i) => `  - { name: p${i}, mass: 9 g, profile: [${bulge(500)}], height: 5 mm }`,
        ),
      ]),
    ],
    [
      'rows in each other’s room',
      textLines([
        'hull: { length: 900 mm }',
        'payload:',
        ...Array.from(
          { length: 40 },
          (_, i) =>
            `  - { name: p${i}, mass: 1 g, round: 4 mm, station: 90 to 94 mm, height: ${20 + i / 10} mm, count: 100, spacing: 5 mm }`,
        ),
      ]),
    ],
    ['keys that nobody knows', textLines(Array.from({ length: 15_000 }, (_, i) => `k${i}: 1`))],
    [
      'one thing under as many keys',
      textLines(['a: &a [1]', ...Array.from({ length: 15_000 }, (_, i) => `k${i}: *a`)]),
    ],
  ])('%s', (where, text) => {
    expect([...wrongWith({ where, of: '', text, at: text.length >> 1 })]).toEqual([]);
  });
});

test('of thousands of keys that nobody knows the first hundred are told', () => {
  const { file } = service.analyse(textLines(Array.from({ length: 300 }, (_, i) => `k${i}: 1`)));
  expect(file.findings.map(({ code }) => code)).toEqual(new Array(100).fill('unknown-key'));
});

test('the mends of a text that is out of shape all through are tried one finding at a time', () => {
  const text = textLines(['payload:', ...new Array(30).fill('  - name:a')]);
  const analysis = service.analyse(text);
  const all = [0, text.length] as const;
  let steps = 0;
  // Ends: each round is a step of work, and the work ends.
  while (!service.prepareCodeActions(analysis, all)) steps += 1;
  expect(steps).toBeGreaterThanOrEqual(30);
  expect(service.codeActions(analysis, all, { uri: URI, version: null }).length).toBeGreaterThanOrEqual(30);
});

describe('what no figure and no name is', () => {
  const long = '9'.repeat(LONGEST_FIGURE + 1);
  test.each([
    [
      'hull: { length: @ }',
      'Expected one length, e.g. 40 mm, but this has 201 characters. Is a quote or a line end missing?',
    ],
    [
      'payload: [{ name: @a, mass: 5 g }]',
      'Expected a name or text, but this has 202 characters, and 200 are room enough.',
    ],
    ['scale: "@:1"', 'Expected a name or text, but this has 203 characters, and 200 are room enough.'],
  ])('%s', (text, message) => {
    const { file } = service.analyse(text.replace('@', text.includes('length') ? `"${long}"` : long));
    expect(file.findings.map(each => each.message)).toEqual(expect.arrayContaining([message]));
  });

  test('a note may be as long as it likes', () => {
    const { file } = service.analyse(`payload: [{ name: a, mass: 5 g, note: ${'x'.repeat(5000)} }]`);
    expect(file.findings.filter(({ place }) => JSON.stringify(place).includes('note'))).toEqual([]);
  });
});

/** What JavaScript asks of a value by name, and what it keeps for itself. */
const ASKED = ['toString', 'toJSON', '__proto__'];

test.each(ASKED)('a key called %s, where a figure or a name belongs, is a finding like any other', key => {
  const odd = `{ ${key}: 30 % }`;
  const texts = [
    ...['boat', 'scale', 'water', 'units', 'hull', 'limits', 'payload', 'trials', 'bays', 'stock', 'materials', key],
    ...['hull: { length', 'hull: { a', 'hull: { shells', 'water: { a', 'limits: { trim', 'in: [{ a'],
    ...['payload: [{ name', 'payload: [{ mass', 'payload: [{ material', 'payload: [{ in', 'payload: [{ forms'],
    ...['conditions: [{ name: x, tanks', 'conditions: [{ name: x, water', 'trials: [{ condition', 'trials: [{ date'],
    ...['trials: [{ marks: [{ station', 'trials: [{ without', 'bays: [{ takes', 'stock: { lead'],
  ].map(
    before =>
      `${before}: ${odd}${before.replace(/[^[{]/g, '').split('').reverse().join('').replaceAll('[', ']').replaceAll('{', '}')}`,
  );
  for (const text of texts) {
    const whole = textLines(['boat: T', text]);
    expect([...wrongWith({ where: text, of: key, text: whole, at: whole.length - 3 })]).toEqual([]);
    const analysis = service.analyse(text);
    service.report(analysis);
    JSON.stringify([service.reportData(analysis), service.learnData(analysis)]);
    service.taken(analysis, whole);
  }
});
