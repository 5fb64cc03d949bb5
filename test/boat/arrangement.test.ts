import { describe, expect, it } from 'vitest';
import { freeName } from '../../server/core/boat/arrangement.ts';
import { analysed, fileFindings, marked, mended } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe, probeWith } from '../helpers/probe.ts';

const told = (text: string) => {
  const analysis = analysed(text);
  return fileFindings(analysis).map(finding => [
    finding.code,
    finding.severity,
    marked(analysis, finding),
    finding.message,
  ]);
};

describe('two things of one name', () => {
  it.each([
    ['a tank like its compartment', ['name: main tank', 'name: hold'], 'hold', 'hold 2'],
    ['a part like a tank', ['name: floor lead', 'name: main tank'], 'main tank', 'main tank 2'],
    ['two bays', ['name: stern bay', 'name: bow bay'], 'bow bay', 'bow bay 2'],
  ] as const)('%s: the later is told', (_, put, name, free) => {
    expect(told(probe(put))).toEqual([
      [
        'duplicate-name',
        'error',
        name,
        `Two things are called “${name}”. Give this one a name of its own, such as “${free}”.`,
      ],
    ]);
  });
  it('a bay may be called like a part', () => {
    expect(told(probe(['name: bow bay', 'name: battery']))).toEqual([]);
  });
  it('a free name is found where the second is taken too', () => {
    expect(freeName('lead', [{ name: 'lead' }, { name: 'lead 2' }])).toBe('lead 3');
    expect(freeName('foam', [{ name: 'lead' }])).toBe('foam');
  });
  it.each(['keel: forward', 'a, b', '# 1', '- x', '"quoted"'])('the mend quotes what YAML would misread: %s', name => {
    const written = JSON.stringify(name);
    const text = probeWith(`{ name: ${written}, mass: 2 g, in: hold, station: 9 mm, height: 9 mm }`);
    const doubled = text.replace('name: battery', () => `name: ${written}`);
    const analysis = analysed(doubled);
    const [twice] = fileFindings(analysis);
    const after = analysed(mended(analysis, twice!));
    expect(fileFindings(after)).toEqual([]);
    expect(after.boat.payload.map(part => part.name)).toEqual([name, 'floor lead', `${name} 2`]);
  });
});

describe('a name in “in:”', () => {
  it('is one of the compartments, which are listed', () => {
    const two = probe(
      [
        '  tanks:',
        `    - { name: sail, mass: 9 g, round: 20 mm, axis: vertical, station: 200 mm, height: 70 to 90 mm }
  tanks:`,
      ],
      [
        `      in: hold
      station`,
        `      in: galley
      station`,
      ],
    );
    expect(told(two)).toEqual([
      [
        'unknown-compartment',
        'error',
        'galley',
        'There is no compartment “galley”. The compartments are “hold”, “sail”.',
      ],
    ]);
  });
  it('says that there are none', () => {
    const none = boatText`
      boat: B
      hull: { length: 90 mm }
      payload:
        - { name: a, mass: 2 g, in: hold, station: 9 mm, height: 9 mm }
    `;
    expect(told(none)).toEqual([
      ['unknown-compartment', 'error', 'hold', 'There is no compartment “hold”. The hull has no compartments yet.'],
    ]);
  });
  it('may be that of a compartment that cannot be read: one slip, one complaint', () => {
    expect(told(probe(['mass: 600 g', 'mass: 600 mm'])).map(([code]) => code)).toEqual(['wrong-quantity']);
  });
});

describe('what sticks out of its compartment', () => {
  const item = (rest: string) => probeWith(`{ name: item, mass: 9 g, in: hold, ${rest} }`);
  const middle = { station: '200 to 220 mm', offset: '-5 to 5 mm', height: '20 to 30 mm' };
  const at = (change: Partial<typeof middle>) =>
    item(
      Object.entries({ ...middle, ...change })
        .map(([key, text]) => `${key}: ${text}`)
        .join(', '),
    );
  // The hold: stations 0 to 400, offsets -50 to 50, heights 0 to 70 mm.
  it.each([
    ['forward', { station: '-12 to 20 mm' }, '-12 to 20 mm', '12 mm forward'],
    ['aft', { station: '380 to 406 mm' }, '380 to 406 mm', '6 mm aft'],
    ['to port', { offset: '-57 to 5 mm' }, '-57 to 5 mm', '7 mm to port'],
    ['to starboard', { offset: '5 to 62 mm' }, '5 to 62 mm', '12 mm to starboard'],
    ['below', { height: '-5.5 to 30 mm' }, '-5.5 to 30 mm', '5.5 mm below'],
    ['above', { height: '20 to 76.2 mm' }, '20 to 76.2 mm', '6.2 mm above'],
    ['most of several ways', { station: '-12 to 20 mm', height: '20 to 90 mm' }, '20 to 90 mm', '23.3 mm above'],
  ])('%s', (_, change, marks, by) => {
    expect(told(at(change))).toEqual([
      ['sticks-out', 'warning', marks, `“item” sticks out of “hold” by ${by}. Check its place, its size, and “in:”.`],
    ]);
  });
  it('by not much more than the tolerances of the figures, which may be so', () => {
    expect(told(at({ height: '-3.5 to 30 mm' }))).toEqual([
      [
        'sticks-out',
        'information',
        '-3.5 to 30 mm',
        '“item” sticks out of “hold” by 3.5 mm below. That is little more than the tolerances of the figures. Check its place, its size, and “in:”.',
      ],
    ]);
    expect(told(at({ height: '-3.5 to 30 mm ± 0.5 mm' })).map(([, severity]) => severity)).toEqual(['warning']);
  });
  it.each([
    ['nothing inside', {}],
    ['nothing by less than the tape shows', { station: '-0.4 to 20 mm ± 0.1 mm' }],
    ['nothing by less than the tape is good for', { station: '380 to 401.5 mm' }],
  ])('%s', (_, change) => {
    expect(told(at(change))).toEqual([]);
  });
  it.each([
    ['a tank', probe(['station: 90 to 310 mm', 'station: 90 to 430 mm']), 'main tank', '90 to 430 mm', '30 mm aft'],
    ['a bay', probe(['station: 280 to 380 mm', 'station: 280 to 415 mm']), 'stern bay', '280 to 415 mm', '15 mm aft'],
    ['a form', item('round: 30 mm, station: 100 to 145 mm, height: 60 mm'), 'item', '60 mm', '5 mm above'],
  ])('%s too', (_, text, name, marks, by) => {
    expect(told(text).map(([code, , place, says]) => [code, place, says])).toEqual([
      ['sticks-out', marks, `“${name}” sticks out of “hold” by ${by}. Check its place, its size, and “in:”.`],
    ]);
  });
});

