import type { Path } from '../../../schema/path.ts';
import type { Analysis } from '../analysis/analysis.ts';
import type { Names } from './page.ts';
import type { Thing, Things } from './things.ts';

/** The heaviest parts that are always named. */
const HEAVIEST = 3;

/**
 * Which things a picture names by itself: all; or what matters: what is proposed, what a finding points at, the tanks and the
 * heaviest parts. The others are named when one points at them.
 */
export function namedAmong(
  { ghosts, tanks, parts }: Things,
  analysis: Analysis,
  names: Names,
): (thing: Thing) => boolean {
  if (names === 'all') return () => true;
  const { payload } = analysis.boat;
  const heaviest = [...payload].sort((a, b) => b.mass - a.mass).slice(0, HEAVIEST);
  const { file, said } = analysis;
  // What the boat does in motion takes long to find, and is said of its tanks, which are named anyway, or of no thing at all.
  const findings = [...file.findings, ...said.ofBoat, ...said.ofTrials];
  const told = findings.flatMap(({ place, severity }) =>
    place.on === 'text' || severity === 'hint' ? [] : [place.path],
  );
  const isTold = ({ path }: Thing): boolean => told.some(one => startsWith(one, path));
  return thing =>
    ghosts.includes(thing) ||
    tanks.includes(thing) ||
    isTold(thing) ||
    heaviest.some(part => part === payload[parts.indexOf(thing)]);
}

const startsWith = (path: Path, start: Path): boolean => start.every((step, i) => path[i] === step);
