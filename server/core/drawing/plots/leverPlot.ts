import type { Analysis } from '../../analysis/analysis.ts';
import type { RightingCurve } from '../../conditions/rightingLever.ts';
import { angleText, lengthText } from '../../wording/numbers.ts';
import { element, type Markup, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { chartDot, chartOf, curve, curveKeys, KEY_ROW } from './chart.ts';
import { plotPicture } from './plotPicture.ts';
import { inDegrees, lengthPlotUnit } from './plotUnits.ts';

/** Lines of a plot, told apart by their style; further conditions begin again. */
const STYLES = ['one', 'two', 'three'] as const;

/** The righting lever over all heels in each condition; null for a boat that neither floats nor hangs in any. */
export function leverPlot({ boat, conditions }: Analysis, width: number): Picture | null {
  const drawn = conditions.flatMap(({ condition: { id, title }, levers }, i) =>
    levers ? [{ name: STYLES[i % STYLES.length]!, words: id, title, righting: levers.all() }] : [],
  );
  if (drawn.length === 0) return null;
  const unit = lengthPlotUnit(boat.units);
  const levers = drawn.flatMap(({ righting }) => righting.points.map(({ lever }) => unit.of(lever)));
  // Its keys go under the title where they do not fit beside it.
  const isUnder = width < 400 || drawn.length > 2;
  const keys = curveKeys(
    drawn.map(({ name, words }) => [name, words]),
    isUnder ? { x: 12, y: 41, across: width - 24 } : { x: width - 230, y: 37, across: 230 },
  );
  const lower = isUnder ? 2 + keys.rows * KEY_ROW : 0;
  const chart = chartOf(
    { left: 52, right: width - 20, top: 64 + lower, bottom: 246 + lower },
    {
      values: [-180, 180],
      words: 'to port ◂ heel held ▸ to starboard',
      isExact: true,
      ticks: width < 400 ? [-180, -90, 0, 90, 180] : [-180, -135, -90, -45, 0, 45, 90, 135, 180],
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
      width,
      height: 300 + lower,
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
    keys.markup,
    element('text', { class: 'note', x: 12, y: 294 + lower }, svgText('○ heels from which the boat just comes back')),
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
  const lever = `greatest righting lever ${lengthText(Math.abs(most.lever), units)} at ${angleText(Math.abs(most.heel))}`;
  const [port, starboard] = range;
  const isWhole = Math.min(-port, starboard) > (175 / 180) * Math.PI;
  return isWhole
    ? `${who} it comes back from any heel; ${lever}.`
    : `${who} it comes back from ${angleText(-port)} to port and ${angleText(starboard)} to starboard; ${lever}.`;
}
