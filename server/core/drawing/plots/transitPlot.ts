import type { Analysis } from '../../analysis/analysis.ts';
import type { TransitStep } from '../../conditions/transit.ts';
import { askedInTransit } from '../../figures/transitTable.ts';
import { heelWords, lengthText, percentText, trimWords } from '../../wording/numbers.ts';
import { element, type Markup, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { type Chart, type ChartAxis, chartDot, chartOf, curve, curveKeys, type PlotBox, shade } from './chart.ts';
import { plotPicture } from './plotPicture.ts';
import { inDegrees, lengthPlotUnit, percent } from './plotUnits.ts';

const LEFT = 46;

/** Trim and heel, draft and metacentric height on the way down, against the fill of the tanks; null for a boat that does not dive. */
export function transitPlot({ boat, transit: steps }: Analysis, width: number): Picture | null {
  const right = width - 14;
  const last = steps.at(-1);
  if (!last || steps.length < 2) return null;
  const { units } = boat;
  const asked = askedInTransit(boat.limits);
  const length = lengthPlotUnit(units);
  const fills: ChartAxis = {
    values: [0, percent.of(last.fill)],
    words: '',
    isExact: true,
    ticks: 6,
    tickWords: value => `${value} %`,
  };
  const box = (top: number, bottom: number): PlotBox => ({ left: LEFT, right, top, bottom });
  const angles = steps.flatMap(step => [inDegrees.of(step.trim), inDegrees.of(step.heel)]);
  const limit = inDegrees.of(asked.trim);
  const reach = Math.max(...angles.map(Math.abs), limit) * 1.1;
  const tilt = chartOf(box(62, 152), fills, {
    values: [-reach, reach],
    words: 'trim and heel, °',
    ends: ['bow down, to port', 'bow up, to starboard'],
    ticks: 4,
  });
  const drafts = steps.flatMap(({ draft }) => (draft === null ? [] : [length.of(draft)]));
  const sinking = chartOf(box(192, 262), fills, { values: drafts, words: `draft, ${length.name}`, ticks: 4 });
  const heights = steps.map(({ gm }) => length.of(gm));
  const least = length.of(asked.gm);
  const stiffness = chartOf(box(302, 372), fills, {
    values: [...heights, least, 0],
    words: `metacentric height, ${length.name}`,
    ticks: 4,
  });
  const at = (step: TransitStep): number => percent.of(step.fill);
  const filled = (step: TransitStep): string => `tanks ${percentText(step.fill)} full`;
  const ends = [steps[0]!, last];
  return plotPicture(
    {
      id: 'transit',
      title: 'On the way down',
      description: `From empty tanks to ${percentText(last.fill)}, neutral: trim ${trimWords(ends[0]!.trim)} to ${trimWords(last.trim)}, heel ${heelWords(ends[0]!.heel)} to ${heelWords(last.heel)}. Shaded: out of the limits on the way.`,
      width,
      height: 410,
    },
    ground(tilt, [-limit, limit]),
    curve(
      tilt,
      steps.map(step => [at(step), inDegrees.of(step.trim)]),
      'one',
      'trim',
    ),
    curve(
      tilt,
      steps.map(step => [at(step), inDegrees.of(step.heel)]),
      'two',
      'heel',
    ),
    together(
      ends.map(step => chartDot(tilt, [at(step), inDegrees.of(step.trim)], `${trimWords(step.trim)}, ${filled(step)}`)),
    ),
    ground(sinking, null),
    curve(
      sinking,
      steps.map(step => [at(step), step.draft === null ? null : length.of(step.draft)]),
      'one',
      'draft',
    ),
    together(
      ends.flatMap(step =>
        step.draft === null
          ? []
          : [
              chartDot(
                sinking,
                [at(step), length.of(step.draft)],
                `draft ${lengthText(step.draft, units)}, ${filled(step)}`,
              ),
            ],
      ),
    ),
    ground(stiffness, [least, Number.POSITIVE_INFINITY]),
    curve(
      stiffness,
      steps.map(step => [at(step), length.of(step.gm)]),
      'one',
      'metacentric height',
    ),
    together(
      ends.map(step =>
        chartDot(
          stiffness,
          [at(step), length.of(step.gm)],
          `metacentric height ${lengthText(step.gm, units)}, ${filled(step)}`,
        ),
      ),
    ),
    curveKeys(
      [
        ['one', 'trim'],
        ['two', 'heel'],
      ],
      width < 400 ? 12 : width - 180,
      37,
      80,
    ),
    element(
      'text',
      { class: 'axis-words', x: (LEFT + right) / 2, y: 402, 'text-anchor': 'middle' },
      svgText('fill of all tanks; shaded: out of limits'),
    ),
  );
}

const ground = (chart: Chart, kept: readonly [number, number] | null): Markup =>
  together([kept && shade(chart, kept), chart.ground]);
