import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadTank } from '../../server/core/bodies/tankWater.ts';
import { type PictureId, trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { levelFor } from '../../server/core/geometry/cut/levelCut.ts';
import { heard } from '../helpers/analysed.ts';
import { circleOf, type Node, parseXml, pointsOf, withClass } from '../helpers/svg.ts';

const text = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');
const curlew = heard(text('curlew'));
const petrel = heard(text('petrel'));

function drawn(analysis: ReturnType<typeof heard>, id: PictureId) {
  const svg = parseXml(trimSheet(analysis, { only: [id] }).pictures[0]!.svg);
  const number = (key: string) => Number(svg.attributes[`data-${key}`]);
  return { svg, scale: number('scale'), station: number('station') };
}

/** The points of the first path of an element's class. */
const outlineOf = (node: Node, kind: string) => pointsOf(withClass(node, kind)[0]!.attributes.d!);
const entry = (svg: Node, ...path: readonly (string | number)[]): Node =>
  withClass(svg, 'entry').find(({ attributes }) => attributes['data-path'] === JSON.stringify(path))!;

const span = (points: readonly (readonly [number, number])[], axis: 0 | 1): number => {
  const all = points.map(point => point[axis]);
  return Math.max(...all) - Math.min(...all);
};

describe('the body section, read back', () => {
  it('is cut through the middle of the tank, and says where', () => {
    const { svg, station } = drawn(curlew, 'surfaced-section');
    expect(station).toBeCloseTo(0.42, 6);
    expect(svg.attributes['aria-label']).toContain('the middle of “main ballast”, 420 mm aft of the bow tip');
  });
  it('shows hull and tank as large as they are there', () => {
    const { svg, scale } = drawn(curlew, 'surfaced-section');
    // The file: a hull of 54 mm radius and a tank of 80 mm.
    expect(span(outlineOf(entry(svg, 'hull', 'shells', 0), 'body'), 0) / scale).toBeCloseTo(0.108, 4);
    expect(span(outlineOf(entry(svg, 'hull', 'tanks', 0), 'body'), 1) / scale).toBeCloseTo(0.08, 4);
  });
  it('has the surface where the boat floats', () => {
    const { svg, scale } = drawn(petrel, 'surfaced-section');
    const { surfaced } = petrel;
    if (surfaced.status !== 'afloat') throw new Error('expected to float');
    const [[, surface]] = outlineOf(svg, 'surface') as [[number, number]];
    const [g, b, m] = ['mark-G', 'mark-B', 'mark-M'].map(mark => circleOf(withClass(svg, mark)[0]!));
    // The centre of buoyancy under the surface, square to it: what the boat's own axes say, but for the trim's cosine.
    const depth =
      surfaced.level - surfaced.up.reduce((sum, part, axis) => sum + part * surfaced.centreOfBuoyancy[axis]!, 0);
    const along = surfaced.up[0] * (surfaced.centreOfBuoyancy[0] - 0.445);
    expect((b![1] - surface) / scale).toBeCloseTo((depth + along) / Math.hypot(surfaced.up[1], surfaced.up[2]), 4);
    expect((g![1] - m![1]) / scale).toBeCloseTo(surfaced.gm * Math.hypot(surfaced.up[1], surfaced.up[2]), 4);
  });
  it('leans as the boat heels: the painted waterline against the water', () => {
    const { svg } = drawn(petrel, 'surfaced-section');
    const { surfaced } = petrel;
    if (surfaced.status !== 'afloat') throw new Error('expected to float');
    const [port, starboard] = outlineOf(svg, 'painted');
    // Starboard is to the right, down on the paper for a heel to starboard.
    const lean = Math.atan2(starboard![1] - port![1], starboard![0] - port![0]);
    expect(lean).toBeCloseTo(surfaced.attitude.heel, 3);
  });
});

describe('tank water, read back', () => {
  it('stands as high in each cell as the hydrostatics have it', () => {
    const { svg, scale } = drawn(curlew, 'submerged-side');
    const { submerged, bodies } = curlew;
    if (submerged.status !== 'neutral') throw new Error('expected to hang');
    const tank = entry(svg, 'hull', 'tanks', 0);
    const bottom = Math.max(...outlineOf(tank, 'body').map(point => point[1]));
    const loops = withClass(tank, 'ballast')[0]!.attributes.d!.split('Z').filter(Boolean);
    const { free } = loadTank(bodies.tanks[0]!, submerged.fill);
    expect(loops).toHaveLength(free.length);
    for (const [i, { space, volume }] of free.entries()) {
      const top = Math.min(...pointsOf(loops[i]!).map(point => point[1]));
      const [lowest] = space.extent(submerged.up);
      // 0.2° bow up: the cells' lowest points differ from the tank's by less than a millimetre.
      expect(Math.abs((bottom - top) / scale - (levelFor(space, submerged.up, volume) - lowest))).toBeLessThan(0.001);
    }
  });
  it('ends at the piston', () => {
    const { svg } = drawn(petrel, 'submerged-plan');
    const tank = entry(svg, 'hull', 'tanks', 0);
    if (petrel.submerged.status !== 'neutral') throw new Error('expected to hang');
    // A round tank of even bore: its length in water is the fill's part of it.
    expect(span(outlineOf(tank, 'ballast'), 0) / span(outlineOf(tank, 'body'), 0)).toBeCloseTo(
      petrel.submerged.fill,
      3,
    );
  });
  it('is not there when the tank is empty', () => {
    expect(withClass(drawn(petrel, 'surfaced-side').svg, 'ballast')).toEqual([]);
  });
});

describe('the plan, read back', () => {
  it('has starboard up, and everything at its station', () => {
    const { svg, scale } = drawn(petrel, 'surfaced-plan');
    const hull = outlineOf(entry(svg, 'hull', 'shells', 0), 'body');
    const bow = Math.min(...hull.map(point => point[0]));
    const middle = hull.reduce((sum, point) => sum + point[1], 0) / hull.length;
    // The file: battery at 232 to 332 mm, 3 mm to port.
    const battery = outlineOf(entry(svg, 'payload', 0), 'body');
    const stations = battery.map(point => (point[0] - bow) / scale);
    expect(Math.min(...stations)).toBeCloseTo(0.232, 4);
    expect(Math.max(...stations)).toBeCloseTo(0.332, 4);
    expect((battery.reduce((sum, point) => sum + point[1], 0) / battery.length - middle) / scale).toBeCloseTo(0.003, 4);
  });
  it('shows how broad the boat is in the water', () => {
    const { svg, scale } = drawn(curlew, 'surfaced-plan');
    const { surfaced } = curlew;
    if (surfaced.status !== 'afloat') throw new Error('expected to float');
    const breadth = span(outlineOf(svg, 'waterplane'), 1) / scale;
    // The hull is a tube of 54 mm radius about a height of 54 mm, broadest in the water where that lies lowest on it, at its
    // after end, 600 mm from the bow: the chord of a circle.
    const water = surfaced.draftBow + ((surfaced.draftStern - surfaced.draftBow) * 600) / 900;
    expect(breadth).toBeCloseTo(2 * Math.sqrt(0.054 ** 2 - (water - 0.054) ** 2), 4);
  });
});

describe('ghosts', () => {
  it('carry the number of their correction and stand where the piece goes', () => {
    const correction = petrel.corrections.all()[0]!;
    const { pictures } = trimSheet(petrel, { only: ['surfaced-plan'], correction });
    const svg = parseXml(pictures[0]!.svg);
    const ghosts = withClass(svg, 'ghost').filter(
      ({ name, attributes }) => name === 'g' && attributes['data-correction'],
    );
    expect(ghosts.map(({ attributes }) => attributes['data-correction'])).toEqual(correction.pieces.map(() => '0'));
    const hull = outlineOf(entry(svg, 'hull', 'shells', 0), 'body');
    const bow = Math.min(...hull.map(point => point[0]));
    const scale = Number(svg.attributes['data-scale']);
    for (const [i, { station }] of correction.pieces.entries()) {
      const stations = outlineOf(ghosts[i]!, 'body').map(point => (point[0] - bow) / scale);
      expect(Math.min(...stations)).toBeCloseTo(station[0], 3);
      expect(Math.max(...stations)).toBeCloseTo(station[1], 3);
    }
  });
});
