import { describe, expect, test } from 'vitest';
import { type Analysis, inOtherWater } from '../../server/analysis.ts';
import { waterOfKind } from '../../server/boat/readWater.ts';
import { fileFindings, service } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { corrected, firstOfBoth, outOfLimits, splicesOf } from '../helpers/corrected.ts';

/* Boats trimmed in fresh water that go to the sea, and come home again. */

const FRESH = 'water: { kind: fresh, temperature: 18 °C }';
const SEA = 'water: { kind: sea, temperature: 18 °C }';

describe('pieces for the sea', { timeout: 60_000 }, () => {
  test('trim the boat there; taken out again she is trimmed in fresh water as before', () => {
    let hits = 0;
    let floated = 0;
    let previous: Analysis | undefined;
    for (let seed = 0; seed < 24; seed++) {
      const { trimmed } = boatOutOfTrim(seed);
      const fresh = service.analyse(trimmed, previous);
      previous = fresh;
      expect(outOfLimits(fresh)).toEqual([]);
      const sea = inOtherWater(fresh, waterOfKind('sea', fresh.boat.water.temperature));
      // 2.7 % denser: 2.5 kg of boat are some 65 g too light for the painted line.
      expect(outOfLimits(sea).map(({ code }) => code)).toContain('surfaced-draft');
      floated++;
      const correction = firstOfBoth(sea);
      if (!correction || correction.pieces.length === 0) continue;
      hits++;
      const laden = corrected(sea, correction);
      const there = service.analyse(laden.replace(FRESH, SEA), fresh);
      expect({ seed, left: [...outOfLimits(there), ...fileFindings(there)] }).toEqual({ seed, left: [] });
      expect(there.surfaced).toEqual(correction.surfaced);
      expect(there.submerged).toEqual(correction.submerged);
      // The set is wrong for fresh water: that is why it comes out again.
      expect(outOfLimits(service.analyse(laden, fresh))).not.toEqual([]);
      const names = new Set(correction.parts.map(({ name }) => name));
      const home = service.analyse(withoutEntries(laden, splicesOf(sea, correction).length, names, trimmed), fresh);
      expect(outOfLimits(home)).toEqual([]);
      expect(home.surfaced).toEqual(fresh.surfaced);
    }
    expect(floated).toBe(24);
    expect(hits).toBeGreaterThan(15);
  });
});

/** The file with the entries of these names taken out line by line, as somebody would: what is left is what was. */
function withoutEntries(text: string, edits: number, names: ReadonlySet<string>, was: string): string {
  expect(edits).toBeGreaterThan(0);
  const lines = text.split('\n').filter(line => ![...names].some(name => line.includes(`name: ${name},`)));
  expect(lines.join('\n')).toBe(was);
  return lines.join('\n');
}
