import type { Path } from '../../../schema/path.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding, Mend, Severity } from '../findings/finding.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import type { StockDensities } from './density.ts';
import { entryFault, valueFault } from './fault.ts';

export type RoomLookup = (compartment: string | null) => readonly Form[];

/** What an entry needs to know of the rest of the file and of the world. */
export interface ReadingContext {
  readonly units: FileUnits;
  /** Model over full size; null when not given. */
  readonly scale: number | null;
  readonly stock: StockDensities;
  /** Mesh files by name; what is asked of it is noted, so that an entry is read again when its file changes. */
  readonly meshes: MeshLookup;
  /**
   * The forms that a thing may lie in: of the compartment of that name, of the shells for null. What is asked of it is noted,
   * so that an entry is read again when they change.
   */
  readonly roomsOf: RoomLookup;
  /** What was made from forms before. */
  readonly shapes: Shapes;
}

/** What a form is for: a wall may be open, what displaces or holds water must be closed, in a dry place neither matters. */
export type FormUse = 'wall' | 'displaces' | 'holds' | 'dry';

/** Where a form stands in the file, and what becomes of it. */
export interface Setting {
  /** Of the entry, or of the one among its `forms`. */
  readonly path: Path;
  readonly around: ReadingContext;
  readonly findings: Finding[];
  readonly use: FormUse;
  /** The flat ends and deck belong to it. */
  readonly endsClosed: boolean;
  /** What the thing lies in, null for the flooded hull; left out for shells and compartments, which lie in nothing. */
  readonly inside?: string | null;
}

/** Tells a fault of the value at `keys` below the entry, or of the entry as a whole. */
export function tell(
  { path, findings }: Setting,
  code: FindingCode,
  keys: Path,
  message: string,
  more: { severity?: Severity; mends?: readonly Mend[] } = {},
): null {
  findings.push(
    keys.length === 0
      ? entryFault(code, path, message, more.severity)
      : valueFault(code, [...path, ...keys], message, more),
  );
  return null;
}
