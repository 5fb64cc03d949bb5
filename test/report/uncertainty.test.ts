import { describe, expect, it } from 'vitest';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { heard } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

describe('uncertainty in the report for machines', () => {
  const report = jsonReport(heard(probe()));

  it('has one standard uncertainty and the largest contributors of every figure of both conditions', () => {
    const { surfaced, submerged } = report.uncertainty;
    for (const figure of Object.keys(surfaced!)) expect(report.surfaced).toHaveProperty(figure);
    for (const figure of Object.keys(submerged!)) expect(report.submerged).toHaveProperty(figure);
    for (const uncertainty of [...Object.values(surfaced!), ...Object.values(submerged!)]) {
      expect(uncertainty.sigma).toBeGreaterThan(0);
      expect(uncertainty.contributors.length).toBeGreaterThan(0);
      const shares = uncertainty.contributors.map(({ share }) => share);
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-9);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
    }
  });

  it('is in the units of the figures', () => {
    // 800 g weighed to 0.5 %: 4 g, which sink the barge of 400 cm2 by 0.1 mm. A hold deeper by 0.5 mm displaces 20 ml more,
    // which a tank of 990 ml takes up.
    const { surfaced, submerged } = report.uncertainty;
    const changeBy = (
      words: string,
      uncertainty: { readonly contributors: readonly { input: string; change: number }[] },
    ) => uncertainty.contributors.find(({ input }) => input === words)!.change;
    expect(changeBy('mass of “battery”', surfaced!.draft!)).toBeCloseTo(0.1, 3);
    expect(changeBy('depth of “hold”', submerged!.fill!)).toBeCloseTo(20 / 990, 5);
  });

  it('says where its contributors stand', () => {
    const { contributors } = report.uncertainty.submerged!.trim!;
    expect(contributors.map(({ path }) => path)).toContainEqual(['payload', 0, 'station']);
  });

  it('holds the findings that follow from it', () => {
    expect(report.findings.map(({ code }) => code)).toEqual(expect.arrayContaining(['cannot-tell', 'weigh-next']));
  });

  it('is null while the file is faulty', () => {
    const { uncertainty } = jsonReport(heard(probe(['mass: 800 g', 'mass: heavy'])));
    expect(uncertainty).toEqual({ surfaced: null, submerged: null, tanks: null });
  });
});
