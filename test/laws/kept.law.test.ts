import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { valueAt } from '../../server/core/text/reading/values.ts';
import { service } from '../helpers/analysed.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText } from '../helpers/boatText.ts';
import { plainState } from '../helpers/plainState.ts';
import { PROBE } from '../helpers/probe.ts';

/** One thing that happens to a text while it is worked on. `at` (0..1) says where. */
interface Edit {
  readonly kind: 'number' | 'delete line' | 'repeat line' | 'swap lines' | 'comment' | 'word';
  readonly at: number;
  readonly figure: number;
}

const edit: fc.Arbitrary<Edit> = fc.record({
  kind: fc.constantFrom('number', 'number', 'number', 'delete line', 'repeat line', 'swap lines', 'comment', 'word'),
  at: fc.double({ min: 0, max: 0.9999, noNaN: true }),
  figure: fc.integer({ min: 1, max: 400 }),
});

function apply(text: string, { kind, at, figure }: Edit): string {
  if (kind === 'number' || kind === 'word') {
    const found = [...text.matchAll(kind === 'number' ? /\d+(?:\.\d+)?/g : /[a-z]{3,}/g)];
    const match = found[Math.floor(at * found.length)];
    if (!match) return text;
    const instead = kind === 'number' ? String(figure) : `${match[0]}x`;
    return text.slice(0, match.index) + instead + text.slice(match.index + match[0].length);
  }
  const lines = text.split('\n');
  const i = Math.floor(at * (lines.length - 1));
  const line = lines[i]!;
  const put: Readonly<Record<Exclude<Edit['kind'], 'number' | 'word'>, readonly string[]>> = {
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
