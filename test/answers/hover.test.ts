import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { findMaterial } from '../../schema/materials.ts';
import { freshWaterDensity } from '../../server/core/boat/waterDensity.ts';
import { hoverAt } from '../../server/editor/answers/hover.ts';
import { heard, service } from '../helpers/analysed.ts';
import { boat, boatText } from '../helpers/boatText.ts';
import { PROBE } from '../helpers/probe.ts';

const PETREL = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
const petrel = heard(PETREL);

/** What is said at a piece of Petrel's text, a little way into it. */
function said(at: string): string {
  const offset = PETREL.indexOf(at);
  if (offset < 0) throw new Error(`Petrel has no “${at}”`);
  return hoverAt(petrel, service.describer, offset + 1)?.markdown ?? '';
}

test('what weighs nothing yet has no centre', () => {
  const text = PROBE.replace('mass: 600 g', 'mass: 0 g').replace('mass: 800 g', 'mass: 0 g');
  const hover = hoverAt(heard(text), service.describer, text.indexOf('battery') + 1);
  expect(hover?.markdown).toContain('After the list up to here: 0 g; 2800 g of reserve buoyancy left.');
});

describe('hovers in Petrel', () => {
  it.each([
    ['part', 'battery'],
    ['wetPart', 'shaft and propeller'],
    ['foamPart', 'bow foam'],
    ['waterline', 'waterline: 89'],
    ['shell', 'outer hull'],
    [
      'compartment',
      boatText`
        dry cylinder
              material`,
    ],
    ['tank', 'main ballast'],
    ['bay', 'keel aft, takes'],
    ['limits', 'limits:'],
    ['key', 'material: ABS'],
    ['section', 'payload:'],
  ])('%s', async (name, at) => {
    await expect(`${said(at)}\n`).toMatchFileSnapshot(`golden/${name}.md`);
  });
});

it('a shell of no mass, and so of no wall, is nowhere in the water', () => {
  const weightless = heard(PETREL.replace('mass: 610 g', 'mass: 0 g'));
  const offset = weightless.syntax.text.indexOf('outer hull') + 1;
  const words = hoverAt(weightless, service.describer, offset)?.markdown ?? '';
  expect(words).toContain('displaces: 0 ml');
  expect(words).not.toMatch(/Surfaced|NaN/);
});

/** Rows of the table in a hover, by their names. */
function rowsOf(markdown: string): Readonly<Record<string, readonly string[]>> {
  const rows = markdown.split('\n').filter(line => line.startsWith('| '));
  return Object.fromEntries(
    rows.map(row => {
      const [name, ...cells] = row.slice(2, -2).split(' | ');
      return [name!, cells];
    }),
  );
}
const figure = (text: string | undefined): number =>
  Number.parseFloat((text ?? '').replace(/[^\d.]*(\d[\d.\u202f]*).*/, '$1').replace(/\u202f/g, ''));

