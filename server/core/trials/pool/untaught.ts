import type { PartEntry } from '../../../../schema/hull.ts';
import type { Part } from '../../boat/boat.ts';
import { readPart } from '../../boat/readPart.ts';
import { type BoatSource, entriesIn, type Source } from '../../boat/source.ts';

/**
 * The boat as it was filed before the trials taught anything: without what they found, and with parts where they were
 * written to lie. From there the trials are weighed, however much of them is written down: so nothing is counted twice, and
 * taking an offer changes nothing of what they say. The same object where nothing has been learned.
 */
export function untaught(source: BoatSource): BoatSource {
  if (source.payload.every(({ checked }) => !checked.learned)) return source;
  const payload = source.payload.flatMap(one => asWritten(one, source));
  return { ...source, payload, boat: { ...source.boat, payload: entriesIn(payload) } };
}

function asWritten(one: Source<PartEntry, Part>, { around }: BoatSource): readonly Source<PartEntry, Part>[] {
  const { checked, entry } = one;
  if (!checked.learned) return [one];
  const { written, learned, ...rest } = checked;
  if (!written) return [];
  const before: PartEntry = { ...rest, ...written };
  const part = readPart(before, entry.path, around, []);
  return part ? [{ checked: before, entry: part }] : [one];
}
