import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Correction, Recut } from '../../server/core/corrections/correction.ts';
import { splice } from '../../server/core/text/editing/edit.ts';
import { fileFindings, heard, service, toldSince } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { boatText } from '../helpers/boatText.ts';
import { corrected, firstOfBoth, outOfLimits, splicesOf } from '../helpers/corrected.ts';
import { probe, probeWith } from '../helpers/probe.ts';

const recutIn = (analysis: Analysis): Recut | undefined =>
  analysis.corrections.all().find(correction => correction.kind === 'recut');

/** The lines of the payload, one an entry. */
const entryLines = (text: string): readonly string[] => {
  const lines = text.split('\n');
  return lines.slice(lines.indexOf('payload:') + 1, lines.indexOf('bays:'));
};

/** An entry's line but for what recutting changes: its mass, and where it lies. */
const withoutPlace = (line: string): string =>
  line
    .replace(/\b(mass|station): [^,}]+/g, '$1: …')
    .replace(/, offset: [^,}]+(?=[,} ])/, '')
    .trimEnd();

/** Names of the entries that a correction changes in one way. */
const changed = ({ changes }: Correction, kind: 'replace' | 'remove', { boat }: Analysis): ReadonlySet<string> =>
  new Set(
    changes.flatMap(change => {
      if (change.kind !== kind) return [];
      const path = change.kind === 'remove' ? change.path : 'path' in change.place ? change.place.path : [];
      return boat.payload.filter(part => part.path[1] === path[1]).map(({ name }) => name);
    }),
  );

interface Case {
  readonly seed: number;
  readonly text: string;
  readonly analysis: Analysis;
  readonly correction: Correction;
}

/** Boats trimmed by the program, each with a lighter battery afterwards. */
function casesOf(count: number): readonly Case[] {
  const cases: Case[] = [];
  let previous: Analysis | undefined;
  for (let seed = 0; seed < count; seed++) {
    previous = service.analyse(boatOutOfTrim(seed).text, previous);
    const first = firstOfBoth(previous);
    if (!first) continue;
    const text = corrected(previous, first).replace(
      /battery, mass: ([\d.]+)/,
      (_, mass) => `battery, mass: ${Number(mass) - 12}`,
    );
    const analysis = service.analyse(text, previous);
    const correction = recutIn(analysis);
    if (correction) cases.push({ seed, text, analysis, correction });
  }
  return cases;
}

const cases = casesOf(40);

