import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import { outsideBy } from '../figures/limit.ts';
import type { Gauge, GaugeStanding, ToGauge } from './gauges.ts';
import { whyNoRest } from './whyNoRest.ts';

/** Whether the boat is in trim, at a glance. */
export interface Verdict {
  /** `open`: within its limits, as far as can be told. `unknown`: nothing floats yet, or the file is faulty. */
  readonly state: 'in' | 'out' | 'open' | 'unknown';
  /** One line: how many limits are out, and the worst. */
  readonly words: string;
}

/** What else there is to know of the file for a verdict. */
interface Doubts {
  /** Errors in the file. */
  readonly errors: number;
  /** The figures are those of the boat as trials have it. */
  readonly withTrials: boolean;
}

/** One line that says whether the boat is in trim, what is most out, and what is missing for it to be known. */
export function verdictOf({ boat, conditions }: ToGauge, gauges: readonly Gauge[], doubts: Doubts): Verdict {
  if (gauges.length === 0) return { state: 'unknown', words: `${NOTHING_YET}${errorWords(doubts.errors)}` };
  const missing = boat.leftOut.map(name => `“${name}”`).join(', ');
  const isWhole = doubts.errors === 0 && missing === '';
  const heeds = doubts.withTrials ? ', by file and trials' : '';
  const without = missing === '' ? '' : ` without ${missing}`;
  const words = countWords(gauges, boat, conditions);
  const state = standingOf(gauges);
  if (!isWhole) {
    return { state: 'unknown', words: `Not known yet${heeds}${without}: so far ${words}.${errorWords(doubts.errors)}` };
  }
  const begins = { in: 'In trim', open: 'In trim as far as can be told', out: 'Not yet' }[state];
  return { state, words: `${begins}${heeds}: ${words}.` };
}

function standingOf(gauges: readonly Gauge[]): GaugeStanding {
  const has = (wanted: GaugeStanding): boolean => gauges.some(({ standing }) => standing === wanted);
  return has('out') ? 'out' : has('open') ? 'open' : 'in';
}

/** How many are out and which most; else how many are surely in. */
function countWords(gauges: readonly Gauge[], boat: Boat, conditions: readonly InCondition[]): string {
  const count = gauges.length;
  const out = gauges.filter(({ standing }) => standing === 'out');
  const open = gauges.filter(({ standing }) => standing === 'open');
  if (out.length > 0) {
    const restless = conditions
      .filter(({ condition }) => gauges.some(({ heading, now }) => heading === condition.title && !now))
      .map(there => `${there.condition.title.toLowerCase()} ${whyNoRest(there, boat.units)}`);
    return `${out.length} of ${count} out; ${restless.length > 0 ? restless.join(', ') : worstWords(out)}`;
  }
  return open.length === 0
    ? `all ${count} within their limits`
    : `${count - open.length} of ${count} surely within their limits; the ${open[0]!.name} may be out`;
}

const NOTHING_YET = 'Nothing floats yet: give “hull:” a compartment or a shell, and “payload:” what it carries.';

const errorWords = (errors: number): string =>
  errors === 0 ? '' : ` The file has ${errors === 1 ? 'an error' : `${errors} errors`}.`;

/** The one that is furthest out, in limits; of a boat that runs off, what makes it do so. */
function worstWords(out: readonly Gauge[]): string {
  const told = out.filter(({ now }) => now !== null);
  const steady = told.filter(({ runsOff }) => !runsOff);
  const outside = ({ limit, now }: Gauge): number => outsideBy(limit, now!.off);
  const worst = (steady.length > 0 ? steady : told).reduce((a, b) => (outside(b) > outside(a) ? b : a));
  const words = `the ${worst.name}, ${worst.now!.shown}`;
  return out.length === 1 ? words : `the worst is ${words}`;
}
