import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tankPolygon } from '../../server/core/corrections/balance/tankPolygon.ts';
import { type PictureId, trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { allNodes, type Node, parseXml, pointsOf, withClass } from '../helpers/svg.ts';

const petrel = heard(readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8'));
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
    expect(trim).toHaveLength(transit.all().length);
    expect(fillAt(trim.at(-1)![0]) / 100).toBeCloseTo(submerged.fill, 3);
    const drafts = withClass(svg, 'tick').filter(
      ({ attributes }) =>
        attributes['text-anchor'] === 'end' && Number(attributes.y) > 180 && Number(attributes.y) < 275,
    );
    // Words of ticks stand 4 under their lines.
    const draftAt = axisOf(drafts, 'y', () => true);
    const afloat = transit.all().filter(({ draft }) => draft !== null);
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
    expect(svg.attributes['aria-label']).toContain('Surfaced it comes back from any heel; greatest righting lever');
  });
});

describe('the equilibrium polygon', () => {
  const polygon = tankPolygon(bodies)!;
  const { about, needed, together } = polygon;
  it('has what the tanks must hold for the boat to hang neutral, and the moment that trims it', () => {
    // Weight: the ballast of the neutral boat. Moment: what righting arms of B over G bring at the trim that it takes up.
    expect(needed[0]).toBeCloseTo(submerged.ballast, 9);
    const place = (submerged.fill * (together.length - 1)) % 1;
    const i = Math.floor(submerged.fill * (together.length - 1));
    const water = together[i]![1] + place * (together[i + 1]![1] - together[i]![1]);
    const displacement = bodies.density * bodies.volume;
    const bg = bodies.volumeMoment[2] / bodies.volume - submerged.centreOfMass[2];
    expect(Math.tan(submerged.trim)).toBeCloseTo((water - needed[1]) / (displacement * bg), 2);
  });
  it('fills from nothing to all that the tanks hold, about their middle', () => {
    const [tank] = petrel.boat.tanks;
    expect(about).toBeCloseTo(0.445, 6);
    expect(together[0]).toEqual([0, 0]);
    expect(together.at(-1)![0]).toBeCloseTo(tank!.capacity * bodies.density, 9);
    expect(together.at(-1)![1]).toBeCloseTo(0, 9);
  });
  it('shows the need inside of what the bays can bring, and nearer to its limits with what is proposed', () => {
    const correction = petrel.corrections.all()[0]!;
    const { pictures } = trimSheet(petrel, { only: ['polygon'], correction });
    const svg = parseXml(pictures[0]!.svg);
    const regionOf = (kind: string) =>
      pointsOf(withClass(svg, kind).find(({ children }) => children.length > 0)!.attributes.d!);
    const mark = withClass(svg, 'then-mark')[0]!.attributes.d!.match(/^M([\d.]+) ([\d.]+)/)!;
    const at = [Number(mark[1]) + 6, Number(mark[2])] as const;
    expect(isInside(at, regionOf('reach'))).toBe(true);
    expect(isInside(at, regionOf('allowed'))).toBe(true);
    const cross = withClass(svg, 'needed')[0]!.attributes.d!.match(/^M([\d.]+) ([\d.]+)/)!;
    expect(isInside([Number(cross[1]) + 5, Number(cross[2]) + 5], regionOf('allowed'))).toBe(false);
  });
  it('of two tanks goes round all their fillings', () => {
    const text = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
    const two = heard(
      text.replace(
        /^ {2}tanks:$/m,
        `$&
    - { name: trim tank, in: dry cylinder, round: 30 mm, station: 230 to 250 mm, height: 70 mm, kind: piston }`,
      ),
    );
    expect(two.boat.tanks).toHaveLength(2);
    const { each, together: shared } = tankPolygon(two.bodies)!;
    const corners = each.map(([weight, moment]) => [weight, moment] as const);
    for (const point of shared.slice(1, -1)) expect(isInside(point, corners)).toBe(true);
    expect(corners.at(-1)![0]).toBeCloseTo(0, 12);
    expect(corners.at(-1)![1]).toBeCloseTo(0, 12);
  });
  it('is not there for a boat without tanks', () => {
    expect(trimSheet(heard('boat: x'), { only: ['polygon'] }).pictures).toEqual([]);
  });
});

/** Whether a point lies in an outline, by the times a line to one side of it crosses that. */
function isInside([x, y]: readonly [number, number], outline: readonly (readonly [number, number])[]): boolean {
  let inside = false;
  outline.forEach(([x1, y1], i) => {
    const [x0, y0] = outline.at(i - 1)!;
    if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
  });
  return inside;
}

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
  const analysis = heard(boatText`
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
      // 4 uncertainties are 189 wide, from the middle at 219.
      else expect(((Number(dot!.attributes.cx) - 219) / 189) * 4).toBeCloseTo(score, 3);
      expect(row.attributes['aria-label']).toMatch(/ read .*, file says .*; ± .* and ± .*; /);
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
    expect.arrayContaining(['transit', 'righting-lever', 'polygon', 'uncertainty']),
  );
  for (const { svg } of pictures) {
    const words = allNodes(parseXml(svg))
      .filter(({ name }) => name === 'text')
      .map(({ text }) => text);
    expect(words.filter(word => /(^|\s)[-−]\d/.test(word))).toEqual([]);
  }
});
