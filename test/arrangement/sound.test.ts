import { describe, expect, it } from 'vitest';
import { isLong } from '../helpers/long.ts';
import { saidOf } from './placeFindings.ts';
import { soundBoat } from './soundBoat.ts';

const BOATS = isLong ? 5000 : 120;

describe('a boat in which everything lies where it can', { timeout: 600_000 }, () => {
  it('raises nothing', () => {
    let collars = 0;
    for (let seed = 1; seed <= BOATS; seed++) {
      const text = soundBoat(seed);
      const said = saidOf(text).map(({ message }) => message);
      expect(said, `boat ${seed}: ${said.join(' ')} ${text}`).toEqual([]);
      if (text.includes('collar')) collars++;
    }
    expect(collars).toBeGreaterThan(BOATS / 20);
  });
});
