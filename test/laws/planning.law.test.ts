import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analysed } from '../helpers/analysed.ts';
import { arbitrarySub, type Sub, subText } from '../helpers/boats.ts';

const mm = (metres: number): string => `${(metres * 1000).toFixed(9)} mm`;

/** The boat without its keel lead and gear: half entered. */
const halfOf = (sub: Sub): string =>
  subText(sub)
    .split('\n')
    .filter(line => !/name: (?:gear|keel lead)/.test(line))
    .join('\n');

/** A boat half entered, with what is wanted put where it is wanted, and a tank of what is wanted in place of its own. */
function completed(half: string) {
  const { wanted } = analysed(half);
  if (!wanted?.centre || wanted.mass <= 0 || !wanted.tank.centre) return null;
  const [x, y, z] = wanted.centre;
  const rest = `  - { name: rest, mass: ${(wanted.mass * 1000).toFixed(9)} g, station: ${mm(x)}, offset: ${mm(y)}, height: ${mm(z)}, in: tube }`;
  // A thin flat bladder holds its water where its form has its centre.
  const [tx, ty, tz] = wanted.tank.centre;
  const side = 0.04;
  const long = wanted.tank.capacity / side ** 2;
  const tank = `    - { name: tank, in: tube, box: ${side * 1000} x ${side * 1000} mm, station: ${mm(tx - long / 2)} to ${mm(tx + long / 2)}, offset: ${mm(ty)}, height: ${mm(tz)}, kind: bladder }`;
  const text = half
    .split('\n')
    .map(line => (line.includes('name: tank') ? tank : line))
    .join('\n')
    .replace(
      'payload:',
      `payload:
${rest}`,
    );
  return { wanted, after: analysed(text) };
}

test('with what is wanted where it is wanted the boat floats on its painted waterline and hangs level', () => {
  let checked = 0;
  fc.assert(
    fc.property(arbitrarySub({ offset: 4 }), sub => {
      const made = completed(halfOf({ ...sub, tank: { ...sub.tank, fill: 0 } }));
      if (!made) return;
      const { after } = made;
      const { surfaced, submerged, boat } = after;
      if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') return;
      checked += 1;
      expect(surfaced.attitude.draft).toBeCloseTo(boat.waterline!.bow, 7);
      expect(surfaced.attitude.trim).toBeCloseTo(0, 6);
      expect(surfaced.attitude.heel).toBeCloseTo(0, 5);
      expect(surfaced.gm).toBeGreaterThan(boat.limits.surfaced.gm - 1e-7);
      expect(submerged.fill).toBeCloseTo(0.7, 7);
      if (submerged.stable) expect(submerged.trim).toBeCloseTo(0, 4);
      expect(after.wanted!.mass).toBeCloseTo(0, 7);
    }),
    { numRuns: 60, seed: 11 },
  );
  expect(checked).toBeGreaterThan(20);
});
