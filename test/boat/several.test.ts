import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyCache, pieceSteps } from '../../server/core/bodies/assemble.ts';
import { placeChanges, shifted } from '../../server/core/corrections/room/shift.ts';
import { boundsOf, solidOf } from '../../server/core/geometry/cut/solids.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { analysed, fileFindings, heard, service } from '../helpers/analysed.ts';
import { probe, probeWith } from '../helpers/probe.ts';

const withLines = (...lines: readonly string[]) => analysed(probeWith(...lines));
const codes = (...lines: readonly string[]) => fileFindings(withLines(...lines)).map(({ code }) => code);
const NOTHING = { shells: [], compartments: [], tanks: [], payload: [] } as const;
const STRIP = 'material: lead, mass: 60 g, box: 12 x 6 mm';

/** Forms by what stands in a part, none of them reaching the centreline at 30 mm. */
const FORMS = [
  'box: 12 x 6 mm, station: 50 to 80 mm, height: 5 mm',
  'ball: 20 mm, station: 60 mm, height: 5 mm',
  'round: 20 to 10 mm, axis: athwart, offset: 20 to 40 mm, station: 60 mm, height: 5 mm',
  'profile: [[40, 0], [55, 9], [80, 4]], height: 5 mm',
  'sections: [{ station: 40 mm, outline: [[0, 2], [9, 6], [4, 12]] }, { station: 80 mm, outline: [[0, 4], [6, 6], [3, 10]] }]',
  'forms: [{ ball: 10 mm, station: 40 mm, offset: 30 mm, height: 5 mm }, { round: 8 mm, station: 60 to 80 mm, offset: 33 mm, height: 5 mm }]',
];

describe('a pair and a row', () => {
  it.each(FORMS)('are what as many entries are: %s', form => {
    const own = form.includes('offset') ? form : `${form}, offset: 30 mm`;
    const port = own
      .replace(/offset: (\d+) to (\d+)/, 'offset: -$2 to -$1')
      .replace(/offset: (\d+ mm)/g, 'offset: -$1')
      .replace('20 to 10 mm', '10 to 20 mm');
    const aft = (text: string, by: number) =>
      text
        .replace(/station: (\d+)(?: to (\d+))? mm/g, (_, a, b) => `station: ${+a + by}${b ? ` to ${+b + by}` : ''} mm`)
        .replace(
          /(profile: )(\[\[.*?\]\])/,
          (_, key, list: string) => key + list.replace(/\[(\d+), (\d+)\]/g, (__, s, r) => `[${+s + by}, ${r}]`),
        );
    const { boat } = withLines(`{ name: all, mass: 7 g, ${own}, sides: both, count: 3, spacing: 60 mm }`);
    const single = withLines(
      ...[0, 60, 120].flatMap((by, i) => [
        `{ name: s${i}, mass: 7 g, ${aft(own, by)} }`,
        `{ name: p${i}, mass: 7 g, ${aft(port, by)} }`,
      ]),
    ).boat;
    const all = boat.payload.filter(({ name }) => name === 'all');
    const each = single.payload.slice(2);
    expect(each).toHaveLength(6);
    const sums = (parts: typeof all) => {
      const { displacers, weights } = finish(pieceSteps({ ...NOTHING, payload: parts }, emptyCache()));
      const total = (of: (at: 0 | 1 | 2) => number) => ([0, 1, 2] as const).map(of);
      return [
        weights.reduce((sum, { mass }) => sum + mass, 0),
        displacers.reduce((sum, { body }) => sum + body.volume * 1e6, 0),
        ...total(axis => weights.reduce((sum, { mass, centroid }) => sum + mass * centroid[axis], 0)),
        ...total(axis => displacers.reduce((sum, { body }) => sum + body.moment[axis] * 1e6, 0)),
        ...total(axis => Math.min(...parts.map(part => part.from[axis]))),
        ...total(axis => Math.max(...parts.map(part => part.to[axis]))),
      ];
    };
    for (const [i, sum] of sums(all).entries()) expect(sum).toBeCloseTo(sums(each)[i]!, 9);
    expect(all[0]!.copies).toBe(6);
  });
  it('are weighed each by itself unless the entry says together', () => {
    const mass = (rest: string) =>
      withLines(
        `{ name: strip, ${STRIP}, station: 100 mm, offset: 30 mm, height: 80 mm, sides: both${rest} }`,
      ).boat.payload.at(-1)!.mass;
    expect(mass('')).toBeCloseTo(0.12, 12);
    expect(mass(', weighed: each')).toBeCloseTo(0.12, 12);
    expect(mass(', weighed: together')).toBeCloseTo(0.06, 12);
  });
  it.each([
    ['a pair on the centreline', 'sides: both', ['pair-overlaps']],
    ['a pair across it', 'sides: both, offset: 4 mm', ['pair-overlaps']],
    ['a count without spacing', 'count: 3, offset: 30 mm', ['row-incomplete']],
    ['spacing without a count', 'spacing: 30 mm, offset: 30 mm', ['row-incomplete']],
    ['too near together', 'count: 3, spacing: 30 mm, offset: 30 mm', ['row-overlaps']],
    ['apart', 'count: 3, spacing: 80 mm, offset: 30 mm, sides: both', []],
  ] as const)('%s', (_, rest, told) => {
    expect(
      codes(
        `{ name: strip, mass: 41 g, material: lead, box: 12 x 6 mm, station: 50 to 100 mm, height: 80 mm, ${rest} }`,
      ),
    ).toEqual(told);
  });
});

