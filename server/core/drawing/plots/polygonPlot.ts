import type { Analysis } from '../../analysis/analysis.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { SUBMERGED } from '../../conditions/loadingCondition.ts';
import { neededOf, type TankPolygon, tankPolygon, type WeightMoment } from '../../corrections/balance/tankPolygon.ts';
import { submergedReach } from '../../corrections/propose.ts';
import { allowedIn } from '../../figures/allowed.ts';
import { grouped, massText, momentText, percentText, stationWords } from '../../wording/numbers.ts';
import { element, type Markup, short, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import type { Proposal } from '../things.ts';
import { linesOf, textLines } from '../wrapped.ts';
import { chartOf } from './chart.ts';
import { plotPicture } from './plotPicture.ts';
import { massPlotUnit, momentPlotUnit } from './plotUnits.ts';

/**
 * The equilibrium polygon: what filling the tanks does to weight and moment, what the boat needs of them to hang neutral and
 * level, now and with what is proposed, and how far pieces in the bays can bring that. Null for a boat without tanks.
 */
export function polygonPlot(analysis: Analysis, width: number, proposal: Proposal | null): Picture | null {
  const { boat, bodies, boatToTrim, kept } = analysis;
  const polygon = tankPolygon(bodies);
  if (!polygon) return null;
  const { about, each, together: filling, needed } = polygon;
  const allowed = allowedRegion(analysis, polygon);
  const then = proposal && neededOf(assembleBodies(proposal.boat, kept.cache), about);
  const reach = boatToTrim && boat.bays.length > 0 ? submergedReach(boatToTrim, about) : null;
  // Weight that is laid in a bay need not be in the tanks.
  const bays = (reach?.polygon ?? []).map(([weight, moment]): WeightMoment => [needed[0] - weight, needed[1] - moment]);
  const [mass, moment] = [massPlotUnit(boat.units), momentPlotUnit(boat.units)];
  const all = [...each, ...filling, ...allowed, ...bays, needed, ...(then ? [then] : [])];
  const isBare = allowed.length === 0;
  const keys = keysOf({ hasBays: bays.length > 0, hasThen: then !== null, isBare });
  const keyLines = keys.map(({ words }) => linesOf(words, 13, width - 60));
  const footTop = 344;
  const height = Math.ceil((footTop + keyLines.reduce((sum, lines) => sum + 16 * lines.length + 4, 0)) / 20) * 20;
  const where = linesOf(`moment about ${stationWords(about, boat.units)}, ${moment.name}`, 13, width - 80);
  const chart = chartOf(
    { left: 58, right: width - 28, top: 66, bottom: 270 },
    { values: all.map(point => moment.of(point[1])), words: '', ticks: width < 400 ? 3 : 5, tickWords: unsigned },
    { values: [...all.map(point => mass.of(point[0])), 0], words: `water in the tanks, ${mass.name}`, ticks: 6 },
  );
  const at = ([weight, about]: WeightMoment): readonly [number, number] => [
    chart.x(moment.of(about)),
    chart.y(mass.of(weight)),
  ];
  const path = (points: readonly WeightMoment[]): string =>
    points.map((point, i) => `${i === 0 ? 'M' : 'L'}${at(point).map(short).join(' ')}`).join('');
  const region = (kind: string, points: readonly WeightMoment[], words: string): Markup | null =>
    points.length === 0
      ? null
      : element('path', { class: kind, d: `${path(points)}Z` }, element('title', {}, svgText(words)));
  return plotPicture(
    {
      id: 'polygon',
      title: 'Tanks and bays, submerged',
      description: descriptionOf(analysis, polygon, then),
      width,
      height,
    },
    region('reach', bays, 'where pieces in the bays can bring it'),
    chart.ground,
    region('each-tank', each, 'what the tanks can bring'),
    region('allowed', allowed, 'within the limits of fill and trim'),
    element('path', { class: 'curve one', d: path(filling) }, element('title', {}, svgText('the tanks filling'))),
    fillTicks(filling, at, boat.tanks.length > 0),
    then ? arrow(at(needed), at(then)) : null,
    then ? element('path', { class: 'then-mark', d: diamond(at(then)) }) : null,
    element('path', { class: 'needed', d: cross(at(needed)) }),
    element('text', { class: 'end-words', x: 58, y: 301 }, svgText('◂ hangs bow up')),
    element('text', { class: 'end-words', x: width - 16, y: 301, 'text-anchor': 'end' }, svgText('hangs bow down ▸')),
    textLines(where, { kind: 'axis-words', x: 58, y: 322, leading: 15 }),
    keyRows(keys, keyLines, footTop + 15 * (where.length - 1)),
  );
}

/** Where the need may lie: the fill within its limits, the trim within its own; a corner each, none without a figure. */
function allowedRegion({ boat, submerged }: Analysis, { together: filling }: TankPolygon): readonly WeightMoment[] {
  const fill = allowedIn('fill', SUBMERGED, boat);
  const { most: trim } = allowedIn('trim', SUBMERGED, boat);
  if (submerged.status !== 'neutral' || submerged.heldDown !== null || submerged.momentToTrimOneDegree <= 0) return [];
  const slack = submerged.momentToTrimOneDegree * ((trim * 180) / Math.PI);
  const fills = Array.from({ length: 9 }, (_, i) => fill.least + ((fill.most - fill.least) * i) / 8);
  const side = (way: 1 | -1): readonly WeightMoment[] =>
    fills.map(fill => {
      const [weight, moment] = between(filling, fill);
      return [weight, moment + way * slack];
    });
  return [...side(1), ...[...side(-1)].reverse()];
}

/** Between two of evenly spaced fillings. */
function between(filling: readonly WeightMoment[], fill: number): WeightMoment {
  const place = Math.min(Math.max(fill, 0), 1) * (filling.length - 1);
  const i = Math.min(Math.floor(place), filling.length - 2);
  const [[w0, m0], [w1, m1]] = [filling[i]!, filling[i + 1]!];
  return [w0 + (place - i) * (w1 - w0), m0 + (place - i) * (m1 - m0)];
}

type At = (point: WeightMoment) => readonly [number, number];

function fillTicks(filling: readonly WeightMoment[], at: At, isOne: boolean): Markup {
  return together(
    [0, 0.5, 1].map(fill => {
      const [x, y] = at(between(filling, fill));
      return together([
        element('circle', { class: 'dot-mark', cx: x, cy: y, r: 2.5 }),
        isOne
          ? element(
              'text',
              { class: 'tick haloed', x: x + 7, y: fill === 0 ? y - 5 : y + 4 },
              svgText(percentText(fill)),
            )
          : null,
      ]);
    }),
  );
}

interface Key {
  readonly sign: 'needed' | 'then' | 'filling' | 'allowed' | 'bays';
  readonly words: string;
}

const keysOf = ({
  hasBays,
  hasThen,
  isBare,
}: {
  hasBays: boolean;
  hasThen: boolean;
  isBare: boolean;
}): readonly Key[] => [
  { sign: 'needed', words: 'what the tanks must bring, for the boat to hang neutral and level' },
  ...(hasThen ? [{ sign: 'then', words: 'the same with what is proposed' } as const] : []),
  { sign: 'filling', words: 'the tanks, filling' },
  ...(isBare ? [] : [{ sign: 'allowed', words: 'within the limits of fill and trim' } as const]),
  ...(hasBays ? [{ sign: 'bays', words: 'where pieces in the bays can bring it' } as const] : []),
];

function keyRows(keys: readonly Key[], lines: readonly (readonly string[])[], top: number): Markup {
  let y = top;
  return together(
    keys.map(({ sign }, i) => {
      const row = together([signOf(sign, 14, y - 4), textLines(lines[i]!, { kind: 'note', x: 46, y, leading: 16 })]);
      y += 16 * lines[i]!.length + 4;
      return row;
    }),
  );
}

function signOf(sign: Key['sign'], x: number, y: number): Markup {
  switch (sign) {
    case 'needed':
      return element('path', { class: 'needed', d: cross([x + 11, y]) });
    case 'then':
      return element('path', { class: 'then-mark', d: diamond([x + 11, y]) });
    case 'filling':
      return element('path', { class: 'curve one', d: `M${x} ${y}h22` });
    default:
      return element('rect', { class: sign === 'bays' ? 'reach' : 'allowed', x, y: y - 6, width: 22, height: 12 });
  }
}

function descriptionOf(
  { boat: { units } }: Analysis,
  { needed, together: filling }: TankPolygon,
  then: WeightMoment | null,
): string {
  const full = filling.at(-1)![0];
  const said = ([weight, moment]: WeightMoment): string => {
    const off = moment - between(filling, full > 0 ? weight / full : 0)[1];
    const side = `${momentText(Math.abs(off), units)} ${off > 0 ? 'bow down' : 'bow up'}`;
    return weight < 0
      ? `the boat is ${massText(-weight, units)} too heavy without any water, ${side}`
      : `the tanks must hold ${massText(weight, units)} of water, and the boat is off level by ${side}`;
  };
  return `Of ${massText(full, units)} that the tanks hold: ${said(needed)}.${then ? ` With what is proposed: ${said(then)}.` : ''}`;
}

const cross = ([x, y]: readonly [number, number]): string => `M${short(x - 5)} ${short(y - 5)}l10 10m0 -10l-10 10`;
const diamond = ([x, y]: readonly [number, number]): string => `M${short(x - 6)} ${short(y)}l6 -6l6 6l-6 6z`;

function arrow([x0, y0]: readonly [number, number], [x1, y1]: readonly [number, number]): Markup | null {
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length < 22) return null;
  const [dx, dy] = [(x1 - x0) / length, (y1 - y0) / length];
  return element('path', {
    class: 'then-way',
    d: `M${short(x0 + 8 * dx)} ${short(y0 + 8 * dy)}L${short(x1 - 9 * dx)} ${short(y1 - 9 * dy)}`,
  });
}

const unsigned = (value: number): string => grouped(String(Math.abs(value)));
