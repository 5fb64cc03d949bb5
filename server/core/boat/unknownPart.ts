import { closest } from '../../../schema/closest.ts';
import type { Path } from '../../../schema/path.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding } from '../findings/finding.ts';
import type { Boat } from './boat.ts';
import { changeTo, valueFault } from './fault.ts';

/** A name among those left ashore that no payload entry has; what could not be read is told where it stands. */
export function unknownPart(
  name: string,
  path: Path,
  { payload, ashore, leftOut }: Boat,
  { code, what }: { readonly code: FindingCode; readonly what: string },
): readonly Finding[] {
  if (leftOut.includes(name) || [...payload, ...ashore].some(part => part.name === name)) return [];
  const near = closest(
    name,
    payload.map(part => part.name),
  );
  const hint = near ? ` Did you mean “${near}”?` : '';
  const message = `There is no payload entry “${name}” ${what}.${hint}`;
  return [valueFault(code, path, message, { mends: changeTo(path, near) })];
}
