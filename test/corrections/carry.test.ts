import { describe, expect, test } from 'vitest';
import { correctText } from '../../server/core/report/correctText.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { plainPaint } from '../../server/core/report/rows.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { corrected, firstOfBoth, outOfLimits } from '../helpers/corrected.ts';
import { PROBE, probe } from '../helpers/probe.ts';

/*
 * The probe lies well. With 100 g of dummy torpedo 120 mm forward of its middle it trims bow down: 12 000 g·mm, that lead in
 * the stern bay (80 to 180 mm aft of the middle) holds there, and would spoil surfaced and submerged.
 */
const CONDITION = boatText`
  conditions:
    - name: with the dummy torpedo # for shows
      aboard:
        - { name: dummy torpedo, mass: 100 g, station: 80 mm, height: 20 mm, in: hold }
      limits: { trim: 0.3°, heel: 1° }
`;

const ofTorpedo = (text: string) => heard(`${text}${CONDITION}`);

describe('what a condition of the builder’s own lacks', () => {
  test('is offered to be carried in that alone, and nothing else changes', () => {
    const analysis = ofTorpedo(PROBE);
    const [offer] = analysis.corrections.all();
    expect(offer!.kind).toBe('carry');
    expect(offer!.title).toMatch(
      /^For “with the dummy torpedo” carry \d+ g lead in “stern bay”: all conditions within limits$/,
    );
    const [piece] = offer!.carried[0]!.pieces;
    const moment = 1e6 * piece!.mass * ((piece!.station[0] + piece!.station[1]) / 2 - 0.2);
    // 2100 g at a metacentric height of about 240 mm: 0.3° are 2640 g·mm.
    expect(Math.abs(moment - 12_000)).toBeLessThan(2700);
    const text = corrected(analysis, offer!);
    expect(text).toContain('    - { name: dummy torpedo,');
    expect(text).toContain('# for shows');
    const again = heard(text);
    expect(outOfLimits(again)).toEqual([]);
    expect(again.boat.payload.map(({ mass }) => mass)).toEqual(analysis.boat.payload.map(({ mass }) => mass));
    const [then, now] = [offer!.others[0]!.state, again.others[0]!.state];
    if (then.status !== 'afloat' || now.status !== 'afloat') throw new Error('it does not float');
    expect(now.attitude.trim).toBeCloseTo(then.attitude.trim, 6);
  });

  test('comes beside what the rest asks, where that is out too', () => {
    const analysis = ofTorpedo(probe(['150 to 250 mm', '157 to 257 mm']));
    const offer = firstOfBoth(analysis)!;
    expect(offer.kind).toBe('carry');
    expect(offer.title).toMatch(
      /^Move “battery” 7 mm forward, for “with the dummy torpedo” carry .*: all (conditions )?within limits$/,
    );
    expect(outOfLimits(heard(corrected(analysis, offer)))).toEqual([]);
  });

  test('is cut for the bench so that it comes out again, and told to machines', () => {
    const analysis = ofTorpedo(PROBE);
    const words = correctText(analysis, true, plainPaint);
    expect(words).toMatch(
      /Cut list, aboard for “with the dummy torpedo” only\n {2}lead stern bay with the dummy torpedo: /,
    );
    expect(words).toContain('fix it so that it comes out again');
    expect(words).toContain('Lead is poisonous');
    const [first] = jsonReport(analysis).corrections;
    expect(first!.carried).toEqual([
      { condition: 'with the dummy torpedo', entries: [expect.objectContaining({ material: 'lead', in: 'hold' })] },
    ]);
    expect(first!.entries).toEqual([]);
  });

  test('is no offer where pieces that are always aboard do it', () => {
    // Out by so little that a piece in the stern bay suits all three.
    const analysis = heard(`${PROBE}${CONDITION.replace('100 g', '24 g')}`);
    expect(firstOfBoth(analysis)?.kind).not.toBe('carry');
  });
});