describe('figures in them, added up by hand', () => {
  it('a dry part displaces nothing: its moments are its mass times its arms', () => {
    // The battery: 318 g at 282 mm of 860, 3 mm to port.
    const rows = rowsOf(said('battery'));
    expect(rows['Weight in water']).toEqual(['318 g', '318 g']);
    expect(rows['Moment about midships']!.map(figure)).toEqual([318 * (430 - 282), 318 * (430 - 282)]);
    expect(rows['Moment about midships']![0]).toMatch(/bow down$/);
    expect(rows['Moment about the centreline']!.map(figure)).toEqual([954, 954]);
    expect(rows['Moment about the centreline']![0]).toMatch(/to port$/);
  });
  it('a wet part weighs less by the water that it pushes aside', () => {
    // 58 g of brass in water of 18 °C.
    const volume = 58 / findMaterial('brass')!.density;
    const net = 58 - volume * freshWaterDensity(18)!;
    const rows = rowsOf(said('shaft and propeller'));
    expect(figure(rows.Displaces![1])).toBeCloseTo(volume * 1e3, 1);
    expect(figure(rows['Weight in water']![1])).toBeCloseTo(net, 0);
    const moment = net * (792.5 - 430);
    expect(Math.abs(figure(rows['Moment about midships']![1]) - moment)).toBeLessThan(2);
  });
  it('a piece of foam does what the file without it has not', () => {
    const without = heard(PETREL.replace(/ {2}- name: bow foam\n(?: {4}.*\n)+/, ''));
    const rows = rowsOf(said('bow foam'));
    const [before, now] = [without.surfaced, petrel.surfaced];
    if (before.status !== 'afloat' || now.status !== 'afloat') throw new Error('both float');
    const rise = (before.attitude.draft - now.attitude.draft) * 1e3;
    expect(figure(rows['Surfaced draft']![0])).toBeCloseTo(rise, 1);
    expect(rows['Surfaced draft']![0]).toMatch(/higher$/);
    // 34 x 16 x 100 mm of foam of 30 kg/m3 lifts 54.4 ml times the difference to the water's density: so much more water
    // in a tank of π/4·64²·140 mm3. A millilitre of it, by the same.
    const lift = freshWaterDensity(18)! - 30;
    const perMl = (100 * lift) / freshWaterDensity(18)! / ((Math.PI / 4) * 6.4 ** 2 * 14);
    expect(figure(rows['Neutral fill']![0])).toBeCloseTo(54.4 * perMl, 0);
    expect(figure(rows['Neutral fill']![1])).toBeCloseTo(perMl, 1);
    expect(rows['Neutral fill']![0]).toMatch(/fuller$/);
  });
  it('the sums after the list up to a part are those of the file', () => {
    // Shells 610 + 118 g, dry cylinder 455 g, battery 318 g.
    expect(said('battery')).toContain('After the list up to here: 1501 g');
    expect(said('tank pump')).toContain('After the list up to here: 1665 g');
  });
  it('the tank holds π/4·64²·140 mm3', () => {
    expect(figure(/holds (\d+ ml)/.exec(said('main ballast'))?.[1])).toBeCloseTo((Math.PI / 4) * 6.4 ** 2 * 14, 0);
  });
  it('the dry cylinder bears π/4·84²·425 mm3 of water', () => {
    const bears = (Math.PI / 4) * 8.4 ** 2 * 42.5 * (freshWaterDensity(18)! / 1e3);
    expect(
      figure(
        /buoyed up by (\d+ g)/.exec(
          said(boatText`
            dry cylinder
                  material`),
        )?.[1],
      ),
    ).toBeCloseTo(bears, 0);
  });
  it('the bay takes as much strip as it is long', () => {
    // 90 mm of 12 x 6 mm lead of 11340 kg/m3 (from memory, D-01).
    expect(figure(/up to (\d+ g)/.exec(said('keel aft, takes'))?.[1])).toBeCloseTo(90 * 0.072 * 11.34, 0);
  });
});

describe('where a hover is', () => {
  const at = ({ text, caret }: { readonly text: string; readonly caret: number }) =>
    hoverAt(heard(text), service.describer, caret);
  it('has the path of what it is about', () => {
    expect(
      at(boat`
        boat: B
        hull:
          leng|th: 400 mm
      `),
    ).toMatchObject({ path: ['hull', 'length'] });
  });
  it.each([
    [
      'on a key: its description',
      boat`
        boat: B
        wa|ter: sea
      `,
      /^\*\*water\*\*: The water that the boat floats in\./,
    ],
    [
      'on a key in braces',
      boat`
        boat: B
        units: { len|gth: mm }
      `,
      /^\*\*length\*\*: Unit of a bare length/,
    ],
  ])('%s', (_, text, says) => expect(at(text)?.markdown).toMatch(says));
  it.each([
    [
      'on an empty line',
      boat`
        boat: B
        |
        water: sea
      `,
    ],
    [
      'in a comment',
      boat`
        boat: B
        # a n|ote
        water: sea
      `,
    ],
    [
      'on a key that nobody knows',
      boat`
        boat: B
        cr|ew: 3
      `,
    ],
    ['in an empty file', boat`|`],
  ])('nothing %s', (_, text) => expect(at(text)).toBeNull());
  it('a name from the file cannot become markup', () => {
    const { text, caret } = {
      text: PROBE.replaceAll('battery', '"[a](b) <img> *c*"'),
      caret: PROBE.indexOf('battery') + 2,
    };
    expect(at({ text, caret })?.markdown).toContain('\\[a\\]\\(b\\) \\<img\\> \\*c\\*');
  });
});