describe('recutting loose pieces', { timeout: 60_000 }, () => {
  test('gives what it says', () => {
    expect(cases.length).toBeGreaterThan(15);
    for (const { seed, analysis, correction } of cases) {
      const again = service.analyse(corrected(analysis, correction), analysis);
      expect({ seed, left: [...outOfLimits(again), ...toldSince(analysis, again)] }).toEqual({ seed, left: [] });
      const { surfaced, submerged } = again;
      if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') throw new Error('it floats and hangs');
      if (correction.surfaced.status !== 'afloat' || correction.submerged.status !== 'neutral') throw new Error('so');
      expect(surfaced.attitude.draft).toBeCloseTo(correction.surfaced.attitude.draft, 9);
      expect(surfaced.attitude.trim).toBeCloseTo(correction.surfaced.attitude.trim, 9);
      expect(surfaced.attitude.heel).toBeCloseTo(correction.surfaced.attitude.heel, 9);
      expect(submerged.trim).toBeCloseTo(correction.submerged.trim, 9);
      expect(submerged.fill).toBeCloseTo(correction.submerged.fill, 9);
    }
  });

  test('touches nothing but the entries that it names', () => {
    let recut = 0;
    let takenOut = 0;
    for (const { text, analysis, correction } of cases) {
      const now = splice(text, splicesOf(analysis, correction));
      const [before, after] = [entryLines(text), entryLines(now)];
      const fixed = analysis.boat.payload.filter(part => part.fixed).length;
      expect(after.slice(0, fixed)).toEqual(before.slice(0, fixed));
      // All outside the payload stays as it is.
      expect(now.slice(0, now.indexOf('payload:'))).toBe(text.slice(0, text.indexOf('payload:')));
      expect(now.split(/^bays:/m)[1]).toBe(text.split(/^bays:/m)[1]);
      for (const name of changed(correction, 'replace', analysis)) {
        recut++;
        const line = (lines: readonly string[]) => lines.filter(each => each.includes(name)).map(withoutPlace);
        // A recut piece keeps its name, its form, its height and all that is written beside it.
        expect(line(after)[0]).toBe(line(before)[0]);
      }
      for (const name of changed(correction, 'remove', analysis)) {
        takenOut++;
        expect(service.analyse(now, analysis).boat.payload.map(part => part.name)).not.toContain(name);
      }
    }
    expect(recut).toBeGreaterThan(10);
    expect(takenOut).toBeGreaterThan(0);
  });

  test('keeps every character that need not change, in any layout', () => {
    // 40 g of loose lead too far aft on an otherwise trimmed boat, written in brackets with a comment.
    const loose =
      '{ name: trimmer, material: lead, fixed: false, mass: 40 g, box: 12 x 6 mm, station: 300 to 349 mm, height: 5 mm, in: hold }   # cut by eye';
    const analysis = heard(
      probeWith(loose).replace(
        boatText`
          mass: 600 g
              station: 120`,
        boatText`
          mass: 560 g
              station: 120`,
      ),
    );
    const correction = recutIn(analysis)!;
    const changed = corrected(analysis, correction);
    const line = changed.split('\n').find(each => each.includes('trimmer') || each.includes('cut by eye'));
    if (correction.removed.length === 0) {
      expect(line).toMatch(
        /^ {2}- \{ name: trimmer, material: lead, fixed: false, mass: [\d.]+ g, box: 12 x 6 mm, station: \d+ to \d+ mm, height: 5 mm, in: hold(, offset: -?\d+ mm)? \} {3}# cut by eye$/,
      );
    } else {
      expect(line).toBeUndefined();
    }
    expect([...outOfLimits(heard(changed)), ...fileFindings(heard(changed))]).toEqual([]);
  });

  test('shortens a loose strip where it lies, when it lies in no bay', () => {
    // The floor lead 60 g too heavy, the rest as it should be. Of the 0.5 mm of draft, 40 g each (400 x 100 mm of
    // waterplane), the programme may use up three quarters, 15 g, either way, and takes the lighter.
    const analysis = heard(
      probe(
        [
          boatText`
            mass: 600 g
                station: 120`,
          boatText`
            mass: 660 g
                material: lead
                fixed: false # sawn
                box: 60 x 6 mm
                station: 120`,
        ],
        ['trim: 0.5°', 'trim: { surfaced: 0.5°, submerged: 4° }'],
        ['draft: 2 mm', 'draft: 0.5 mm'],
      ),
    );
    const correction = recutIn(analysis)!;
    expect(correction.title).toMatch(/^Recut “floor lead” to (58|59|60)\d g: both conditions within limits$/);
    const text = corrected(analysis, correction);
    // Nothing but its mass and its place is written anew.
    const plain = (whole: string) =>
      whole.replace(/(mass: )\d+( g\n {4}material)|(station: )\d+ to \d+( mm\n {4}height: 20)/g, '$1$2$3$4');
    expect(plain(text)).toBe(plain(analysis.syntax.text));
    const [before, after] = [analysis, heard(text)].map(
      ({ boat }) => boat.payload.find(part => part.name === 'floor lead')!,
    );
    expect(after!.mass / (after!.to[0] - after!.from[0])).toBeCloseTo(
      before!.mass / (before!.to[0] - before!.from[0]),
      2,
    );
    expect([...outOfLimits(heard(text)), ...fileFindings(heard(text))]).toEqual([]);
  });

  test('gives a new piece no name that one already has', () => {
    // 150 g short amidships: lead goes into both bays. What lies in the bow already bears the name that the stern's would.
    const loose =
      '{ name: lead stern bay, material: lead, fixed: false, mass: 16.3 g, box: 12 x 6 mm, station: 40 to 60 mm, height: 5 mm, in: hold }';
    const analysis = heard(probeWith(loose).replace('mass: 800 g', 'mass: 650 g'));
    const correction = recutIn(analysis)!;
    expect(correction.title).toMatch(
      /^Recut “lead stern bay” to \d+ g, insert \d+ g lead in “stern bay”: both within limits$/,
    );
    expect(correction.parts.map(({ name }) => name).sort()).toEqual(['lead stern bay', 'lead stern bay 2']);
    const again = heard(corrected(analysis, correction));
    expect([...outOfLimits(again), ...fileFindings(again)]).toEqual([]);
  });
});
