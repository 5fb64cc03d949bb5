import type { Analysis } from '../../analysis/analysis.ts';
import type { Boat } from '../../boat/boat.ts';
import type { TransitStep } from '../../conditions/transit.ts';
import { allowedInTransit } from '../../figures/transitTable.ts';
import { heelWords, lengthText, percentText, trimWords } from '../../wording/numbers.ts';
import { element, type Markup, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { type Chart, type ChartAxis, chartDot, chartOf, curve, curveKeys, type PlotBox, shade } from './chart.ts';
import { plotPicture } from './plotPicture.ts';
import { inDegrees, lengthPlotUnit, percent } from './plotUnits.ts';

const LEFT = 46;

/** Trim and heel, draft and metacentric height on the way down, against the fill of the tanks; null for a boat that does not dive. */
export function transitPlot({ boat, transit }: Analysis, width: number): Picture | null {
  const steps = transit.all();
  const [first, last] = [steps[0], steps.at(-1)];
  if (!first || !last || steps.length < 2) return null;
  const right = width - 14;
  return plotPicture(
    {
      id: 'transit',
      title: 'On the way down',
      description: `From empty tanks to ${percentText(last.fill)}, neutral: trim ${trimWords(first.trim)} to ${trimWords(last.trim)}, heel ${heelWords(first.heel)} to ${heelWords(last.heel)}. Shaded: out of the limits on the way.`,
      width,
      height: 410,
    },
    ...[tilts(boat, steps), drafts(boat, steps), heights(boat, steps)].flatMap(panel => drawn(panel, steps, right)),
    curveKeys(
      [
        ['one', 'trim'],
        ['two', 'heel'],
      ],
      { x: width < 400 ? 12 : width - 180, y: 37, across: 180 },
    ).markup,
    element(
      'text',
      { class: 'axis-words', x: (LEFT + right) / 2, y: 402, 'text-anchor': 'middle' },
      svgText('fill of all tanks; shaded: out of limits'),
    ),
  );
}

/** A figure along the way, in the unit of its plot; null where it cannot be had. */
interface Line {
  readonly name: string;
  readonly style: 'one' | 'two';
  readonly at: (step: TransitStep) => number | null;
}

/** One of the plots over each other. */
interface Panel {
  readonly top: number;
  readonly bottom: number;
  readonly axis: ChartAxis;
  readonly lines: readonly Line[];
  /** What the limits allow, in the unit of the plot; null without limits. */
  readonly kept: readonly [least: number, most: number] | null;
  /** The first line's figure at an end of the way, in words. */
  readonly words: (step: TransitStep) => string;
}

function tilts(boat: Boat, steps: readonly TransitStep[]): Panel {
  const most = inDegrees.of(allowedInTransit('trim', boat).most);
  const angles = steps.flatMap(step => [inDegrees.of(step.trim), inDegrees.of(step.heel)]);
  const reach = Math.max(...angles.map(Math.abs), most) * 1.1;
  return {
    top: 62,
    bottom: 152,
    axis: {
      values: [-reach, reach],
      words: 'trim and heel, °',
      ends: ['bow down, to port', 'bow up, to starboard'],
      ticks: 4,
    },
    lines: [
      { name: 'trim', style: 'one', at: step => inDegrees.of(step.trim) },
      { name: 'heel', style: 'two', at: step => inDegrees.of(step.heel) },
    ],
    kept: [-most, most],
    words: step => trimWords(step.trim),
  };
}

function drafts({ units }: Boat, steps: readonly TransitStep[]): Panel {
  const length = lengthPlotUnit(units);
  const at = ({ draft }: TransitStep): number | null => (draft === null ? null : length.of(draft));
  const values = steps.flatMap(step => at(step) ?? []);
  return {
    top: 192,
    bottom: 262,
    axis: { values, words: `draft, ${length.name}`, ticks: 4 },
    lines: [{ name: 'draft', style: 'one', at }],
    kept: null,
    words: ({ draft }) => `draft ${lengthText(draft ?? 0, units)}`,
  };
}

function heights(boat: Boat, steps: readonly TransitStep[]): Panel {
  const length = lengthPlotUnit(boat.units);
  const least = length.of(allowedInTransit('gm', boat).least);
  const at = ({ gm }: TransitStep): number => length.of(gm);
  return {
    top: 302,
    bottom: 372,
    axis: { values: [...steps.map(at), least, 0], words: `metacentric height, ${length.name}`, ticks: 4 },
    lines: [{ name: 'metacentric height', style: 'one', at }],
    kept: [least, Number.POSITIVE_INFINITY],
    words: ({ gm }) => `metacentric height ${lengthText(gm, boat.units)}`,
  };
}

/** Ground, lines, and dots at both ends of the first line. */
function drawn(panel: Panel, steps: readonly TransitStep[], right: number): readonly Markup[] {
  const ends = [steps[0]!, steps.at(-1)!];
  const box: PlotBox = { left: LEFT, right, top: panel.top, bottom: panel.bottom };
  const fills: ChartAxis = {
    values: [0, percent.of(ends[1]!.fill)],
    words: '',
    isExact: true,
    ticks: 6,
    tickWords: value => `${value} %`,
  };
  const chart: Chart = chartOf(box, fills, panel.axis);
  const across = (step: TransitStep): number => percent.of(step.fill);
  const dots = ends.flatMap(step => {
    const up = panel.lines[0]!.at(step);
    const words = `${panel.words(step)}, tanks ${percentText(step.fill)} full`;
    return up === null ? [] : [chartDot(chart, [across(step), up], words)];
  });
  return [
    together([panel.kept && shade(chart, panel.kept), chart.ground]),
    ...panel.lines.map(({ name, style, at }) =>
      curve(
        chart,
        steps.map(step => [across(step), at(step)]),
        style,
        name,
      ),
    ),
    together(dots),
  ];
}
