import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { proposeBays } from '../../server/core/corrections/room/proposeBays.ts';
import { findSlots } from '../../server/core/corrections/room/slots.ts';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import type { Revolved } from '../../server/core/geometry/form/form.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { heard, service, toldSince } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { boatText } from '../helpers/boatText.ts';
import { corrected, firstOfBoth, outOfLimits } from '../helpers/corrected.ts';
import { isLong } from '../helpers/long.ts';
import { probe } from '../helpers/probe.ts';

describe('a bay that is partly taken', () => {
  // 40 mm of the bow bay's 100 are taken up, across the whole of it: 30 mm are left before and 30 behind.
  const text = probe(
    ['150 to 250', '155 to 255'],
    [
      'bays:',
      boatText`
          - { name: bolt, mass: 1 g, box: 60 x 8 mm, station: 50 to 90 mm, height: 6 mm, in: hold }
        bays:`,
    ],
  );
  const analysis = heard(text);

  test('gives the stretches that are free', () => {
    const bow = findSlots(analysis.boat).filter(({ bay }) => bay.name === 'bow bay');
    const stretches = bow.map(({ station }) => station.map(metres => Math.round(metres * 1e6) / 1e3));
    expect(stretches).toEqual([
      [20, 50],
      [90, 120],
    ]);
  });

  test('takes pieces in those alone', () => {
    const pieces = analysis.corrections.all().flatMap(correction => correction.pieces);
    const inBow = pieces.filter(({ slot }) => slot.bay.name === 'bow bay');
    expect(inBow.length).toBeGreaterThan(0);
    for (const { station } of inBow) expect(station[1] <= 0.05 + 1e-9 || station[0] >= 0.09 - 1e-9).toBe(true);
  });

  test('is no bay where the strip does not fit, lying or on edge', () => {
    const thin = heard(probe(['strip: 12 x 6 mm', 'strip: 12 x 9 mm']));
    expect(findSlots(thin.boat)).toEqual([]);
    // 6 broad and 12 deep does not fit the bays, 8 deep, but for being laid flat.
    const onEdge = heard(probe(['strip: 12 x 6 mm', 'strip: 6 x 12 mm']));
    expect(findSlots(onEdge.boat).map(({ breadth, depth }) => [breadth, depth])).toEqual([
      [0.012, 0.006],
      [0.012, 0.006],
    ]);
  });
});

describe('a file without stock', { timeout: 60_000 }, () => {
  test('is corrected with lead and foam of the handbook, as deep as the bays, as broad or half as broad', () => {
    let out = 0;
    let mended = 0;
    let halves = 0;
    let previous: Analysis | undefined;
    for (let seed = 0; seed < (isLong ? 35 : 7); seed++) {
      const analysis = service.analyse(boatOutOfTrim(seed, { stock: 'block' }).text, previous);
      previous = analysis;
      if (outOfLimits(analysis).length === 0) continue;
      out++;
      const correction = firstOfBoth(analysis);
      if (!correction) continue;
      mended++;
      for (const { slot } of correction.pieces) {
        const parts = (slot.bay.to[1] - slot.bay.from[1]) / slot.breadth;
        expect(parts).toBeCloseTo(Math.round(parts), 9);
        halves += parts > 1.5 ? 1 : 0;
        expect(slot.depth).toBeCloseTo(slot.bay.to[2] - slot.bay.from[2], 9);
        // Lead of 11340 kg/m3 (D-01, from memory); foam of 30 stands between those that are sold (common practice, no
        // source).
        expect(slot.density).toBe(slot.material === 'lead' ? 11340 : 30);
      }
      const again = service.analyse(corrected(analysis, correction), analysis);
      expect({ seed, left: [...outOfLimits(again), ...toldSince(analysis, again)] }).toEqual({ seed, left: [] });
    }
    // A millimetre of a slab as broad as its bay is 3 g: not all can be trimmed so coarsely.
    expect(mended).toBeGreaterThan(0.8 * out);
    // Only the narrower ones hold a list.
    expect(halves).toBeGreaterThan(0);
  });
});

/** The boat without its bays. */
const withoutBays = (text: string) => text.replace(/^bays:\n(?: {2}- .*\n)+/m, '');

/** Radius of the shell at a station, m, read off its own profile. */
function radiusOf({ origin, profile }: Revolved, station: number): number {
  const at = station - origin[0];
  const next = profile.findIndex(([s]) => s >= at);
  const [[s0, r0], [s1, r1]] = [profile[Math.max(0, next - 1)]!, profile[next]!];
  return s1 > s0 ? r0 + ((r1 - r0) * (at - s0)) / (s1 - s0) : r1;
}

describe('a file without bays', { timeout: 60_000 }, () => {
  test('is offered some of the hull’s own room: inside the shell, clear of the compartments, marked as proposals', () => {
    let inserted = 0;
    let mended = 0;
    let previous: Analysis | undefined;
    for (let seed = 0; seed < (isLong ? 35 : 7); seed++) {
      const before = service.analyse(withoutBays(boatOutOfTrim(seed).text), previous);
      previous = before;
      expect(before.boat.bays).toEqual([]);
      expect(before.corrections.all().flatMap(({ pieces }) => pieces)).toEqual([]);
      const offer = proposeBays(before.boat)!;
      expect(offer.title).toMatch(/^Add \d proposed bays for lead and foam: check that there is room$/);
      const text = splice(before.syntax.text, applyChanges(before.syntax, offer.changes)!);
      const after = service.analyse(text, before);
      expect(toldSince(before, after)).toEqual([]);
      expect(after.boat.bays.length).toBe(offer.changes.length);
      expect(text.match(/# proposed by the program: check that there is room/g)).toHaveLength(offer.changes.length);
      const shell = before.boat.shells[0]!.form as Revolved;
      for (const bay of after.boat.bays) {
        inserted++;
        // The shell is narrowest at one of the bay's ends or at a corner of its own profile between them.
        const stations = [bay.from[0], bay.to[0], ...shell.profile.map(([s]) => s + shell.origin[0])];
        for (const station of stations.filter(s => s >= bay.from[0] && s <= bay.to[0])) {
          for (const height of [bay.from[2], bay.to[2]]) {
            const reach = Math.hypot(bay.to[1], height - shell.origin[2]);
            expect(reach, `${seed} ${bay.name}`).toBeLessThan(radiusOf(shell, station));
          }
        }
        for (const compartment of before.boat.compartments) {
          const { from, to } = boundsOf(compartment.form);
          const meets = [0, 1, 2].every(axis => bay.from[axis]! < to[axis]! && bay.to[axis]! > from[axis]!);
          expect(meets, `${seed} ${bay.name}`).toBe(false);
        }
      }
      if (outOfLimits(after).length > 0 && firstOfBoth(after)) mended++;
    }
    expect(inserted).toBeGreaterThan(isLong ? 100 : 18);
    expect(mended).toBeGreaterThan(isLong ? 15 : 2);
  });

  test('that has bays is offered none', () => {
    expect(proposeBays(heard(boatOutOfTrim(1).text).boat)).toBeNull();
  });
});
