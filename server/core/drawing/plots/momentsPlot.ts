import { scaleLinear } from 'd3-scale';
import { pathKey } from '../../../../schema/path.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Entry } from '../../boat/boat.ts';
import { UPRIGHT } from '../../conditions/attitude.ts';
import { ballastWater } from '../../conditions/ballastWater.ts';
import { sharedLoad } from '../../conditions/load.ts';
import { momentText } from '../../wording/numbers.ts';
import { element, type Markup, short, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { shortened } from '../textWidth.ts';
import { called } from '../things.ts';
import { PLOT_WIDTH, plotPicture } from './plotPicture.ts';

/** One entry's net moment about midships, all under water and level, kg·m: positive aft, where it brings the bow up. */
export interface TrimMoment {
  readonly entry: Entry | null;
  readonly name: string;
  readonly moment: number;
}

/**
 * What makes the trim of the boat under water: weight less buoyancy of every entry by its arm aft of midships, the ballast
 * water as it lies when level, the largest first. Neutral, their sum is the moment that trims the boat.
 */
export function trimMoments({ boat, bodies, submerged }: Analysis): readonly TrimMoment[] {
  const midships = boat.length / 2;
  const moments = new Map<Entry, number>();
  const add = (entry: Entry, moment: number): void => void moments.set(entry, (moments.get(entry) ?? 0) + moment);
  for (const { entry, mass, centroid } of bodies.weights) add(entry, mass * (centroid[0] - midships));
  for (const { entry, body } of bodies.displacers) {
    add(entry, -bodies.density * (body.moment[0] - midships * body.volume));
  }
  const fill = submerged.status === 'neutral' ? submerged.fill : 0;
  const { mass, moment } = ballastWater(sharedLoad(bodies.tanks, fill), UPRIGHT, bodies.density);
  const water = moment[0] - midships * mass;
  const listed: readonly TrimMoment[] = [...moments].map(([entry, moment]) => ({ entry, name: entry.name, moment }));
  const ballast: readonly TrimMoment[] = water === 0 ? [] : [{ entry: null, name: 'ballast water', moment: water }];
  return [...listed, ...ballast].sort((a, b) => Math.abs(b.moment) - Math.abs(a.moment));
}

/** Bars that are shown; the rest stands in one. */
const MOST = 14;
const ROW = 19;
const TOP = 46;
const NAMES = 138;
const MIDDLE = (NAMES + PLOT_WIDTH - 14) / 2;

/** Every entry's moment as a bar, bow down to the left and bow up to the right; null while nothing weighs. */
export function momentsPlot(analysis: Analysis): Picture | null {
  const all = trimMoments(analysis);
  if (all.length === 0) return null;
  const rest = all.slice(MOST);
  const others: readonly TrimMoment[] =
    rest.length === 0
      ? []
      : [{ entry: null, name: `${rest.length} more`, moment: rest.reduce((sum, { moment }) => sum + moment, 0) }];
  const bars = [...all.slice(0, MOST), ...others];
  const sum = all.reduce((total, { moment }) => total + moment, 0);
  const most = Math.max(...bars.map(({ moment }) => Math.abs(moment)), Math.abs(sum), 1e-12);
  const x = scaleLinear([-most, most], [NAMES + 8, PLOT_WIDTH - 22]);
  const { units } = analysis.boat;
  const isNeutral = analysis.submerged.status === 'neutral';
  const y = (row: number): number => TOP + row * ROW;
  const bottom = y(bars.length + (isNeutral ? 1 : 0)) + 6;
  const bar = ({ entry, name, moment }: TrimMoment, row: number, kind: string): Markup => {
    const words = `${called(name)}: ${momentText(Math.abs(moment), units)} ${moment < 0 ? 'bow down' : 'bow up'}`;
    const [from, to] = [Math.min(x(0), x(moment)), Math.max(x(0), x(moment))];
    // Beside the bar, on the side where there is room.
    const isLeft = moment < 0;
    return element(
      'g',
      { class: `moment ${kind}`, 'data-path': entry && pathKey(entry.path), role: 'img', 'aria-label': words },
      element('title', {}, svgText(words)),
      element('text', { x: NAMES, y: y(row) + 13, 'text-anchor': 'end' }, svgText(shortened(called(name), 18))),
      element('rect', {
        class: isLeft ? 'bar down' : 'bar up',
        x: from,
        y: y(row) + 3,
        width: to - from,
        height: ROW - 7,
      }),
      element(
        'text',
        { class: 'tick', x: isLeft ? x(0) + 4 : x(0) - 4, y: y(row) + 13, 'text-anchor': isLeft ? 'start' : 'end' },
        svgText(momentText(Math.abs(moment), units)),
      ),
    );
  };
  return plotPicture(
    {
      id: 'trim-moments',
      title: 'What makes the trim, submerged',
      description: `Net moments about midships, the largest first: ${bars
        .slice(0, 3)
        .map(
          ({ name, moment }) =>
            `${called(name)} ${momentText(Math.abs(moment), units)} ${moment < 0 ? 'bow down' : 'bow up'}`,
        )
        .join(
          ', ',
        )}.${isNeutral ? ` Their sum: ${momentText(Math.abs(sum), units)} ${sum < 0 ? 'bow down' : 'bow up'}.` : ''}`,
      height: Math.ceil((bottom + 12) / 20) * 20,
    },
    element('text', { class: 'end-words', x: NAMES + 8, y: 38 }, svgText('◂ bow down')),
    element('text', { class: 'end-words', x: PLOT_WIDTH - 14, y: 38, 'text-anchor': 'end' }, svgText('bow up ▸')),
    together(bars.map((one, row) => bar(one, row, 'entry-moment'))),
    isNeutral ? bar({ entry: null, name: 'sum', moment: sum }, bars.length, 'sum') : null,
    isNeutral ? element('path', { class: 'axis', d: `M12 ${short(y(bars.length))}H${PLOT_WIDTH - 14}` }) : null,
    element('path', { class: 'zero', d: `M${short(MIDDLE)} ${TOP - 2}V${short(bottom - 4)}` }),
  );
}
