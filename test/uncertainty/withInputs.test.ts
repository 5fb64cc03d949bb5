import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Shapes } from '../../server/core/geometry/shapes/shapes.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import type { Input } from '../../server/core/uncertainty/input.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { heard, service } from '../helpers/analysed.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe, probeWith } from '../helpers/probe.ts';
import { binaryStl } from '../helpers/stl.ts';

const inputIn = (inputs: readonly Input[], words: string): Input => {
  const found = inputs.find(input => input.words === words);
  if (!found) throw new Error(`no input is called ${words}`);
  return found;
};

describe('the boat with other inputs', { timeout: 60_000 }, () => {
  it('is the same boat, entry for entry, where none changes', () => {
    fc.assert(
      fc.property(arbitrarySub({ offset: 3 }), sub => {
        const { source, boat } = heard(subText(sub));
        for (const changes of [new Map(), new Map(inputsOf(source).map(input => [input, input.value]))]) {
          const same = withInputs(source, changes);
          expect(same).toEqual(boat);
          for (const list of ['shells', 'compartments', 'tanks', 'payload'] as const) {
            expect(same[list].every((entry, i) => entry === boat[list][i])).toBe(true);
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  /* The other way to the same boat: the text with the other figure in it. */
  it.each<readonly [words: string, to: number, was: string, is: string]>([
    ['mass of “battery”', 0.81, 'mass: 800 g', 'mass: 810 g'],
    ['station of “battery”', 0.203, 'station: 150 to 250 mm', 'station: 153 to 253 mm'],
    ['height of “floor lead”', 0.025, 'height: 20 mm', 'height: 25 mm'],
    ['length of “hold”', 0.404, 'station: 0 to 400 mm', 'station: -2 to 402 mm'],
    ['depth of “hold”', 0.072, 'height: 0 to 70 mm', 'height: -1 to 71 mm'],
    ['breadth of “main tank”', 0.092, 'offset: -45 to 45 mm', 'offset: -46 to 46 mm'],
    ['density of the water', 1002, 'density: 1000 kg/m3', 'density: 1002 kg/m3'],
  ])('%s', (words, to, was, is) => {
    const { source } = heard(probe());
    const changed = withInputs(source, new Map([[inputIn(inputsOf(source), words), to]]));
    const { boat } = heard(probe([was, is]));
    for (const list of ['shells', 'compartments', 'tanks', 'payload'] as const) {
      for (const [i, entry] of boat[list].entries()) {
        const mine = changed[list][i]!;
        if ('mass' in entry && 'mass' in mine) {
          expect(mine.mass).toBeCloseTo(entry.mass, 12);
          for (const axis of [0, 1, 2] as const) expect(mine.centroid[axis]).toBeCloseTo(entry.centroid[axis], 12);
        }
        const volume = (one: typeof entry | typeof mine) => ('capacity' in one ? one.capacity : one.volume);
        expect(volume(mine)).toBeCloseTo(volume(entry), 15);
      }
    }
    expect(changed.water.density).toBe(boat.water.density);
  });

  it('a density in common changes every entry of the material and all that follows from it', () => {
    const { source } = heard(
      probeWith(
        '{ name: weight, material: lead, mass: 1000 g, station: 100 mm, height: 30 mm }',
        '{ name: strip, material: lead, box: 10 x 5 mm, station: 100 to 200 mm, height: 10 mm }',
      ),
    );
    const lead = inputIn(inputsOf(source), 'density of lead');
    const { payload } = withInputs(source, new Map([[lead, 10_000]]));
    expect(payload.find(({ name }) => name === 'weight')!.volume).toBeCloseTo(1e-4, 15);
    expect(payload.find(({ name }) => name === 'strip')!.mass).toBeCloseTo(0.05, 12);
  });

  it('a profile grows across and stays as long as it is', () => {
    const { source } = heard(probeWith('{ name: pod, mass: 60 g, profile: [[100, 10], [200, 10]], height: 30 mm }'));
    const size = inputIn(inputsOf(source), 'greatest breadth of “pod”');
    expect(size.value).toBeCloseTo(0.02, 12);
    const pod = withInputs(source, new Map([[size, 0.022]])).payload.find(({ name }) => name === 'pod')!;
    // Cylinder: π r² l.
    expect(pod.volume).toBeCloseTo(Math.PI * 0.011 ** 2 * 0.1, 12);
  });

  it('a mesh grows all over from its bow and its keel, and its place in the boat is remembered', () => {
    const file = readMeshFile(binaryStl(boxForm([0, -30, 0], [400, 30, 40])));
    const text = boatText`
      boat: Wren
      hull:
        length: 500 mm
        compartments:
          - { name: tube, mass: 400 g, mesh: { file: tube.stl, at: [50 mm, 0 mm, 10 mm] } }
    `;
    const analysis = service.analyse(text, undefined, () => file);
    const inputs = inputsOf(analysis.source);
    expect(inputs.map(({ words }) => words)).toEqual([
      'temperature of the water',
      'mass of “tube”',
      'station of “tube”',
      'offset of “tube”',
      'height of “tube”',
      'greatest breadth of “tube”',
    ]);
    const size = inputIn(inputs, 'greatest breadth of “tube”');
    expect(size.value).toBeCloseTo(0.06, 9);
    const [tube] = withInputs(analysis.source, new Map([[size, 0.066]])).compartments;
    expect(tube!.volume).toBeCloseTo(1.1 ** 3 * 0.4 * 0.06 * 0.04, 10);
    const { from, to } = boundsOf(tube!.form);
    expect([...from, ...to]).toEqual([0.05, -0.033, 0.01, 0.49, 0.033, 0.054].map(c => expect.closeTo(c, 8)));
    const aft = withInputs(analysis.source, new Map([[inputIn(inputs, 'station of “tube”'), 0.26]])).compartments[0]!;
    expect(boundsOf(aft.form).from[0]).toBeCloseTo(0.06, 8);
    // Tried places do not push the boat's own out of what is remembered.
    const again = service.analyse(text.replace('400 g', '401 g'), analysis, () => file);
    expect(again.boat.compartments[0]!.form).toBe(analysis.boat.compartments[0]!.form);
  });

  it('a table that is tried elsewhere is made once: in steps, and found again when it is read', () => {
    const { source } = heard(readFileSync('samples/teal.boat.yaml', 'utf8'));
    const breadth = inputIn(inputsOf(source), 'greatest breadth of “outer hull”');
    let made = 0;
    const { shapes } = source.around;
    const counted: Shapes = {
      ...shapes,
      tabulated: (rows, as, make) =>
        shapes.tabulated(rows, as, () => {
          made += 1;
          return make();
        }),
    };
    withInputs(
      { ...source, around: { ...source.around, shapes: counted } },
      new Map([[breadth, breadth.value + 0.001]]),
    );
    // With straight lines, and faired.
    expect(made).toBe(2);
  });
});
