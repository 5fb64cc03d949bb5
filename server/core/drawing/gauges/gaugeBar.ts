import type { Limit } from '../../figures/limit.ts';
import type { Gauge } from '../../judges/gauges.ts';
import { element, type Markup, short, together } from '../markup.ts';

/** Size of the bar, user units. */
const BAR = { width: 200, height: 30 };
const MIDDLE = BAR.height / 2;
const EDGE = 9;
/** Twice as far outside a limit is this much further along the bar, in widths of the limit. */
const DOUBLING = 0.5;
/** What is further out than this many limits stands at the end of the bar as an arrow. */
const FAR = 64;

/**
 * Where a figure is along a gauge: 0 in the middle of its limit, 1 at its end; outside the scale counts doublings, so that 24°
 * and 1.5° outside of 1° look as different as they are. A limit with one end only is at -1; what keeps it lies on the right.
 */
export function gaugePlace(limit: Limit, off: number): number {
  switch (limit.binds) {
    case 'within':
      return outwards(off / Math.max(limit.most, LEAST));
    case 'between': {
      const half = Math.max((limit.most - limit.least) / 2, LEAST);
      return outwards((off - (limit.least + limit.most) / 2) / half);
    }
    case 'at least': {
      const least = Math.max(limit.least, LEAST_HEIGHT);
      const beyond = (off - least) / least;
      return beyond >= 0 ? -1 + Math.min(2, DOUBLING * Math.log2(1 + beyond)) : outwards(-1 + beyond);
    }
  }
}

/** A limit of nothing counts as this much. */
const LEAST = 1e-9;
const LEAST_HEIGHT = 1e-3;

const outwards = (limits: number): number => {
  const size = Math.abs(limits);
  return Math.sign(limits) * (size <= 1 ? size : 1 + DOUBLING * Math.log2(Math.min(size, FAR)));
};

/** The furthest place on either side. */
const END = 1 + DOUBLING * Math.log2(FAR);

/** The band of the limit, the figure on it with its uncertainty, and where the proposal would bring it. */
export function gaugeBar(gauge: Gauge): Markup {
  const { limit, now, sigma, proposed, standing, ways } = gauge;
  const [from, to] = ways ? [-END, END] : [-END, 1];
  const x = (place: number): number =>
    EDGE + ((Math.max(from, Math.min(to, place)) - from) / (to - from)) * (BAR.width - 2 * EDGE);
  const at = (off: number): number => x(gaugePlace(limit, off));
  // Doublings of the limit, as on a rule.
  const ticks = [2, 4, 8, 16, 32].flatMap(limits => {
    const place = 1 + DOUBLING * Math.log2(limits);
    return ways ? [-place, place] : [-place];
  });
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: `sheet gauge-bar ${standing}`,
      viewBox: `0 0 ${BAR.width} ${BAR.height}`,
      'aria-hidden': 'true',
    },
    element('path', { class: 'gauge-rule', d: `M${EDGE} ${MIDDLE}H${BAR.width - EDGE}` }),
    element('path', {
      class: 'gauge-rule',
      d: ticks.map(place => `M${short(x(place))} ${MIDDLE - 3}v6`).join(''),
    }),
    element('rect', { class: 'gauge-band', x: x(-1), y: MIDDLE - 7, width: x(1) - x(-1), height: 14 }),
    now && sigma !== null ? whisker(at(now.off - sigma), at(now.off + sigma)) : null,
    proposed ? element('path', { class: 'gauge-then', d: diamond(at(proposed.off), 6) }) : null,
    now ? needle(at(now.off), Math.abs(gaugePlace(limit, now.off)) >= END, standing) : null,
  );
}

const whisker = (from: number, to: number): Markup =>
  element('path', {
    class: 'gauge-whisker',
    d: `M${short(from)} ${MIDDLE}H${short(to)}M${short(from)} ${MIDDLE - 6}v12M${short(to)} ${MIDDLE - 6}v12`,
  });

/** Told by shape: round and full within, square outside, an arrow past the end of the rule; a ring where it is open. */
function needle(x: number, isBeyond: boolean, standing: Gauge['standing']): Markup {
  if (isBeyond) {
    const way = x < BAR.width / 2 ? -1 : 1;
    return element('path', { class: 'gauge-needle', d: `M${short(x + way * 7)} ${MIDDLE}l${way * -12} -7v14z` });
  }
  if (standing === 'out')
    return together([element('rect', { class: 'gauge-needle', x: x - 5, y: MIDDLE - 5, width: 10, height: 10 })]);
  return element('circle', { class: 'gauge-needle', cx: x, cy: MIDDLE, r: 5.5 });
}

const diamond = (x: number, r: number): string => `M${short(x - r)} ${MIDDLE}l${r} ${-r}l${r} ${r}l${-r} ${r}z`;
