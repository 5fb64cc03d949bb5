import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Picture } from '../../server/core/drawing/picture.ts';
import { PICTURES, trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { heard } from '../helpers/analysed.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText } from '../helpers/boatText.ts';
import { allNodes, parseXml, withClass } from '../helpers/svg.ts';

const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');

const AHEAD = `
hull:
  waterline: { bow: 40 mm, stern: 50 mm }
  compartments:
    - { name: a, mass: 1 g, round: 40 mm, station: -60 to 0 mm, height: 40 mm }
`;

const FOREIGN = ['script', 'style', 'image', 'use', 'a', 'foreignObject'];
/** Attributes whose value is the file's own text. */
const WORDS = ['aria-label', 'data-path', 'xmlns'];

/** What is wrong with a picture: everything a browser would fetch, run or not understand. */
function faultsOf({ svg, title }: Picture, ids: Set<string>): readonly string[] {
  const nodes = allNodes(parseXml(svg));
  const faults: string[] = [];
  if (nodes[0]!.name !== 'svg' || !nodes[0]!.attributes['aria-label']!.startsWith(title)) faults.push('no head');
  if (/NaN|Infinity|undefined|\[object/.test(svg)) faults.push('no number');
  for (const { name, attributes } of nodes) {
    if (FOREIGN.includes(name)) faults.push(name);
    for (const [key, value] of Object.entries(attributes)) {
      if (/^on|^style$|href/.test(key)) faults.push(key);
      if (!WORDS.includes(key) && /https?:|url\(/.test(value)) faults.push(value);
      if (key === 'id' && ids.has(value)) faults.push(`${value} is there twice`);
      if (key === 'id') ids.add(value);
    }
  }
  return faults;
}

/** With `whole` everything there is, and else what is quickly drawn. */
function checkSheet(text: string, whole = false): void {
  const analysis = heard(text);
  const { pictures } = trimSheet(
    analysis,
    whole
      ? { correction: analysis.corrections.all()[0] ?? null }
      : { only: PICTURES.filter(id => id !== 'uncertainty') },
  );
  // Of nothing one picture says what is missing.
  const isBlank = pictures[0]!.svg.includes('There is nothing to draw yet.');
  expect(pictures.length).toBeGreaterThanOrEqual(isBlank ? 1 : 6);
  const ids = new Set<string>();
  expect(pictures.flatMap(picture => faultsOf(picture, ids))).toEqual([]);
}

/** Many boats, on a machine that may be busy. */
const LONG = { timeout: 60_000 };

describe('any boat is drawn', () => {
  it.each([
    ['nothing', ''],
    ['only a name', 'boat: X'],
    [
      'a list',
      boatText`
        - 1
        - 2
      `,
    ],
    [
      'a hull without anything',
      boatText`
        boat: X
        hull:
          length: 900 mm
      `,
    ],
    [
      'one part',
      boatText`
        boat: X
        payload:
          - { name: a, mass: 10 g, station: 5 mm, height: 1 mm }
      `,
    ],
    ['no length', petrel.replace('length: 860 mm', '')],
    [
      'no length, and nothing aft of the bow tip',
      petrel.replace('length: 860 mm', '').replace(/station: (\d+) to (\d+)/g, 'station: -$2 to -$1'),
    ],
    ['no length, and a slanting waterline before it', AHEAD],
    ['a boat that sinks', petrel.replace('mass: 690 g', 'mass: 2690 g')],
    ['a boat that cannot dive', petrel.replace('mass: 690 g', 'mass: 190 g')],
    ['a boat that turns over', petrel.replace('height: 3 to 9 mm', 'height: 190 to 196 mm')],
    ['a boat on its end', petrel.replace('station: 190 to 620 mm', 'station: 1 to 101 mm')],
    [
      'lead far off the centreline',
      petrel.replace(
        boatText`
          material: lead
              mass: 690 g`,
        boatText`
          material: lead
              mass: 690 g
              offset: 300 mm`,
      ),
    ],
  ])('%s', (_, text) => {
    checkSheet(text, true);
  });

  it('however much of the file is typed', LONG, () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: petrel.length }), length => checkSheet(petrel.slice(0, length))),
      { numRuns: 8 },
    );
  });

  it('whatever its entries are called', LONG, () => {
    const hostile = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.constantFrom(
        '<script>alert(1)</script>',
        '"\' onload="x',
        '&amp;&#0;]]>',
        '🦆‮x',
        '--><svg',
        'a'.repeat(300),
        '\u0000\u0008\ud800',
      ),
    );
    fc.assert(
      fc.property(hostile, hostile, (one, other) => {
        const text = petrel
          .replaceAll('dry cylinder', JSON.stringify(one))
          .replace('name: battery', `name: ${JSON.stringify(other)}`)
          .replace('boat: Petrel', `boat: ${JSON.stringify(other)}`);
        checkSheet(text);
      }),
      { numRuns: 8 },
    );
  });

  it('shows a name as it is written, and not as markup', () => {
    const name = `<b>"lead" & 'foam'</b>`;
    const { pictures } = trimSheet(heard(petrel.replace('name: battery', `name: ${JSON.stringify(name)}`)));
    const titles = withClass(parseXml(pictures[0]!.svg), 'entry').map(({ children }) => children[0]!.text);
    expect(titles.some(words => words.startsWith(`${name}: 318 g`))).toBe(true);
  });

  it('of any size and kind', LONG, () => {
    fc.assert(
      fc.property(arbitrarySub({ offset: 8 }), sub => checkSheet(subText(sub), true)),
      { numRuns: 8 },
    );
  });
});
