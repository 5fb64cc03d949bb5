import type { BoatSchemas } from '../../../schema/boatFile.ts';
import { isInside } from '../../../schema/path.ts';
import type { FileOrigin } from '../../../schema/places.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { valueAt } from '../text/reading/values.ts';
import type { Waterline } from './boat.ts';
import { valueFault } from './fault.ts';
import type { SectionReader } from './sectionReader.ts';

const PATH = ['hull', 'origin'] as const;

/** What it takes to place what counts from an origin. */
interface Measures {
  /** Of the hull, m; null where the file does not say it. */
  readonly length: number | null;
  readonly waterline: Waterline | null;
}

/**
 * Where stations and heights count from, null for the bow tip and the baseline. Where it cannot be read, or not be placed,
 * every figure says that it was made without it.
 */
export function readOrigin(
  { section, log }: SectionReader,
  syntax: Syntax,
  schemas: BoatSchemas,
  measures: () => Measures,
): FileOrigin | null {
  if (valueAt(syntax, PATH) === undefined) return null;
  const said = section(() => schemas.origin, PATH, 'the origin', true);
  const { stations = 'bow', heights = 'baseline' } = said ?? {};
  const { length, waterline } = measures();
  if (heights === 'waterline' && !waterline) {
    const message =
      'Heights count from the painted waterline, so the hull needs it: add “waterline: 56 mm”, its height above the baseline.';
    log.findings.push(valueFault('missing-key', [...PATH, 'heights'], message));
  }
  const isFaulty = log.findings.some(
    ({ severity, place }) => severity === 'error' && 'path' in place && isInside(place.path, PATH),
  );
  if (isFaulty) log.leftOut.push('origin');
  if (stations === 'bow' && heights === 'baseline') return null;
  const amidships = waterline ? (waterline.bow + waterline.stern) / 2 : 0;
  return { stations, heights, length: length ?? 0, waterline: amidships };
}
