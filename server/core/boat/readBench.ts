import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { TrialEntry } from '../../../schema/trials.ts';
import type { Finding } from '../findings/finding.ts';
import { valueFault } from './fault.ts';
import { boatScale, measured, READS, springBalance } from './readingUncertainties.ts';
import type { Reading, SupportReading } from './trial.ts';

type Supports = NonNullable<TrialEntry['scales']>;
type At = Supports[number] & { readonly station: Quantity; readonly path: Path };

/** What is said of each kind of support. */
const KINDS = {
  scale: { usual: boatScale, on: 'on', things: 'scales', tells: 'weighs the boat' },
  hook: { usual: springBalance, on: 'from', things: 'spring balances', tells: 'tells its weight in water' },
} as const;

/**
 * Scales under the keel, or spring balances over it: those without a station carried the whole boat; of those with one
 * there are two, whose readings follow from weight and moment by statics. A third would share the weight as its height has
 * it, which statics cannot tell.
 */
export function supportsOf(
  of: SupportReading['of'],
  supports: Supports | undefined,
  path: Path,
  findings: Finding[],
): readonly Reading[] {
  const { usual } = KINDS[of];
  const all = (supports ?? []).map((support, i) => ({ ...support, path: [...path, i] }));
  const whole = all
    .filter(({ station }) => station === undefined)
    .map(({ reads, slip = false, path }): Reading => {
      const read = measured(reads, [...path, 'reads'], usual(reads.value));
      return { ...read, of, pair: null, isSlip: slip };
    });
  const placed = all.flatMap(({ station, ...support }): readonly At[] => (station ? [{ ...support, station }] : []));
  const pair = pairOf(of, placed, path, findings);
  return [...whole, ...(pair ? pairReadings(of, pair) : [])];
}

/** The two with a station; null, told, where there are not two that lie apart. */
function pairOf(
  of: SupportReading['of'],
  placed: readonly At[],
  path: Path,
  findings: Finding[],
): readonly [At, At] | null {
  const [one, two] = placed;
  if (!one) return null;
  const { on, things, tells } = KINDS[of];
  if (!two) {
    const message = `One ${of} at a station tells nothing by itself: the rest of the weight was somewhere else. Give the other ${of} too; or leave the station out, if the whole boat was ${on} this one: it then ${tells}.`;
    findings.push(valueFault('trial-impossible', [...one.path, 'station'], message));
    return null;
  }
  if (placed.length > 2) {
    const message = `How a boat shares its weight among ${placed.length} ${things} hangs on how high each of them is to a hair, so statics cannot tell what each should show. Use two, or one without a station.`;
    findings.push(valueFault('trial-impossible', path, message));
    return null;
  }
  if (Math.abs(one.station.value - two.station.value) > LEAST_APART) return [one, two];
  const message = `Two ${things} at one station tell no more than one. Set them well apart, near the ends of the boat.`;
  findings.push(valueFault('trial-impossible', [...two.path, 'station'], message));
  return null;
}

/** Closer than this two supports are one, m. */
const LEAST_APART = 0.001;

/**
 * A support that stands elsewhere by a little shares the load otherwise: what one shows too much the other shows too little.
 * Taken as independent that would half cancel in the moment, so each gets √2 of it: the careful side.
 */
function pairReadings(of: SupportReading['of'], [one, two]: readonly [At, At]): readonly Reading[] {
  const { usual } = KINDS[of];
  const apart = Math.abs(one.station.value - two.station.value);
  const shift = ({ station, reads }: At) => (reads.value / apart) * (station.sigma ?? READS.support);
  const shared = Math.SQRT2 * Math.hypot(shift(one), shift(two));
  const reading = ({ reads, station, slip = false, path }: At, other: At): Reading => {
    const read = measured(reads, [...path, 'reads'], usual(reads.value));
    return {
      ...read,
      sigma: Math.hypot(read.sigma, shared),
      of,
      pair: { station: station.value, other: other.station.value },
      isSlip: slip,
    };
  };
  return [reading(one, two), reading(two, one)];
}

/** The knife edge. */
export function balanceOf({ balance, slips = [] }: TrialEntry, path: Path): readonly Reading[] {
  if (!balance) return [];
  const read = measured(balance, [...path, 'balance'], READS.balance);
  return [{ ...read, of: 'balance', isSlip: slips.includes('balance') }];
}