describe('saddle tanks', () => {
  const saddle = (rest: string) =>
    probe([
      `station: 90 to 310 mm
      offset: -45 to 45 mm
      height: 5 to 55 mm
      kind: bladder`,
      `station: 90 to 310 mm
      offset: 5 to 45 mm
      height: 5 to 55 mm
      ${rest}`,
    ]);
  it('keep their water apart: two free surfaces, each about its own middle', () => {
    const paired = analysed(
      saddle(`kind: vented
      sides: both`),
    );
    const [body] = paired.bodies.tanks;
    expect(body!.cells.map(({ volume }) => volume * 1e6)).toEqual([440, 440].map(ml => expect.closeTo(ml, 6)));
    expect(paired.boat.tanks[0]!.capacity * 1e6).toBeCloseTo(880, 6);
    // Free surface of two of b = 40 mm, 220 mm long: i = 2·l·b³/12; neutral at 800 g of 2800 g aboard.
    const { submerged } = paired;
    if (submerged.status !== 'neutral') throw new Error('it hangs');
    const taken = (2 * 0.22 * 0.04 ** 3) / 12 / 2.8e-3;
    expect(submerged.bg - submerged.bgEffective).toBeCloseTo(taken, 6);
  });
  it('hold each what the jug says, in cells of each', () => {
    const { bodies } = analysed(
      saddle(`kind: vented
      sides: both
      cells: 2
      capacity: 430 ml`),
    );
    expect(bodies.tanks[0]!.cells).toHaveLength(4);
    expect(bodies.tanks[0]!.whole.volume * 1e6).toBeCloseTo(860, 6);
  });
  it('are said to be two', () => {
    const analysis = analysed(
      saddle(`kind: vented
      sides: both`),
    );
    const hover = service.hover(analysis, analysis.syntax.text.indexOf('main tank'))!.contents as { value: string };
    expect(hover.value).toContain('2 x main tank');
    expect(service.report(analysis)).toContain('2 x main tank');
  });
});

describe('moved', () => {
  it('a row goes as one, and its station is that of the foremost', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -40, max: 40 }).filter(by => by !== 0),
        fc.boolean(),
        (by, asRange) => {
          const station = asRange ? '60 to 80 mm' : '70 mm';
          const analysis = withLines(
            `{ name: cells, mass: 40 g, box: 20 x 20 mm, station: ${station}, offset: 20 mm, height: 20 mm, in: hold, count: 3, spacing: 50 mm, sides: both }`,
          );
          const { boat, syntax } = analysis;
          const part = boat.payload.at(-1)!;
          const changes = placeChanges(part, shifted(part, by / 1000, 0), boat.units);
          const again = analysed(splice(syntax.text, applyChanges(syntax, changes)!)).boat.payload.at(-1)!;
          for (const axis of [0, 1, 2] as const) {
            expect(again.from[axis]).toBeCloseTo(part.from[axis] + (axis === 0 ? by / 1000 : 0), 9);
            expect(again.to[axis]).toBeCloseTo(part.to[axis] + (axis === 0 ? by / 1000 : 0), 9);
          }
        },
      ),
      { numRuns: 15 },
    );
  });
});

describe('uncertain', () => {
  it('a pair lies aside as a whole, and weighs more by twice the scale’s slip', () => {
    const { source } = heard(
      probeWith(
        '{ name: strip, mass: 60 g ± 1 g, box: 12 x 6 mm, station: 50 to 80 mm, offset: 30 mm ± 1 mm, height: 20 mm, in: hold, sides: both }',
      ),
    );
    const inputs = inputsOf(source).filter(({ entryName }) => entryName === 'strip');
    const changed = (noun: string) => {
      const input = inputs.find(each => each.noun === noun)!;
      return withInputs(source, new Map([[input, input.value + input.sigma]])).payload.at(-1)!;
    };
    expect(changed('mass').mass).toBeCloseTo(0.122, 9);
    expect(changed('offset').centroid[1]).toBeCloseTo(0.001, 9);
    const { from, to } = changed('offset');
    expect([from[1], to[1]]).toEqual([expect.closeTo(-0.035, 9), expect.closeTo(0.037, 9)]);
  });
});

describe('a shell or compartment in pairs', () => {
  it('displaces to both sides and balances on the centreline', () => {
    const { boat } = analysed(
      probe([
        'compartments:',
        `shells:
    - { name: fairing, mass: 20 g, material: ABS, round: 30 mm, station: 50 to 150 mm, offset: 80 mm, height: 20 mm, sides: both }
  compartments:
    - { name: float, mass: 30 g, round: 30 mm, station: 50 to 150 mm, offset: 100 mm, height: 60 mm, sides: both }`,
      ]),
    );
    const [float] = boat.compartments;
    expect(float!.mass).toBeCloseTo(0.06, 12);
    expect(float!.volume * 1e6).toBeCloseTo(2 * Math.PI * 1.5 ** 2 * 10, 6);
    expect(float!.centroid[1]).toBe(0);
    expect(solidOf(float!.form).moment[1]).toBeCloseTo(0, 12);
    expect(boundsOf(boat.shells[0]!.form).from[1]).toBeCloseTo(-0.095, 9);
  });
});
