/** Where a file counts its stations and heights from, with what it takes to place them. */
export interface FileOrigin {
  readonly stations: 'bow' | 'stern' | 'aft of midships' | 'forward of midships';
  readonly heights: 'baseline' | 'waterline';
  /** Of the hull, m. */
  readonly length: number;
  /** Height of the painted waterline above the baseline, at half length, m. */
  readonly waterline: number;
}

/** What counts from an origin: a station along the boat, or a height. Offsets count from the centreline in every file. */
export type Counted = 'station' | 'height';

interface WithOrigin {
  /** Null or left out: from the bow tip and the baseline. */
  readonly origin?: FileOrigin | null;
}

/** A place as the file counts it, m, in boat axes, m: aft of the bow tip, above the baseline. */
export function placedAt(written: number, counted: Counted, { origin }: WithOrigin): number {
  if (!origin) return written;
  const { zero, way } = countOf(counted, origin);
  return zero + way * written;
}

/** A place in boat axes as the file counts it, m. */
export function countedAt(place: number, counted: Counted, { origin }: WithOrigin): number {
  if (!origin) return place;
  const { zero, way } = countOf(counted, origin);
  return way * (place - zero);
}

/** The station or height that the file calls 0, m in boat axes, and which way it counts: 1 aft or up, -1 forward. */
function countOf(counted: Counted, origin: FileOrigin): { readonly zero: number; readonly way: 1 | -1 } {
  if (counted === 'height') return { zero: origin.heights === 'waterline' ? origin.waterline : 0, way: 1 };
  switch (origin.stations) {
    case 'bow':
      return { zero: 0, way: 1 };
    case 'stern':
      return { zero: origin.length, way: -1 };
    case 'aft of midships':
      return { zero: origin.length / 2, way: 1 };
    case 'forward of midships':
      return { zero: origin.length / 2, way: -1 };
  }
}

/** Stations count forward: what runs from bow to stern falls. */
export const countsForward = ({ origin }: WithOrigin): boolean =>
  origin?.stations === 'stern' || origin?.stations === 'forward of midships';