describe('what lies whole in a compartment without “in:”', () => {
  const says = (name: string) =>
    `“${name}” lies whole in “hold”, but counts as lying in the water, so that its room displaces twice. If it is in there, say so: “in: hold”.`;
  const pin = (rest: string) => probeWith(`{ name: pin, mass: 9 g, ${rest} } # brass`);
  // A floor in the flooded space under a round tube: inside the box about the tube, but not in the tube.
  const round = (part: string) =>
    probe(
      ['offset: -50 to 50 mm', 'round: 70 mm'],
      ['height: 0 to 70 mm', 'height: 35 mm'],
      [
        'bays:',
        boatText`
            - { name: pin, mass: 9 g, ${part} } # brass
          bays:`,
      ],
    );
  it.each([
    ['a part', pin('material: brass, station: 100 to 140 mm, height: 30 mm')],
    ['a part of no more than mass and volume', pin('volume: 3 ml, station: 120 mm, height: 30 mm')],
  ])('%s is told, and the mend says where it is', (_, text) => {
    expect(told(text)).toEqual([['perhaps-inside', 'warning', 'pin', says('pin')]]);
    const analysis = analysed(text);
    const after = mended(analysis, fileFindings(analysis)[0]!);
    expect(after).toBe(text.replace(' } # brass', ', in: hold } # brass'));
    expect(told(after)).toEqual([]);
  });
  it.each([
    [
      'a tank',
      probe([
        `      in: hold
      station: 90`,
        '      station: 90',
      ]),
      'main tank',
    ],
    ['a bay', probe(['name: bow bay, in: hold,', 'name: bow bay,']), 'bow bay'],
  ])('%s too', (_, text, name) => {
    expect(told(text)).toEqual([['perhaps-inside', 'warning', name, says(name)]]);
  });
  it.each([
    ['in the water below', pin('material: brass, box: 6 x 6 mm, station: 100 to 140 mm, height: -4 mm')],
    ['half in the wall', pin('material: brass, box: 6 x 6 mm, station: 100 to 140 mm, height: 0 mm')],
    [
      'in the corner of the box about a tube',
      round('material: brass, box: 6 x 6 mm, station: 100 to 140 mm, offset: 31 mm, height: 4 mm'),
    ],
  ])('%s it is not', (_, text) => {
    expect(told(text).filter(([code]) => code === 'perhaps-inside')).toEqual([]);
  });
});

describe('compartments that overlap', () => {
  const with2 = (line: string) =>
    probe([
      '  tanks:',
      `    - ${line}
  tanks:`,
    ]);
  it('are told with the length by which they do', () => {
    const [overlap] = told(
      with2('{ name: sail, mass: 9 g, station: 180 to 220 mm, offset: -10 to 10 mm, height: 64 to 90 mm }'),
    );
    expect(overlap).toEqual([
      'compartments-overlap',
      'warning',
      '64 to 90 mm',
      '“sail” and “hold” overlap by 6 mm, so some water would be displaced twice. Check their places and sizes.',
    ]);
  });
  it('not where they only touch', () => {
    expect(
      told(with2('{ name: sail, mass: 9 g, station: 180 to 220 mm, offset: -10 to 10 mm, height: 70 to 90 mm }')),
    ).toEqual([]);
  });
  it('round ones by their circles, not by the boxes around them', () => {
    const tubes = (apart: number) => `boat: B
hull:
  length: 300 mm
  compartments:
    - { name: port, mass: 90 g, round: 40 mm, station: 0 to 300 mm, offset: -14 mm ± 1 mm, height: 20 mm ± 1 mm }
    - { name: starboard, mass: 90 g, round: 40 mm, station: 0 to 300 mm, offset: 14 mm ± 1 mm, height: ${20 + apart} mm ± 1 mm }
`;
    // Their axes lie √(28² + 30²) = 41.04 mm apart in the first, √(28² + 24²) = 36.88 mm in the second.
    expect(told(tubes(30))).toEqual([]);
    expect(told(tubes(24)).map(([, , , says]) => says)).toEqual([
      '“starboard” and “port” overlap by 3.1 mm, so some water would be displaced twice. Check their places and sizes.',
    ]);
  });
});
