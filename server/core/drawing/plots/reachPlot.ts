import type { Analysis } from '../../analysis/analysis.ts';
import type { Reach } from '../../corrections/balance/reach.ts';
import { reaches } from '../../corrections/propose.ts';
import { massText, momentText } from '../../wording/numbers.ts';
import { element, type Markup, short, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { chartOf } from './chart.ts';
import { PLOT_WIDTH, plotPicture } from './plotPicture.ts';
import { massPlotUnit, momentPlotUnit, type PlotUnit } from './plotUnits.ts';

/**
 * What lead and foam in the bays can bring, as weight and moment, against what the boat needs, in each condition; null for a
 * boat without bays or one that cannot be corrected.
 */
export function reachPlot({ boat, boatToTrim }: Analysis): Picture | null {
  if (!boatToTrim || boat.bays.length === 0) return null;
  const { surfaced, submerged } = reaches(boatToTrim);
  const panels: readonly (readonly [string, Reach])[] = [
    ['Surfaced', surfaced],
    ...(submerged ? [['Submerged', submerged] as const] : []),
  ];
  const units: Units = { mass: massPlotUnit(boat.units), moment: momentPlotUnit(boat.units) };
  const height = 60 + panels.length * 190;
  return plotPicture(
    {
      id: 'reach',
      title: 'What the bays can still bring',
      description: panels
        .map(([name, reach]) => {
          const { needed } = reach;
          const [mass, moment] = needed;
          return `${name}: needed ${weightWords(mass, boat.units)} and ${momentText(Math.abs(moment), boat.units)} ${sideOf(moment)}, ${verdictOf(reach)}.`;
        })
        .join(' '),
      height,
    },
    together(panels.map(([name, reach], i) => panel(name, reach, units, 62 + i * 190))),
    element('path', { class: 'needed', d: cross(20, height - 16) }),
    element('text', { class: 'note', x: 32, y: height - 12 }, svgText('what is needed')),
    element('rect', { class: 'reach', x: 142, y: height - 22, width: 20, height: 12 }),
    element('text', { class: 'note', x: 168, y: height - 12 }, svgText('what pieces in the bays can bring')),
  );
}

interface Units {
  readonly mass: PlotUnit;
  readonly moment: PlotUnit;
}

/** The margin is counted in what the limits leave free: less than that outside, the limits are kept all the same. */
const verdictOf = ({ margin }: Reach): string =>
  margin >= 0 ? 'within reach' : margin > -1 ? 'near enough for the limits' : 'out of reach';

function panel(name: string, reach: Reach, { mass, moment }: Units, top: number): Markup {
  const { polygon, needed, margin } = reach;
  const points = polygon.map(([m, r]) => [mass.of(m), moment.of(r)] as const);
  const [m, r] = [mass.of(needed[0]), moment.of(needed[1])];
  const chart = chartOf(
    { left: 70, right: PLOT_WIDTH - 14, top, bottom: top + 120 },
    {
      values: [...points.map(point => point[0]), m, 0],
      words: `weight in water, ${mass.name}; lift to the left of 0`,
      ticks: 6,
      tickWords: value => String(Math.abs(value)),
    },
    {
      values: [...points.map(point => point[1]), r, 0],
      words: `${name}: moment, ${moment.name}`,
      ends: ['bow down', 'bow up'],
      ticks: 5,
    },
  );
  const corners = points.map(([a, b]) => `${short(chart.x(a))} ${short(chart.y(b))}`);
  const verdict = verdictOf(reach);
  const isFar = margin <= -1;
  return together([
    element(
      'path',
      { class: 'reach', d: corners.length > 0 ? `M${corners.join('L')}Z` : 'M0 0' },
      element('title', {}, svgText('what pieces in the bays can bring')),
    ),
    chart.ground,
    element(
      'path',
      { class: isFar ? 'needed far' : 'needed', d: cross(chart.x(m), chart.y(r)) },
      element('title', {}, svgText(`needed: ${verdict}`)),
    ),
    element(
      'text',
      { class: isFar ? 'verdict off-words' : 'verdict', x: PLOT_WIDTH - 20, y: top + 15, 'text-anchor': 'end' },
      svgText(verdict),
    ),
  ]);
}

const cross = (x: number, y: number): string => `M${short(x - 5)} ${short(y - 5)}l10 10m0 -10l-10 10`;

const weightWords = (mass: number, units: Analysis['boat']['units']): string =>
  `${massText(Math.abs(mass), units)} of ${mass < 0 ? 'lift' : 'weight'}`;

const sideOf = (moment: number): string => (moment < 0 ? 'bow down' : 'bow up');
