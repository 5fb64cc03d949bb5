import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FileOrigin } from '../../schema/places.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { moveAlong } from '../../server/core/corrections/room/shift.ts';
import { withFiledJson } from '../../server/core/report/conditionJson.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { corrected } from '../helpers/corrected.ts';
import { countedFrom } from '../helpers/countedFrom.ts';
import { isLong } from '../helpers/long.ts';

const STATIONS = ['bow', 'stern', 'aft of midships', 'forward of midships'] as const;

/** The boat of a file by the bow tip and the baseline, with its places counted from elsewhere. */
function inOrigin(analysis: Analysis, way: Pick<FileOrigin, 'stations' | 'heights'>): string {
  const { boat, syntax } = analysis;
  const { bow, stern } = boat.waterline!;
  const origin = { ...way, length: boat.length, waterline: (bow + stern) / 2 };
  return countedFrom(syntax.text, { ...boat.units, scale: boat.scale }, origin);
}

/** What the boat does; in long mode the whole report for machines, without what is said in words. */
const figuresOf = (analysis: Analysis): unknown =>
  JSON.parse(
    JSON.stringify(isLong ? jsonReport(analysis) : withFiledJson(analysis), (key, value) => {
      if (['message', 'line', 'column', 'title', 'entries', 'changes', 'edits', 'text'].includes(key)) return undefined;
      if (typeof value !== 'number') return value;
      return Math.abs(value) < 1e-3 ? 0 : Number(value.toPrecision(5));
    }),
  );

const samples = ['sprat', 'teal', 'grebe', 'dunlin', 'curlew', 'petrel'];

describe('a boat whose places count from elsewhere', { timeout: 600_000 }, () => {
  it.each(samples.slice(0, isLong ? 6 : 1))('%s has the same figures', name => {
    const filed = analysed(readFileSync(`samples/${name}.boat.yaml`, 'utf8'));
    const ways = STATIONS.flatMap(stations =>
      (['baseline', 'waterline'] as const).map(heights => ({ stations, heights })),
    );
    for (const way of ways.slice(isLong ? 1 : 7)) {
      const text = inOrigin(filed, way);
      const counted = analysed(text);
      expect(counted.boat.units.origin, text).toMatchObject(way);
      expect(figuresOf(counted), `${JSON.stringify(way)} ${text}`).toEqual(figuresOf(filed));
    }
  });
  it('has a piece written as it counts', () => {
    const filed = analysed(readFileSync('samples/sprat.boat.yaml', 'utf8'));
    const counted = analysed(inOrigin(filed, { stations: 'stern', heights: 'waterline' }));
    const [bays, others] = [filed, counted].map(({ boat }) => boat.bays.map(({ from, to }) => [...from, ...to]));
    for (const [i, bay] of bays!.entries())
      for (const [k, at] of bay.entries()) expect(others![i]![k]).toBeCloseTo(at, 9);
    const moved = moveAlong(counted.boat.payload[0]!, 0.025, counted.boat)!;
    // The battery lies 2 1/2 to 4 3/4 in aft of the bow tip of a hull of 15 in.
    expect(moved.flatMap(change => ('text' in change ? change.text : []))).toEqual(['235.35 to 292.5 mm']);
  });
  it.runIf(isLong)('is corrected by the same pieces, written as the file counts', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const filed = analysed(boatOutOfTrim(seed).text);
      const stations = STATIONS[1 + (seed % 3)]!;
      const counted = analysed(inOrigin(filed, { stations, heights: 'waterline' }));
      const [one, other] = [filed, counted].map(analysis => {
        const [first] = analysis.corrections.all();
        return (
          first &&
          analysed(corrected(analysis, first)).boat.payload.map(({ name, mass, from, to }) => ({
            name,
            mass,
            from: [...from],
            to: [...to],
          }))
        );
      });
      expect(
        other?.map(({ name }) => name),
        `boat ${seed}`,
      ).toEqual(one?.map(({ name }) => name));
      for (const [k, piece] of (one ?? []).entries()) {
        const [here, there] = [piece, other![k]!].map(({ mass, from, to }) => [mass, ...from, ...to]);
        // The painted waterline need not lie on a mark of the tape: heights over it are written to a tenth.
        for (const [n, value] of here!.entries()) expect(there![n]).toBeCloseTo(value, 3.9);
      }
    }
  });
});
