import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { createDrawnEntries } from '../../server/core/drawing/drawnEntries.ts';
import { DESK } from '../../server/core/drawing/page.ts';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { createBoatService } from '../../server/service/service.ts';

const text = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
const VIEWS = ['surfaced-side', 'submerged-side', 'surfaced-section', 'surfaced-plan'] as const;

it('what was drawn before shows nowhere: a part on its way is drawn as in a sheet of its own', () => {
  const service = createBoatService();
  const atRest = service.analyse(text);
  const drawEntry = createDrawnEntries();
  for (const metres of [0.03, -0.02, 0.12, 0.03, -0.12]) {
    for (const page of [DESK, { ...DESK, wide: 600 }]) {
      const moved = service.moved(atRest, { key: JSON.stringify(['payload', 0]), by: { metres } }, () => null)!;
      const known = trimSheet(moved, { only: VIEWS, page, drawEntry }).pictures;
      expect(known.length).toBe(VIEWS.length);
      expect(known).toEqual(trimSheet(moved, { only: VIEWS, page }).pictures);
    }
  }
});

it('an entry is not drawn again while nothing in it changes', () => {
  const service = createBoatService();
  const drawEntry = createDrawnEntries();
  const entries = (metres: number): readonly string[] => {
    const moved = service.moved(
      service.analyse(text),
      { key: JSON.stringify(['payload', 0]), by: { metres } },
      () => null,
    )!;
    const { svg } = trimSheet(moved, { only: ['surfaced-side'], drawEntry }).pictures[0]!;
    return svg.match(/<g class="entry .*?<\/g>/gs)!;
  };
  const [before, after] = [entries(0.001), entries(0.002)];
  expect(after.length).toBe(before.length);
  expect(after.filter(entry => entry.includes('<g class="entry', 1))).toEqual([]);
  const changed = after.filter(entry => !before.includes(entry));
  // The battery itself, and shells and tanks with the water in them.
  expect(changed.length).toBeGreaterThan(0);
  expect(changed.filter(entry => !/class="entry (?:shell|tank)|&quot;payload&quot;,0\]/.test(entry))).toEqual([]);
});
