import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pageFor } from '../../server/core/drawing/page.ts';
import { textWidth } from '../../server/core/drawing/textWidth.ts';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { heard } from '../helpers/analysed.ts';
import { allNodes, type Node, parseXml, withClass } from '../helpers/svg.ts';

const text = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');
const petrel = heard(text('petrel'));
const [correction] = petrel.corrections.all();

/** As in the style sheet: the sizes that differ from that of labels, px. */
const SIZES: Readonly<Record<string, number>> = {
  caption: 16,
  note: 13,
  'key-words': 12,
  'tape-words': 12,
  tick: 12,
  'axis-words': 13,
  'end-words': 12,
  'reading-name': 12,
};

/** From where to where a text runs, user units; type is mostly narrower than `textWidth` has it. */
function stretchOf({ attributes, text: words }: Node): readonly [number, number] {
  const size = Object.entries(SIZES).find(([name]) => attributes.class?.split(' ').includes(name))?.[1] ?? 14;
  const long = 0.9 * textWidth(words, size);
  const x = Number(attributes.x);
  const anchor = attributes['text-anchor'];
  return anchor === 'end' ? [x - long, x] : anchor === 'middle' ? [x - long / 2, x + long / 2] : [x, x + long];
}

describe.each([320, 480, 700, 880, 1500])('on a page of %i px', width => {
  const page = pageFor(width, 'few');
  const { pictures } = trimSheet(petrel, { correction: correction!, page });

  it('every picture is as wide as its share of the page, within the step', () => {
    const columns = width >= 1400 ? 2 : 1;
    const halves = width >= 700 ? 2 : 1;
    for (const { svg, id } of pictures) {
      const drawn = Number(parseXml(svg).attributes.viewBox!.split(' ')[2]);
      const room = width / columns / (/side|plan/.test(id) ? 1 : halves);
      expect(room - drawn).toBeLessThan(20);
      expect(drawn).toBeLessThanOrEqual(room);
    }
  });
  it('no text runs out of its picture', () => {
    for (const { svg, id } of pictures) {
      const root = parseXml(svg);
      const [, , wide] = root.attributes.viewBox!.split(' ').map(Number) as [number, number, number, number];
      const cropped = allNodes(root)
        .filter(({ name, text: words }) => name === 'text' && words !== '')
        .filter(node => stretchOf(node)[0] < -1 || stretchOf(node)[1] > wide + 1)
        .map(({ text: words }) => `${id}: ${words}`);
      expect(cropped).toEqual([]);
    }
  });
});

describe('names', () => {
  const labelsOf = (names: 'few' | 'all') =>
    withClass(
      parseXml(
        trimSheet(petrel, { only: ['submerged-side'], correction: correction!, page: { ...pageFor(880, names) } })
          .pictures[0]!.svg,
      ),
      'label',
    ).map(({ text: words }) => words);
  it('are those of what matters: proposed, heaviest, tanks', () => {
    expect(labelsOf('few').sort()).toEqual(
      ['lead tube floor', 'main ballast', 'battery', 'keel lead', 'tank pump and valves'].sort(),
    );
  });
  it('or all of them', () => {
    const { shells, compartments, tanks, payload, bays } = petrel.boat;
    const built = shells.length + compartments.length + tanks.length + payload.length + bays.length;
    expect(labelsOf('all')).toHaveLength(built + correction!.pieces.length);
  });
  it('are those of parts that a finding points at', () => {
    const outside = heard(text('petrel').replace('station: 560 mm', 'station: 700 mm'));
    expect(outside.findings.some(({ place }) => place.on !== 'text' && place.path[1] === 2)).toBe(true);
    const { svg } = trimSheet(outside, { only: ['surfaced-side'], page: pageFor(880, 'few') }).pictures[0]!;
    expect(withClass(parseXml(svg), 'label').map(({ text: words }) => words)).toContain('radio and servos');
  });
});

describe('legends', () => {
  it.each(['petrel', 'curlew', 'sprat', 'dunlin'])('of %s list what is drawn and only that', name => {
    const analysis = heard(text(name));
    const kinds = ['lead', 'foam', 'part', 'bay', 'tank', 'shell', 'compartment'];
    const words = {
      lead: 'lead',
      foam: 'foam',
      part: 'equipment',
      bay: 'bay',
      tank: 'tank',
      shell: 'free-flooding hull',
      compartment: 'dry compartment',
    } as Readonly<Record<string, string>>;
    const only = ['surfaced-side', 'submerged-side', 'surfaced-section', 'submerged-plan'] as const;
    for (const { svg } of trimSheet(analysis, { only }).pictures) {
      const root = parseXml(svg);
      const drawn = kinds.filter(kind => withClass(root, 'entry', kind).length > 0).map(kind => words[kind]);
      const listed = withClass(withClass(root, 'legend')[0]!, 'key-words').map(({ text: said }) => said);
      expect(listed.filter(said => Object.values(words).includes(said)).sort()).toEqual(drawn.sort());
    }
  });
});

describe('centres that are close', () => {
  it('are enlarged with the distance between them, and their signs do not overprint', () => {
    const { submerged } = petrel;
    if (submerged.status !== 'neutral') throw new Error('expected to hang');
    const { svg } = trimSheet(petrel, { only: ['submerged-side'] }).pictures[0]!;
    const root = parseXml(svg);
    const inset = withClass(root, 'centres-inset')[0]!;
    expect(inset.text).toContain('B from G:');
    expect(inset.text).toContain(`${Math.round(submerged.bg * 1000)} mm above`);
    // In the picture itself they are dots.
    for (const name of ['mark-B', 'mark-G']) {
      const [mark] = withClass(root, name);
      expect(
        allNodes(mark!)
          .filter(({ name: kind }) => kind === 'circle')
          .map(({ attributes }) => attributes.r),
      ).toEqual(['2']);
    }
  });
});

describe('a boat file that says little', () => {
  it.each([
    ['nothing', '', ['“length”', '“compartments”', '“payload:”']],
    ['a length', 'hull: { length: 900 mm }', ['“compartments”', '“payload:”']],
  ])('%s has pictures that say what is missing', (_, file, missing) => {
    for (const { svg, description } of trimSheet(heard(file)).pictures) {
      const root = parseXml(svg);
      expect(withClass(root, 'tape')).toEqual([]);
      expect(withClass(root, 'axis')).toEqual([]);
      for (const words of missing) {
        expect(root.text).toContain(words);
        expect(description).toContain(words);
      }
    }
  });
});
