import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { trimMoments } from '../../server/core/drawing/plots/momentsPlot.ts';
import { type PictureId, trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { allNodes, type Node, parseXml, pointsOf, withClass } from '../helpers/svg.ts';

const petrel = analysed(readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8'));
const drawn = (id: PictureId) => parseXml(trimSheet(petrel, { only: [id] }).pictures[0]!.svg);
const { submerged, surfaced, bodies, transit } = petrel;
if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') throw new Error('expected to float and to hang');

/** The scale of an axis from two of its ticks: numbers beside their places. */
function axisOf(ticks: readonly Node[], key: 'x' | 'y', isRight: (node: Node) => boolean) {
  const marks = ticks
    .filter(isRight)
    .map(node => [Number(node.text.replace(/[^\d.]/g, '')), Number(node.attributes[key])] as const);
  const [a, b] = [marks[0]!, marks.at(-1)!];
  return (at: number) => a[0] + ((at - a[1]) * (b[0] - a[0])) / (b[1] - a[1]);
}

const isAcross = ({ attributes }: Node) => attributes['text-anchor'] === 'middle';

describe('the plot of the way down', () => {
  const svg = drawn('transit');
  const curves = withClass(svg, 'curve').filter(({ children }) => children[0]?.name === 'title');
  it('has a curve for trim, heel, draft and metacentric height', () => {
    expect(curves.map(({ text }) => text)).toEqual(['trim', 'heel', 'draft', 'metacentric height']);
  });
  it('ends at the neutral fill, and its drafts are those of the transit', () => {
    const fillAt = axisOf(withClass(svg, 'tick'), 'x', isAcross);
    const trim = pointsOf(curves[0]!.attributes.d!);
    expect(trim).toHaveLength(transit.length);
    expect(fillAt(trim.at(-1)![0]) / 100).toBeCloseTo(submerged.fill, 3);
    const drafts = withClass(svg, 'tick').filter(
      ({ attributes }) =>
        attributes['text-anchor'] === 'end' && Number(attributes.y) > 180 && Number(attributes.y) < 275,
    );
    // Words of ticks stand 4 under their lines.
    const draftAt = axisOf(drafts, 'y', () => true);
    const afloat = transit.filter(({ draft }) => draft !== null);
    pointsOf(curves[2]!.attributes.d!).forEach(([, y], i) => {
      expect(draftAt(y + 4) / 1000).toBeCloseTo(afloat[i]!.draft!, 4);
    });
  });
  it('shades what is out of the limits', () => {
    expect(withClass(svg, 'out').length).toBeGreaterThanOrEqual(3);
  });
});

describe('the plot of righting levers', () => {
  const svg = drawn('righting-lever');
  it('crosses nothing at the heel that the boat floats at, and is said in words', () => {
    const heelAt = axisOf(withClass(svg, 'tick').filter(isAcross).slice(4), 'x', () => true);
    const zero = pointsOf(withClass(svg, 'zero').at(-1)!.attributes.d!)[0]![1];
    const points = pointsOf(withClass(svg, 'curve', 'one')[0]!.attributes.d!);
    const i = points.findIndex(([, y], k) => k > 0 && points[k - 1]![1] > zero && y <= zero);
    const [a, b] = [points[i - 1]!, points[i]!];
    const heel = heelAt(a[0] + ((zero - a[1]) * (b[0] - a[0])) / (b[1] - a[1]));
    expect(Math.abs((heel * Math.PI) / 180 - surfaced.attitude.heel)).toBeLessThan(0.005);
    expect(svg.attributes['aria-label']).toContain('Surfaced it comes back from any heel; greatest lever');
  });
});

describe('what makes the trim', () => {
  it('adds up to the moment that holds the boat at its trim', () => {
    const sum = trimMoments(petrel).reduce((total, { moment }) => total + moment, 0);
    // Held level: the moment is what righting arms of B over G bring at the trim that it takes up.
    const bg = bodies.volumeMoment[2] / bodies.volume - submerged.centreOfMass[2];
    const displacement = bodies.density * bodies.volume;
    expect(Math.tan(submerged.trim)).toBeCloseTo(sum / (displacement * bg), 2);
  });
  it('has the largest first, each with its entry and its side', () => {
    const bars = withClass(drawn('trim-moments'), 'entry-moment');
    const sizes = trimMoments(petrel).map(({ moment }) => Math.abs(moment));
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    expect(bars).toHaveLength(sizes.length);
    // The battery is forward of midships, 318 g at 282 of 860 mm, dry: 318 x (430 - 282) g·mm.
    expect(bars[0]!.attributes['aria-label']).toBe(`battery: ${'47\u202f064'} g·mm bow down`);
    expect(bars[0]!.attributes['data-path']).toBe('["payload",0]');
  });
});

describe('what the bays can bring', () => {
  it('shows the needed point inside the set when it is within reach', () => {
    const svg = drawn('reach');
    const polygon = pointsOf(withClass(svg, 'reach').find(({ children }) => children.length > 0)!.attributes.d!);
    const cross = withClass(svg, 'needed')[0]!.attributes.d!.match(/^M([\d.]+) ([\d.]+)/)!;
    const [x, y] = [Number(cross[1]) + 5, Number(cross[2]) + 5];
    let inside = false;
    polygon.forEach(([x1, y1], i) => {
      const [x0, y0] = polygon.at(i - 1)!;
      if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
    });
    expect(inside).toBe(true);
    expect(svg.attributes['aria-label']).toContain('within reach');
  });
  it('says of a boat within its limits that nothing more is wanted of the bays', () => {
    // Floats a hair deep, and its bays take lead only: what is needed lies outside the set, but by less than the limits.
    const curlew = analysed(readFileSync(new URL('../../samples/curlew.boat.yaml', import.meta.url), 'utf8'));
    const { description } = trimSheet(curlew, { only: ['reach'] }).pictures[0]!;
    expect(description).toMatch(/^Surfaced: needed .* of lift and .*, near enough for the limits\./);
  });
});

describe('how well it is known', () => {
  it('has bars as long as the shares, which add up', () => {
    const svg = drawn('uncertainty');
    for (const group of withClass(svg, 'uncertainty')) {
      const widths = withClass(group, 'bar').map(({ attributes }) => Number(attributes.width));
      // All of it is 138 wide: from 236 to 374.
      expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(138, 1);
    }
    const { shares } = petrel.uncertainties!.conditions.surfaced!.draft!;
    const [first] = withClass(svg, 'share');
    expect(first!.attributes['aria-label']).toContain(shares[0]!.input.words);
    expect(Number(withClass(first!, 'bar')[0]!.attributes.width) / 138).toBeCloseTo(shares[0]!.share, 3);
  });
});

describe('trials against the file', () => {
  const curlew = readFileSync(new URL('../../samples/curlew.boat.yaml', import.meta.url), 'utf8');
  const afloat =
    '    marks: [{ station: 60 mm, height: 94 mm }, { station: 850 mm, height: 81 mm }, { station: 450 mm, height: 30 mm }]';
  const trials = boatText`
    trials:
      - date: 2026-05-02
        condition: surfaced
    ${afloat}
      - condition: submerged
        fill: 66 %
        trim: 2.5°
  `;
  const analysis = analysed(boatText`
    ${curlew}
    ${trials}`);
  const { pictures } = trimSheet(analysis, { only: ['trials'] });
  it('has a dot for every reading, as far out as its score, and an arrow past the edge', () => {
    const rows = withClass(parseXml(pictures[0]!.svg), 'reading');
    const compared = analysis.learned!.comparisons.flatMap(({ readings }) => readings);
    expect(rows).toHaveLength(5);
    rows.forEach((row, i) => {
      const { score } = compared[i]!;
      const dot = allNodes(row).find(({ name }) => name === 'circle');
      if (Math.abs(score) > 4) expect(dot).toBeUndefined();
      // 4 uncertainties are 85 wide, from the middle at 323.
      else expect(((Number(dot!.attributes.cx) - 323) / 85) * 4).toBeCloseTo(score, 3);
      expect(row.attributes['aria-label']).toMatch(/: read .* ± .*, file says .* ± .*; /);
    });
    expect(compared.filter(({ score }) => Math.abs(score) > 4)).toHaveLength(1);
  });
  it('says how many differ', () => {
    const scores = analysis.learned!.comparisons.flatMap(({ readings }) =>
      readings.map(({ score }) => Math.abs(score)),
    );
    const differing = scores.filter(score => score > 2).length;
    expect(pictures[0]!.description).toBe(`${differing} of 5 readings differ from what the file says.`);
  });
  it('is not there for a file without trials', () => {
    expect(trimSheet(petrel, { only: ['trials'] }).pictures).toEqual([]);
  });
});

it('figures have units, words and no bare signs', () => {
  const { pictures } = trimSheet(petrel);
  expect(pictures.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['transit', 'righting-lever', 'trim-moments', 'reach', 'uncertainty']),
  );
  for (const { svg } of pictures) {
    const words = allNodes(parseXml(svg))
      .filter(({ name }) => name === 'text')
      .map(({ text }) => text);
    expect(words.filter(word => /(^|\s)[-−]\d/.test(word))).toEqual([]);
  }
});
