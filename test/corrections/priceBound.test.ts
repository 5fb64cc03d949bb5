import highsLoader from 'highs';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { broughtBy } from '../../server/core/corrections/balance/brought.ts';
import type { BalanceRow } from '../../server/core/corrections/balance/row.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import { slotSets } from '../../server/core/corrections/room/slots.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { service } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { isLong } from '../helpers/long.ts';
import { linearText } from './linearText.ts';

/*
 * What an offer of new pieces costs against the least that any pieces in any bays could cost for the same aim: every figure
 * at least as near to its middle as the offer brings it. The least is HiGHS's own (highs-js 1.15.3) over all bays at once,
 * pieces of any length in any number, so that no cutter can reach it quite.
 */

const highs = await highsLoader();

const BOATS = isLong ? 300 : 8;

const gramsOf = ({ pieces }: Correction): number =>
  pieces.reduce((sum, { mass, slot }) => sum + 1e3 * mass * (slot.material === 'lead' ? 1 : 30), 0);

/** Less is within what a scale shows, and its ratio says nothing, g. */
const LEAST = 2;

/** As wanted as the offer brings it, at no price. */
function asOffered(row: BalanceRow, { pieces }: Correction): BalanceRow {
  const brought = pieces.reduce((sum, piece) => sum + broughtBy(piece, row), 0);
  const { wanted } = row;
  if ('least' in wanted) return { ...row, wanted: { ...wanted, least: Math.min(wanted.least, brought), near: [] } };
  const slack = Math.max(Math.abs(wanted.value - brought), 1e-3 * wanted.slack);
  return { ...row, wanted: { value: wanted.value, slack, off: [{ size: slack, price: 0 }] } };
}

function ratioOf(analysis: Analysis, offer: Correction): number | null {
  const { boatToTrim, boat } = analysis;
  const rows = balancesOf(boatToTrim!, 'both', 0.75)(offer).map(row => asOffered(row, offer));
  const least = Math.min(
    ...slotSets(boat, false).map(slots => {
      const found = highs.solve(linearText(slots, rows));
      return found.Status === 'Optimal' ? found.ObjectiveValue : Number.POSITIVE_INFINITY;
    }),
  );
  const price = gramsOf(offer);
  return price < LEAST || !Number.isFinite(least) ? null : price / Math.max(least, LEAST);
}

const quantile = (sorted: readonly number[], part: number): number => sorted[Math.floor(part * (sorted.length - 1))]!;

describe('what new pieces cost', { timeout: 900_000 }, () => {
  test('is little over the least that any pieces in any bays could cost for the same aim', () => {
    const ratios: number[] = [];
    let previous: Analysis | undefined;
    for (let seed = 1000; seed < 1000 + BOATS; seed++) {
      const analysis = service.analyse(boatOutOfTrim(seed).text, previous);
      previous = analysis;
      const offer = analysis.corrections.all().find(({ kind, condition }) => kind === 'insert' && condition === 'both');
      const ratio = offer ? ratioOf(analysis, offer) : null;
      if (ratio !== null) ratios.push(ratio);
    }
    ratios.sort((a, b) => a - b);
    expect(ratios.length).toBeGreaterThan(0.6 * BOATS);
    expect(quantile(ratios, 0.5)).toBeLessThan(1.02);
    expect(quantile(ratios, 0.9)).toBeLessThan(1.15);
  });
});
