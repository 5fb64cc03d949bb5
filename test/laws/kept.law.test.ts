import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { valueAt } from '../../server/core/text/reading/values.ts';
import { service } from '../helpers/analysed.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText } from '../helpers/boatText.ts';
import { runsOf } from '../helpers/long.ts';
import { plainState } from '../helpers/plainState.ts';
import { PROBE } from '../helpers/probe.ts';

/** One thing that happens to a text while it is worked on. `at` (0..1) says where. */
interface Edit {
  readonly kind: 'number' | 'digit' | 'delete line' | 'repeat line' | 'swap lines' | 'comment' | 'word';
  readonly at: number;
  readonly figure: number;
}

const edit: fc.Arbitrary<Edit> = fc.record({
  kind: fc.constantFrom('number', 'number', 'number', 'delete line', 'repeat line', 'swap lines', 'comment', 'word'),
  at: fc.double({ min: 0, max: 0.9999, noNaN: true }),
  figure: fc.integer({ min: 1, max: 400 }),
});

function apply(text: string, { kind, at, figure }: Edit): string {
  if (kind === 'number' || kind === 'word' || kind === 'digit') {
    const found = [...text.matchAll(kind === 'word' ? /[a-z]{3,}/g : /\d+(?:\.\d+)?/g)];
    const match = found[Math.floor(at * found.length)];
    if (!match) return text;
    const finer = `${match[0]}${match[0].includes('.') ? '' : '.'}${figure}`;
    const instead = kind === 'number' ? String(figure) : kind === 'digit' ? finer : `${match[0]}x`;
    return text.slice(0, match.index) + instead + text.slice(match.index + match[0].length);
  }
  const lines = text.split('\n');
  const i = Math.floor(at * (lines.length - 1));
  const line = lines[i]!;
  const put: Readonly<Record<Exclude<Edit['kind'], 'number' | 'word' | 'digit'>, readonly string[]>> = {
    'delete line': [],
    'repeat line': [line, line],
    'swap lines': [lines[i + 1] ?? '', line],
    comment: ['# a note', line],
  };
  lines.splice(i, kind === 'swap lines' ? 2 : 1, ...put[kind]);
  return lines.join('\n');
}

/** All that an analysis says, as plain data. */
const said = (analysis: Analysis) => ({
  boat: analysis.boat,
  surfaced: plainState(analysis.surfaced),
  submerged: plainState(analysis.submerged),
  findings: analysis.findings.map(finding => ({ ...finding, marks: rangeOf(analysis.syntax, finding.place) })),
});

/** A figure with one more digit: what is typed most. */
const digit: fc.Arbitrary<Edit> = fc.record({
  kind: fc.constant('digit'),
  at: fc.double({ min: 0, max: 0.9999, noNaN: true }),
  figure: fc.integer({ min: 1, max: 9 }),
});

/** What the uncertainties leave open of every figure, by how much, and what makes most of it. */
const leftOpen = (analysis: Analysis) =>
  Object.entries(analysis.settled.all().uncertainties?.conditions ?? {}).flatMap(([condition, figures]) =>
    Object.entries(figures ?? {}).flatMap(([figure, uncertainty]) => {
      if (!uncertainty) return [];
      const { sigma, rough, shares } = uncertainty;
      const most = shares.filter(({ share }) => share > 0.01).map(({ share }) => share.toFixed(5));
      return [{ what: { condition, figure, rough, most }, sigma }];
    }),
  );

describe('what is kept from the analysis before', { timeout: 120_000 }, () => {
  it('never shows: after any edits all is as in a fresh one', () => {
    let hits = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.constant(PROBE),
          arbitrarySub({ offset: 2 }).map(sub => subText(sub)),
        ),
        fc.array(edit, { minLength: 1, maxLength: 4 }),
        (start, edits) => {
          let text = start;
          let kept = service.analyse(text);
          for (const change of edits) {
            text = apply(text, change);
            kept = service.analyse(text, kept);
          }
          if (text !== start) hits++;
          expect(said(kept)).toEqual(said(service.analyse(text)));
        },
      ),
      { numRuns: 40 },
    );
    expect(hits).toBeGreaterThan(30);
  });

  it('never shows in uncertainties either, heard after every edit', () => {
    let heard = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.constant(PROBE),
          arbitrarySub({ offset: 2 }).map(sub => subText(sub)),
        ),
        fc.array(fc.oneof(edit, digit), { minLength: 1, maxLength: 4 }),
        (start, edits) => {
          let text = start;
          let kept = service.analyse(text);
          kept.settled.all();
          for (const change of edits) {
            text = apply(text, change);
            kept = service.analyse(text, kept);
            const [ours, fresh] = [leftOpen(kept), leftOpen(service.analyse(text))];
            expect(ours.map(({ what }) => what)).toEqual(fresh.map(({ what }) => what));
            for (const [i, { sigma }] of ours.entries())
              expect(Math.abs(sigma - fresh[i]!.sigma)).toBeLessThanOrEqual(1e-6 * fresh[i]!.sigma);
            heard += ours.length;
          }
        },
      ),
      runsOf(12, 100),
    );
    expect(heard).toBeGreaterThan(100);
  });

  it('does not show of an entry that was written alike behind an open bracket, where it says something else', () => {
    const text = boatText`
      boat: T
      conditions:
        - name: awash
          tanks: [{ tank: main, fill: 40 % }]
        - name: without the mast
          without: [long mast]
    `;
    const open = service.analyse(text.replace('40 % }]', 'its: {, trim: 2° }'));
    expect(valueAt(open.syntax, ['conditions', 1, 'name'])).not.toBe('without the mast');
    expect(said(service.analyse(text, open))).toEqual(said(service.analyse(text)));
  });

  it('is used: a change of a limit floats nothing anew, a change of one part makes one new body', () => {
    const before = service.analyse(PROBE);
    const limits = service.analyse(PROBE.replace('trim: 0.5°', 'trim: 0.1°'), before);
    expect(limits.surfaced).toBe(before.surfaced);
    expect(limits.submerged).toBe(before.submerged);
    const battery = service.analyse(PROBE.replace('mass: 800 g', 'mass: 801 g'), before);
    expect(battery.surfaced).not.toBe(before.surfaced);
    const same = battery.bodies.weights.filter(weight => before.boat.payload.some(part => part === weight.entry));
    expect(same.map(weight => weight.entry.name)).toEqual(['floor lead']);
    expect(battery.bodies.displacers[0]).toBe(before.bodies.displacers[0]);
    expect(battery.bodies.tanks[0]).toBe(before.bodies.tanks[0]);
  });
});
