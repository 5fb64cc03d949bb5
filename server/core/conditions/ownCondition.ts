import type { OwnCondition } from '../boat/ownCondition.ts';
import { type BoatSource, entriesIn } from '../boat/source.ts';
import { capital } from '../wording/capital.ts';
import type { Loading } from './float.ts';
import type { LoadingCondition } from './loadingCondition.ts';

/** A loading condition of the builder's own, to be floated, judged and shown like those that every boat has. */
export function loadingConditionOf(own: OwnCondition): LoadingCondition {
  const isAsFiled = own.aboard.length === 0 && own.without.length === 0 && own.tanks.length === 0 && own.water === null;
  return {
    id: own.name,
    title: capital(own.name),
    path: own.path,
    aboard: isAsFiled ? null : source => ladenAs(own, source),
    loading: loadingOf(own),
    asked: () => own.asked,
  };
}

function loadingOf({ isSubmerged, fill, asked }: OwnCondition): Loading {
  if (isSubmerged) return { kind: asked.reserve === undefined ? 'neutral' : 'held' };
  return fill === null ? { kind: 'own' } : { kind: 'fill', fill };
}

function ladenAs({ path, aboard, without, tanks: fills, water }: OwnCondition, source: BoatSource): BoatSource {
  const payload = [...source.payload.filter(({ entry }) => !without.includes(entry.name)), ...aboard];
  const tanks = source.tanks.map(one => {
    const set = fills.find(({ tank }) => tank === one.entry.name);
    if (!set) return one;
    // What it shall be, it is: nothing of it is uncertain.
    const fill = { value: set.fill, sigma: 0, unit: null };
    return { checked: { ...one.checked, fill }, entry: { ...one.entry, fill: set.fill } };
  });
  return {
    ...source,
    boat: {
      ...source.boat,
      payload: entriesIn(payload),
      tanks: entriesIn(tanks),
      water: water?.made ?? source.boat.water,
    },
    payload,
    tanks,
    ...(water && { water: water.entry, waterAt: [...path, 'water'] }),
  };
}
