import { type Path, pathKey } from '../../../../schema/path.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { conditionsOf } from '../../conditions/loadingCondition.ts';
import { transitSteps } from '../../conditions/transit.ts';
import type { Correction } from '../../corrections/correction.ts';
import { conditionOf, type Finding } from '../../findings/finding.ts';
import { type Gauge, type GaugeStanding, gaugesOf, type ToGauge } from '../../judges/gauges.ts';
import { type Verdict, verdictOf } from '../../judges/verdict.ts';
import { inSteps } from '../../steps/steps.ts';
import { locate, locateNearest } from '../../text/reading/locate.ts';
import { plusMinus } from '../../wording/withUncertainty.ts';
import type { Markup } from '../markup.ts';
import { gaugeBar } from './gaugeBar.ts';

/** A gauge to show: words to set in type, and the bar between them. */
export interface DrawnGauge {
  readonly name: string;
  readonly heading: string;
  readonly title: string;
  /** "12.2° bow down ± 6.9°". */
  readonly value: string;
  /** What it would be with the proposal; null without one. */
  readonly proposed: string | null;
  /** "limit 1°". */
  readonly limit: string;
  /** What lies to the left and to the right on the bar. */
  readonly ends: readonly [left: string, right: string];
  readonly standing: GaugeStanding;
  /** “✓ ok”, “○ open” or “✗ out”: the same by sign and word as by shape and colour. */
  readonly verdict: string;
  /** The place in the file that a click goes to: what is said of it, or its limit; null where the file has neither. */
  readonly path: string | null;
  /** A whole `<svg>` element. */
  readonly svg: Markup;
}

/** The boat at a glance: one line, and every limit with what stands against it. */
export interface Glance {
  readonly verdict: Verdict;
  readonly gauges: readonly DrawnGauge[];
  /** What the sign of an open figure says; empty where none is open. */
  readonly legend: string;
}

const LEGEND = '○ open: what is uncertain in the file leaves open whether it is within its limit.';

/** The verdict and the strip of gauges; with what is proposed where a correction is given. */
export function glanceAt(analysis: Analysis, correction: Correction | null): Glance {
  const { scheme, uncertainties, withTrials, file } = analysis;
  const gauges = gaugesOf(analysis, {
    figures: scheme.figures,
    uncertainties,
    proposed: correction && corrected(analysis, correction),
  });
  const errors = file.findings.filter(({ severity }) => severity === 'error').length;
  return {
    verdict: verdictOf(analysis, gauges, { errors, withTrials }),
    gauges: gauges.map(gauge => drawn(gauge, analysis)),
    legend: gauges.some(({ standing }) => standing === 'open') ? LEGEND : '',
  };
}

function corrected({ kept }: Analysis, correction: Correction): ToGauge {
  const { boat, surfaced, submerged } = correction;
  const bodies = assembleBodies(boat, kept.cache);
  const transit = inSteps(() => transitSteps(bodies, surfaced, submerged, boat.length));
  return { boat, conditions: conditionsOf(correction), transit };
}

function drawn(gauge: Gauge, analysis: Analysis): DrawnGauge {
  const { name, heading, title, now, why, sigmaWords, proposed, limitWords, ways, standing } = gauge;
  const value = now === null ? why : sigmaWords === null ? now.shown : plusMinus(now.shown, sigmaWords);
  const path = placeOf(gauge, analysis);
  return {
    name,
    heading,
    title,
    value,
    proposed: proposed?.shown ?? null,
    limit: `limit ${limitWords}`,
    ends: ways ? [ways[1], ways[0]] : ['less', 'more'],
    standing,
    verdict: { in: '✓ ok', open: '○ open', out: '✗ out' }[standing],
    path: path && pathKey(path),
    svg: gaugeBar(gauge),
  };
}

/** Where what is out is told; else where its limit stands in the file. */
function placeOf({ finding, limitKeys: [key, condition], standing }: Gauge, analysis: Analysis): Path | null {
  const isOfIt = (one: Finding): boolean => one.code === finding && [null, condition].includes(conditionOf(one));
  const said = standing === 'out' ? (analysis.said.ofBoat.find(isOfIt) ?? analysis.findings.find(isOfIt)) : undefined;
  if (said && said.place.on !== 'text') return said.place.path;
  const limit = locateNearest(analysis.syntax, key === undefined ? ['limits'] : ['limits', key, condition]).path;
  return limit.length > 0 ? limit : locate(analysis.syntax, ['hull']) ? ['hull'] : null;
}
