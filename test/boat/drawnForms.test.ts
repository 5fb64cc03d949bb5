import { describe, expect, it } from 'vitest';
import type { Finding } from '../../server/core/findings/finding.ts';
import { boundsOf, solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { expectClose, ROUNDING } from '../geometry/helpers/close.ts';
import { analysed, fileFindings, marked, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';

/** A boat of one compartment or shell, written by its keys. */
const boat = (list: string, keys: string): string => `boat: Sketch
hull:
  length: 400 mm
  ${list}:
    - name: hull
      mass: 200 g
      material: fibreglass
${keys.replace(/^/gm, '      ')}
`;

const SECTIONS = `sections:
  - { station: 0 mm, outline: [[0, 40]] }
  - { station: 100 mm, outline: [[0, 0], [30, 0], [30, 40]] }
  - { station: 300 mm, outline: [[0, 0], [30, 0], [30, 40]] }
  - { station: 400 mm, outline: [[0, 0], [0, 0], [0, 40]] }`;

const said = (findings: readonly Finding[]) => findings.map(({ code, severity }) => `${severity} ${code}`);

describe('a table of offsets', () => {
  it('is a compartment', () => {
    const analysis = analysed(boat('compartments', SECTIONS));
    expect(fileFindings(analysis)).toEqual([]);
    const [hull] = analysis.boat.compartments;
    // In mm3: a middle of 200 x 60 x 40, before it a pyramid on 60 x 40 and behind it a wedge, each 100 long.
    expectClose(hull!.volume, (480_000 + 80_000 + 120_000) * 1e-9, ROUNDING);
    expect(boundsOf(hull!.form)).toEqual({ from: [0, -0.03, 0], to: [0.4, 0.03, 0.04] });
    expectClose(hull!.centroid[1], 0, 1, 1e-15);
  });

  it('is a shell, with its deck and ends or without', () => {
    const box = boatText`
      sections:
        - { station: 0, outline: [[30, 0], [30, 40]] }
        - { station: 400, outline: [[30, 0], [30, 40]] }`;
    const areaOf = (keys: string): number => {
      const analysis = analysed(boat('shells', keys));
      expect(fileFindings(analysis)).toEqual([]);
      const [shell] = analysis.boat.shells;
      return wallOf(shell!.form, { endsClosed: shell!.endsClosed }).area;
    };
    // 400 x 60 x 40 mm: six sides, or bottom and two flanks.
    expectClose(areaOf(box), 2 * (0.4 * 0.06 + 0.4 * 0.04 + 0.06 * 0.04), ROUNDING);
    expectClose(
      areaOf(boatText`
        ${box}
        ends: open`),
      0.4 * 0.06 + 2 * 0.4 * 0.04,
      ROUNDING,
    );
  });

  it('is put aside by an offset', () => {
    const analysis = analysed(
      boat(
        'compartments',
        boatText`
          ${SECTIONS}
          offset: 50 mm`,
      ),
    );
    const { from, to } = boundsOf(analysis.boat.compartments[0]!.form);
    expectClose(from[1], 0.02, ROUNDING);
    expectClose(to[1], 0.08, ROUNDING);
    expectClose(analysis.boat.compartments[0]!.centroid[1], 0.05, ROUNDING);
  });

  it.each([
    {
      slip: 'stations that fall',
      from: 'station: 300 mm',
      to: 'station: 90 mm',
      code: 'sections-order',
      marks: '90 mm',
      says: 'section 3 does not lie aft of the one before it',
    },
    {
      slip: 'a station twice',
      from: 'station: 300 mm',
      to: 'station: 100 mm',
      code: 'sections-order',
      marks: '100 mm',
      says: 'a tenth of a millimetre apart',
    },
    {
      slip: 'a negative half-breadth',
      from: '300 mm, outline: [[0, 0], [30, 0]',
      to: '300 mm, outline: [[0, 0], [-30, 0]',
      code: 'sections-outline',
      marks: '-30',
      says: 'measured from the centreline outward',
    },
    {
      slip: 'an outline that crosses itself',
      from: '100 mm, outline: [[0, 0], [30, 0], [30, 40]]',
      to: '100 mm, outline: [[0, 0], [30, 40], [30, 0], [10, 40]]',
      code: 'sections-outline',
      marks: '[10, 40]',
      says: 'The outline of section 2 crosses itself: the line from point 1 to 2 meets the line from point 3 to 4',
    },
    {
      slip: 'an outline from deck to keel',
      from: '300 mm, outline: [[0, 0], [30, 0], [30, 40]]',
      to: '300 mm, outline: [[30, 40], [30, 0], [0, 0]]',
      code: 'sections-outline',
      marks: '[[30, 40], [30, 0], [0, 0]]',
      says: 'The outline of section 3 runs from deck to keel',
    },
    {
      slip: 'a pair of three',
      from: '[0, 0], [0, 0], [0, 40]]',
      to: '[0, 0, 1], [0, 0], [0, 40]]',
      code: 'wrong-value',
      marks: '[0, 0, 1]',
      says: '[half-breadth, height] pair',
    },
    { slip: 'a wrong unit', from: '[[0, 40]]', to: '[[0, 40 g]]', code: 'wrong-quantity', marks: 'g', says: '' },
  ])('$slip', ({ from, to, code, marks, says }) => {
    const text = boat('compartments', SECTIONS).replace(from, to);
    expect(text).toContain(to);
    const analysis = analysed(text);
    const findings = fileFindings(analysis);
    expect(said(findings)).toEqual([`error ${code}`]);
    expect(marked(analysis, findings[0]!)).toContain(marks);
    expect(findings[0]!.message).toContain(says);
    expect(analysis.boat.leftOut).toEqual(['hull']);
  });

  it('of one section, and of sections without breadth, is none', () => {
    const one = boatText`
      sections:
        - { station: 0, outline: [[30, 0], [30, 40]] }`;
    expect(said(fileFindings(analysed(boat('compartments', one))))).toEqual(['error wrong-value']);
    const flat = boatText`
      sections:
        - { station: 0, outline: [[0, 0], [0, 40]] }
        - { station: 9, outline: [[0, 0], [0, 40]] }`;
    expect(said(fileFindings(analysed(boat('compartments', flat))))).toEqual(['error sections-outline']);
  });

  it('has no use for a station and a height of its own', () => {
    const analysis = analysed(
      boat(
        'compartments',
        boatText`
          ${SECTIONS}
          station: 20 mm`,
      ),
    );
    expect(said(fileFindings(analysis))).toEqual(['warning key-without-use']);
    expect(analysis.boat.compartments).toHaveLength(1);
  });
});

describe('several forms as one', () => {
  const tube = '  - { round: 60 mm, station: 100 to 300 mm, height: 30 mm }';

  it('sums them up', () => {
    const analysis = analysed(
      boat(
        'compartments',
        boatText`
          forms:
          ${tube}
            - { round: 20 to 60 mm, station: 40 to 100 mm, height: 30 mm }
            - { volume: 10 ml, station: 350 mm, height: 30 mm }`,
      ),
    );
    expect(fileFindings(analysis)).toEqual([]);
    const [hull] = analysis.boat.compartments;
    const expected = Math.PI * (0.03 ** 2 * 0.2 + (0.06 * (0.01 ** 2 + 0.01 * 0.03 + 0.03 ** 2)) / 3) + 10e-6;
    expectClose(hull!.volume, expected, ROUNDING);
    expectClose(solidOf(hull!.form).volume, expected, ROUNDING);
    expectClose(boundsOf(hull!.form).from[0], 0.04, ROUNDING);
  });

  it('tells two that overlap, on the second', () => {
    const analysis = analysed(
      boat(
        'compartments',
        boatText`
          forms:
          ${tube}
            - { round: 60 mm, station: 290 to 350 mm, height: 30 mm }`,
      ),
    );
    const [overlap] = fileFindings(analysis);
    expect(said(fileFindings(analysis))).toEqual(['warning forms-overlap']);
    expect(overlap!.message).toContain('Forms 1 and 2 of this overlap by 10 mm');
    expect(overlap!.place).toMatchObject({ path: ['hull', 'compartments', 0, 'forms', 1] });
  });

  it('tells what one of them lacks, there', () => {
    const analysis = analysed(
      boat(
        'compartments',
        boatText`
          forms:
          ${tube}
            - { round: 60 mm, station: 320 mm, height: 30 mm }`,
      ),
    );
    const [finding] = fileFindings(analysis);
    expect(finding).toMatchObject({
      code: 'length-unknown',
      place: { path: ['hull', 'compartments', 0, 'forms', 1, 'station'] },
    });
  });

  it.each([
    [
      'a form beside them',
      boatText`
        round: 30 mm
        forms:
        ${tube}`,
      'error two-forms',
    ],
    [
      'a place beside them',
      boatText`
        station: 30 mm
        forms:
        ${tube}`,
      'warning key-without-use',
    ],
    ['none at all', 'forms: []', 'error wrong-value'],
    [
      'forms within forms',
      boatText`
        forms:
          - forms:
          ${tube}`,
      'error unknown-key',
    ],
    [
      'one that is only a place',
      boatText`
        forms:
          - { station: 30 mm, height: 30 mm }`,
      'error form-unknown',
    ],
  ])('%s', (_, keys, expected) => {
    expect(said(fileFindings(analysed(boat('compartments', keys))))).toContain(expected);
  });

  it('divides a tank of several into cells, and says of a ball that it cannot', () => {
    const hull = boat(
      'compartments',
      boatText`
        round: 60 mm
        station: 50 to 350 mm
        height: 30 mm`,
    );
    const tank = (forms: string) =>
      analysed(
        boatText`
          ${hull.trimEnd()}
            tanks:
              - { name: ballast, in: hull, kind: sealed, cells: 2, forms: [${forms}] }
        `,
      );
    const two = tank(
      '{ round: 40 mm, station: 100 to 200 mm, height: 30 mm }, { round: 20 mm, station: 200 to 300 mm, height: 30 mm }',
    );
    expect(fileFindings(two)).toEqual([]);
    const volumes = two.bodies.tanks[0]!.cells.map(({ volume }) => volume);
    expectClose(volumes[0]!, Math.PI * 0.02 ** 2 * 0.1, ROUNDING);
    expectClose(volumes[1]!, Math.PI * 0.01 ** 2 * 0.1, ROUNDING);
    const ball = tank('{ ball: 50 mm, station: 200 mm, height: 30 mm }');
    expect(said(fileFindings(ball))).toEqual(['warning cells-undivided']);
    expectClose(ball.bodies.tanks[0]!.cells[0]!.volume, (Math.PI * 0.05 ** 3) / 6, ROUNDING);
  });
});

describe('help for the keys of a form', () => {
  it('is there for what stands inside one', () => {
    const { describer } = service;
    for (const list of ['shells', 'compartments', 'tanks']) {
      expect(describer.describe(['hull', list, 0, 'sections', 1, 'outline'])?.description).toContain(
        'from keel to deck',
      );
      expect(describer.describe(['hull', list, 0, 'mesh', 'axes'])?.example).toBe('-x -y z');
      expect(describer.describe(['hull', list, 0, 'mesh', 'unit'])?.words).toEqual(['mm', 'cm', 'm', 'in', 'ft']);
      expect(describer.keysAt(['hull', list, 0, 'forms', 0]).map(({ key }) => key)).toContain('round');
    }
    expect(describer.describe(['payload', 0, 'forms', 2, 'mesh', 'file'])?.description).toContain('STL');
  });
});
