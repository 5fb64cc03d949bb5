import type { Analysis } from '../../analysis/analysis.ts';
import { boatIn } from '../../conditions/float.ts';
import { type RightingCurve, rightingCurve } from '../../conditions/rightingLever.ts';
import { angleText, lengthText } from '../../wording/numbers.ts';
import { element, type Markup, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { chartDot, chartOf, curve, curveKeys } from './chart.ts';
import { PLOT_WIDTH, plotPicture } from './plotPicture.ts';
import { inDegrees, lengthPlotUnit } from './plotUnits.ts';

/** Lines of a plot, told apart by their style; further conditions begin again. */
const STYLES = ['one', 'two', 'three'] as const;

/** The righting lever over all heels in each condition; null for a boat that neither floats nor hangs in any. */
export function leverPlot({ boat, conditions }: Analysis): Picture | null {
  const curves = conditions.flatMap(({ condition, bodies, state }, i) =>
    state.status === 'afloat' || state.status === 'neutral'
      ? [{ name: STYLES[i % STYLES.length]!, condition, afloat: boatIn(bodies, condition.loading) }]
      : [],
  );
  if (curves.length === 0) return null;
  const unit = lengthPlotUnit(boat.units);
  const drawn = curves.map(({ name, condition: { id, title }, afloat }) => ({
    name,
    words: id,
    title,
    righting: rightingCurve(afloat),
  }));
  const levers = drawn.flatMap(({ righting }) => righting.points.map(({ lever }) => unit.of(lever)));
  const chart = chartOf(
    { left: 52, right: PLOT_WIDTH - 14, top: 64, bottom: 246 },
    {
      values: [-180, 180],
      words: 'heel held, to port on the left, to starboard on the right',
      isExact: true,
      ticks: [-180, -135, -90, -45, 0, 45, 90, 135, 180],
      tickWords: value => `${Math.abs(value)}°`,
    },
    {
      values: [...levers, 0],
      words: `righting lever, ${unit.name}`,
      ends: ['turns it to starboard', 'turns it to port'],
      ticks: 6,
    },
  );
  return plotPicture(
    {
      id: 'righting-lever',
      title: 'Righting lever',
      description: drawn.map(({ title, righting }) => rangeSentence(title, righting, boat.units)).join(' '),
      height: 300,
    },
    chart.ground,
    together(
      drawn.map(({ name, words, righting }) =>
        together([
          curve(
            chart,
            righting.points.map(({ heel, lever }) => [inDegrees.of(heel), unit.of(lever)]),
            name,
            words,
          ),
          edges(chart, righting),
        ]),
      ),
    ),
    curveKeys(
      drawn.map(({ name, words }) => [name, words]),
      210,
      37,
      105,
    ),
    element('text', { class: 'note', x: 12, y: 294 }, svgText('○ heels from which the boat just comes back')),
  );
}

function edges(chart: Parameters<typeof chartDot>[0], { range }: RightingCurve): Markup | null {
  if (!range) return null;
  const inside = range.filter(heel => Math.abs(heel) < Math.PI);
  return together(
    inside.map(heel =>
      chartDot(chart, [inDegrees.of(heel), 0], `comes back from up to ${angleText(Math.abs(heel))}`, 'ring-mark'),
    ),
  );
}

function rangeSentence(who: string, { points, range }: RightingCurve, units: Analysis['boat']['units']): string {
  if (!range) return `${who} it does not stay upright.`;
  const most = points.reduce((a, b) => (Math.abs(b.lever) > Math.abs(a.lever) ? b : a));
  const lever = `greatest lever ${lengthText(Math.abs(most.lever), units)} at ${angleText(Math.abs(most.heel))}`;
  const [port, starboard] = range;
  const isWhole = Math.min(-port, starboard) > (175 / 180) * Math.PI;
  return isWhole
    ? `${who} it comes back from any heel; ${lever}.`
    : `${who} it comes back from ${angleText(-port)} to port and ${angleText(starboard)} to starboard; ${lever}.`;
}
