import { describe, expect, it } from 'vitest';
import type { FileUnits } from '../../schema/units.ts';
import { beyondLimit } from '../../server/core/wording/beyondLimit.ts';
import {
  angleText,
  heelWords,
  lengthText,
  massText,
  percentText,
  trimWords,
} from '../../server/core/wording/numbers.ts';

const degrees = Math.PI / 180;
const metric: FileUnits = { length: 'mm', mass: 'g' };
const inches: FileUnits = { length: 'in', mass: 'oz' };

describe('a figure that breaks its limit', () => {
  it.each<readonly [shown: string, figure: (finer: number) => string, limit: string, way: 'over' | 'under']>([
    // Plain enough as it is.
    ['0.8° bow up', f => trimWords(0.8 * degrees, f), '0.5°', 'over'],
    ['2.2° to port', f => heelWords(-2.2 * degrees, f), '1°', 'over'],
    // Rounds to its limit: a digit more.
    ['0.53° bow up', f => trimWords(0.53 * degrees, f), '0.5°', 'over'],
    ['1.02° to starboard', f => heelWords(1.02 * degrees, f), '1°', 'over'],
    ['1.52 mm', f => lengthText(0.00152, metric, f), '1.5 mm', 'over'],
    ['0.063 in', f => lengthText(0.0632 * 0.0254, inches, f), '1/16 in', 'over'],
    ['1 5/32 in', f => lengthText(1.16 * 0.0254, inches, f), '1 1/8 in', 'over'],
    ['1 lb 0.3 oz', f => massText(16.3 * 0.028349523125, inches, f), '1 lb', 'over'],
    ['85.2 %', f => percentText(0.852, f), '85 %', 'over'],
    // Rounds to the kept side of its limit.
    ['0.55° bow down', f => trimWords(-0.545 * degrees, f), angleText(0.54 * degrees), 'over'],
    ['39.8 %', f => percentText(0.398, f), '40 %', 'under'],
    ['2.96 mm', f => lengthText(0.002962, metric, f), '3 mm', 'under'],
    ['2.96 mm', f => lengthText(0.002962, metric, f), '3 mm at least', 'under'],
    ['999.9 mm', f => (f > 0 ? '999.94 mm' : '999.9 mm'), '1 m', 'over'],
    // Rounds to nothing at all.
    ['0.02° bow up', f => trimWords(0.02 * degrees, f), '0.01°', 'over'],
    // Nobody could measure the difference.
    ['0.5° bow up', f => trimWords(0.5000001 * degrees, f), '0.5°', 'over'],
  ])('reads %s', (shown, figure, limit, way) => {
    expect(beyondLimit(figure, limit, way)).toBe(shown);
  });
});
