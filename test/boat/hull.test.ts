import { describe, expect, it } from 'vitest';
import { findMaterial } from '../../schema/materials.ts';
import { freshWaterDensity } from '../../server/core/boat/waterDensity.ts';
import { loadTank, loadVolume, settle } from '../../server/core/bodies/tankWater.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { analysed, fileFindings, marked } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

const inMm = (p: Vec3): number[] => p.map(metres => Math.round(metres * 1e7) / 1e4 + 0);

describe('a shell', () => {
  const shellOf = (rest: string) => {
    const analysis = analysed(
      probe([
        '  tanks:',
        `  shells:
    - { name: skin, mass: 157 g, material: fibreglass, ${rest} }
  tanks:`,
      ]),
    );
    expect(fileFindings(analysis)).toEqual([]);
    const shell = analysis.boat.shells[0]!;
    const body = analysis.bodies.displacers.find(displacer => displacer.entry === shell)!.body;
    return { analysis, shell, body };
  };
  // A frustum's side weighs where a triangle's or trapezium's outline does: h/3·(R + 2r)/(R + r) from the end R.
  it.each([
    ['a tube with its ends', 'round: 40 mm, station: 100 to 300 mm, height: 100 mm', [200, 0, 100]],
    ['an open tube', 'round: 40 mm, station: 100 to 300 mm, height: 100 mm, ends: open', [200, 0, 100]],
    ['an open cone', 'round: 0 to 40 mm, station: 100 to 160 mm, height: 100 mm, ends: open', [140, 0, 100]],
    [
      'an open frustum',
      'round: 30 to 60 mm, station: 100 to 160 mm, height: 100 mm, ends: open',
      [100 + (60 / 3) * ((30 + 120) / 90), 0, 100],
    ],
    // Side π·20·√(20² + 60²) about 140 mm, base π·20² at 160 mm: the slant is 63.2456 mm.
    [
      'a cone with its base',
      'round: 0 to 40 mm, station: 100 to 160 mm, height: 100 mm',
      [(20 * 63.24555320336759 * 140 + 400 * 160) / (20 * 63.24555320336759 + 400), 0, 100],
    ],
    ['a box', 'box: 26 x 30 mm, station: 100 to 160 mm, height: 100 mm', [130, 0, 100]],
    [
      'one that balances elsewhere',
      'box: 26 x 30 mm, station: 100 to 160 mm, height: 100 mm, balance: { height: 91 mm }',
      [130, 0, 91],
    ],
  ])('%s displaces only its wall and weighs at the middle of its surface', (_, rest, centroid) => {
    const { analysis, shell, body } = shellOf(rest);
    // The handbook's fibreglass has as much wall to the gram, whatever the form.
    expect(shell.volume).toBeCloseTo(0.157 / findMaterial('fibreglass')!.density, 12);
    expect(body.volume).toBeCloseTo(shell.volume, 12);
    for (const axis of [0, 1, 2] as const) expect(shell.centroid[axis] * 1e3).toBeCloseTo(centroid[axis]!, 6);
    expect(analysis.bodies.volume).toBeCloseTo(0.4 * 0.1 * 0.07 + shell.volume, 12);
  });
  it('takes its own density before the handbook’s', () => {
    expect(shellOf('density: 2 g/cm3, round: 40 mm, station: 100 to 300 mm, height: 100 mm').shell.volume).toBeCloseTo(
      0.157 / 2000,
      12,
    );
  });
  it('needs no material when its density is given', () => {
    const text = probe([
      '  tanks:',
      `  shells:
    - { name: skin, mass: 157 g, density: 1 g/cm3, ball: 90 mm, station: 200 mm, height: 100 mm }
  tanks:`,
    ]);
    expect(analysed(text).boat.shells[0]?.volume).toBeCloseTo(0.000157, 12);
  });
});

