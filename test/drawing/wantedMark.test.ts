import { describe, expect, it } from 'vitest';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { allNodes, parseXml, withClass } from '../helpers/svg.ts';

/** A box that displaces 3.2 kg at its painted waterline and weighs 1 kg, G under B; the rest is to be found. */
const boat = (parts: string) => boatText`
  boat: Tern
  water: { density: 1000 kg/m3 }
  hull:
    length: 400 mm
    waterline: 80 mm
    compartments:
      - { name: box, mass: 1 kg, box: 100 x 100 mm, station: 0 to 400 mm, height: 50 mm, balance: { height: 20 mm } }
  payload: [${parts}]
`;

function markIn(text: string) {
  const svg = parseXml(trimSheet(analysed(text), { only: ['surfaced-side'] }).pictures[0]!.svg);
  const [mark] = withClass(svg, 'still-wanted');
  const all = allNodes(svg);
  const legend = all.filter(({ text: said }) => said === 'still wanted: its centre').length;
  if (!mark?.attributes['aria-label']) return { said: null, legend };
  const circle = allNodes(mark).find(({ name }) => name === 'circle')!;
  const [x, y, r] = ['cx', 'cy', 'r'].map(key => Number(circle.attributes[key]));
  return {
    said: mark.attributes['aria-label'],
    x: x!,
    y: y!,
    r: r!,
    scale: Number(svg.attributes['data-scale']),
    legend,
  };
}

describe('what is still wanted', () => {
  const empty = markIn(boat(''));
  it('is marked where its centre must lie, with a sign in the legend', () => {
    // Symmetrical fore and aft: 2.2 kg at half length.
    expect(empty.said).toMatch(/^Still wanted: 2200 g more, its centre at station 200 mm, on the centreline/);
    expect(empty.legend).toBe(1);
  });
  it('moves and shrinks as parts are entered', () => {
    const some = markIn(boat('{ name: battery, mass: 1.1 kg, station: 150 mm, height: 20 mm, in: box }'));
    // Half of it at 150 mm: the other half at 250 mm.
    expect(some.said).toMatch(/^Still wanted: 1100 g more, its centre at station 250 mm/);
    // The picture is trimmed, so that its height counts a little too.
    expect((some.x! - empty.x!) / some.scale!).toBeGreaterThan(0.04);
    expect(some.r!).toBeLessThan(empty.r!);
  });
  it('is gone once nothing is', () => {
    const all = markIn(boat('{ name: lead, mass: 2.2 kg, station: 200 mm, height: 20 mm, in: box }'));
    expect([all.said, all.legend]).toEqual([null, 0]);
  });
});
