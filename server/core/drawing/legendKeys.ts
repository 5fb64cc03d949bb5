import type { Analysis } from '../analysis/analysis.ts';
import type { DrawnState } from './drawnState.ts';
import type { LegendKey } from './legend.ts';
import type { MarkName } from './marks.ts';
import type { ThingKind, Things } from './things.ts';

/** The signs that a picture of the boat makes use of; `shown` are the centres and lines that this view can show. */
export function legendKeys(
  { boat }: Analysis,
  drawnState: DrawnState,
  things: Things,
  shown: readonly (MarkName | 'water')[],
): readonly LegendKey[] {
  const isThere: Readonly<Record<MarkName | 'water', boolean>> = {
    water: drawnState.level !== null,
    G: drawnState.centreOfMass !== null,
    B: drawnState.centreOfBuoyancy !== null,
    M: drawnState.metacentre !== null,
    F: drawnState.centreOfFlotation !== null,
  };
  const has = (kind: ThingKind): boolean => things.parts.some(part => part.kind === kind);
  const keys: readonly (readonly [LegendKey, boolean])[] = [
    ...shown.map(key => [key, isThere[key]] as const),
    ['lead', has('lead')],
    ['foam', has('foam')],
    ['part', has('part')],
    ['ballast', drawnState.fills.some(fill => fill > 0)],
    ['bay', things.bays.length > 0],
    ['ghost', things.ghosts.length > 0],
    ['painted', boat.waterline !== null],
  ];
  return keys.flatMap(([key, isUsed]) => (isUsed ? [key] : []));
}