describe('a tank', () => {
  const tankOf = (put: readonly (readonly [string, string])[]) => {
    const analysis = analysed(probe(...put));
    // The probe's battery lies in its tank, which is a bag: where it is none that is told.
    expect(fileFindings(analysis).filter(({ code }) => code !== 'same-room')).toEqual([]);
    return { analysis, tank: analysis.boat.tanks[0]!, body: analysis.bodies.tanks[0]! };
  };
  const ofKind = (kind: string) => tankOf([['kind: bladder', kind]]);
  const up: Vec3 = [0, 0, 1];

  it('inside a compartment takes water and displaces nothing of its own', () => {
    const { analysis, tank } = ofKind('kind: vented');
    expect(tank.capacity).toBeCloseTo(0.22 * 0.09 * 0.05, 12);
    expect(analysis.bodies.volume).toBeCloseTo(0.4 * 0.1 * 0.07, 12);
  });
  it('out in the flooded hull displaces by its form', () => {
    const { analysis } = tankOf([
      [
        `      in: hold
      station: 90`,
        '      station: 90',
      ],
      ['height: 5 to 55 mm', 'height: 80 to 130 mm'],
    ]);
    expect(analysis.bodies.volume).toBeCloseTo(0.4 * 0.1 * 0.07 + 0.22 * 0.09 * 0.05, 12);
  });
  it.each(['kind: sealed', 'kind: vented'])('%s: its water lies level over the whole tank', kind => {
    const { body } = ofKind(kind);
    const load = loadTank(body, 0.4);
    expect(load.stillVolume).toBe(0);
    expect(loadVolume(load)).toBeCloseTo(0.4 * body.capacity, 12);
    const water = settle(load.free[0]!, up);
    expect(inMm([water.mx / water.volume, water.my / water.volume, water.mz / water.volume])).toEqual([200, 0, 15]);
  });
  it('in cells has as many surfaces, each as long as its cell', () => {
    const { body, tank } = ofKind(boatText`
      kind: sealed
            cells: 4`);
    expect(tank.cells).toBe(4);
    const load = loadTank(body, 0.4);
    expect(load.free.map(water => water.volume / body.capacity)).toEqual(Array(4).fill(expect.closeTo(0.1, 12)));
    // Each 55 x 90 mm: i = b·l³/12 lengthwise.
    const cell = settle(load.free[0]!, up);
    expect(cell.xx - cell.ax ** 2 / cell.area).toBeCloseTo((0.09 * 0.055 ** 3) / 12, 14);
  });
  it.each([
    ['kind: piston', [90 + 0.4 * 110, 0, 30]],
    [
      boatText`
        kind: piston
              fills: forward`,
      [90 + 0.4 * 110, 0, 30],
    ],
    [
      boatText`
        kind: piston
              fills: aft`,
      [310 - 0.4 * 110, 0, 30],
    ],
    ['kind: bladder', [200, 0, 30]],
  ])('%s: its water holds still', (kind, centre) => {
    const { body } = ofKind(kind);
    const load = loadTank(body, 0.4);
    expect(load.free).toEqual([]);
    expect(load.stillVolume).toBeCloseTo(0.4 * body.capacity, 12);
    expect(inMm(load.stillMoment.map(m => m / load.stillVolume) as unknown as Vec3)).toEqual(centre);
  });
  it('keeps what is left in it when surfaced', () => {
    const { analysis } = ofKind(boatText`
      kind: bladder
            fill: 10 %`);
    // 99 ml more in a box of 400 cm2: 2.475 mm deeper.
    const { surfaced } = analysis;
    expect(surfaced.status === 'afloat' && surfaced.displacement).toBeCloseTo(2.099, 9);
    expect(surfaced.status === 'afloat' && surfaced.attitude.draft).toBeCloseTo(0.05 + 0.000099 / 0.04, 9);
  });
  it.each([
    [
      boatText`
        kind: bladder
              cells: 2`,
      '2',
      'A bladder tank has no free surface for cells to divide.',
    ],
    [
      boatText`
        kind: piston
              cells: 2`,
      '2',
      'A piston tank has no free surface for cells to divide.',
    ],
    [
      boatText`
        kind: sealed
              fills: aft`,
      'aft',
      'Only a piston tank fills from one end; this one is sealed.',
    ],
    [
      boatText`
        kind: vented
              pressure: 1 bar`,
      '1 bar',
      'Only a sealed tank builds up pressure; this one is vented.',
    ],
  ])('says that a key has no use: %s', (kind, marks, says) => {
    const analysis = analysed(probe(['kind: bladder', kind]));
    const told = fileFindings(analysis).filter(({ code }) => code !== 'same-room');
    expect(told.map(f => [f.code, f.severity, f.message])).toEqual([['key-without-use', 'warning', says]]);
    expect(marked(analysis, told[0]!)).toBe(marks);
    expect(analysis.boat.tanks).toHaveLength(1);
  });
  it.each([
    ['fill: 120 %', 'A fraction is at most the whole: 100 % or 1.'],
    ['cells: 2.5', 'Expected a whole number such as 3, but this says “2.5”.'],
    ['cells: 0', 'Expected a whole number such as 3, but this says “0”.'],
  ])('cannot have %s', (line, says) => {
    const analysis = analysed(
      probe([
        'kind: bladder',
        boatText`
          kind: bladder
                ${line}`,
      ]),
    );
    expect(fileFindings(analysis).map(finding => finding.message)).toEqual([says]);
    expect(analysis.boat.leftOut).toEqual(['main tank']);
  });
});

it('water without a density in the file is fresh, of 20 °C', () => {
  expect(analysed(probe(['water: { density: 1000 kg/m3 }', ''])).boat.water.density).toBe(freshWaterDensity(20));
});
