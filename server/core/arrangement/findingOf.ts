import type { Path } from '../../../schema/path.ts';
import type { Boat } from '../boat/boat.ts';
import { AXES } from '../boat/placed.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding, Mend, Place } from '../findings/finding.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { quoteScalar } from '../text/reading/quoteScalar.ts';
import { lengthText, stationWords } from '../wording/numbers.ts';
import type { Blame } from './blame.ts';
import { isSure } from './conflict.ts';
import { fitsIn } from './inCompartment.ts';
import type { Occupant } from './occupant.ts';
import { blameWords } from './words.ts';

/** What a finding is made with besides the blame. */
interface Around {
  /** By another origin of its station. */
  readonly mends: readonly Mend[];
  readonly length: number | null;
  readonly boat: Boat;
  readonly things: readonly Occupant[];
  readonly shapes: Shapes;
}

export function findingOf(blame: Blame, around: Around): Finding {
  const { of, conflicts } = blame;
  const { length, boat } = around;
  const [worst] = conflicts;
  const severity = conflicts.some(isSure) ? 'warning' : 'information';
  const mends = [...around.mends, ...otherHome(blame, around), ...standsOutside(blame)];
  const byMesh = meshWords(blame, around);
  const code: FindingCode = byMesh ? 'mesh-beyond-hull' : of === null ? 'hull-too-short' : worst!.code;
  return {
    code,
    severity,
    about: 'file',
    message: byMesh ?? blameWords(blame, length, boat.units),
    place: of === null ? { on: 'value', path: ['hull', 'length'] } : placeOf(of, worst!.axis),
    ...(mends.length > 0 ? { mends } : {}),
  };
}

/** The figure that says where it lies along an axis; the entry as a whole where none does. */
function placeOf({ entry, checked, kind }: Occupant, axis: 0 | 1 | 2): Place {
  const key = AXES[axis];
  const path: Path = entry.path;
  if (kind === 'bay') return { on: 'value', path: [...path, key] };
  if (checked?.mesh || checked?.forms) return { on: 'entry', path };
  if (checked?.profile && axis === 0) return { on: 'value', path: [...path, 'profile'] };
  if (checked?.sections && axis !== 1) return { on: 'value', path: [...path, 'sections'] };
  return checked?.[key] === undefined ? { on: 'entry', path } : { on: 'value', path: [...path, key] };
}

/** A compartment that it does fit in, where it says another. */
function otherHome({ of, conflicts }: Blame, { things, shapes }: Around): readonly Mend[] {
  if (!of || !conflicts.some(conflict => conflict.code === 'sticks-out' && conflict.of === of)) return [];
  const home = things.find(
    thing => thing.kind === 'compartment' && thing.entry.name !== of.inside && fitsIn(of, thing, shapes),
  );
  if (!home) return [];
  const text = quoteScalar(home.entry.name, true);
  const place: Place = { on: 'value', path: [...of.entry.path, 'in'] };
  return [{ title: `Change to “in: ${text}”, where it fits`, changes: [{ kind: 'replace', place, text }] }];
}

const OUTSIDE: ReadonlySet<string> = new Set(['beyond-hull', 'below-keel', 'outside-hull']);

/** It is meant to stand there. */
function standsOutside({ of, conflicts }: Blame): readonly Mend[] {
  const isOutside = conflicts.every(({ code, of: thing }) => thing === of && OUTSIDE.has(code));
  if (!of || of.kind === 'bay' || !isOutside) return [];
  return [
    {
      title: 'Add “outside: true”: it is meant to stand outside the hull',
      changes: [{ kind: 'add-key', path: of.entry.path, key: 'outside', text: 'true' }],
    },
  ];
}

/** A mesh that reaches past either end of the hull by more than this share of its length has a wrong unit or axes. */
const BEYOND = 0.1;

function meshWords({ of, conflicts }: Blame, { length, boat }: Around): string | null {
  if (!of || length === null || !conflicts.some(({ code, by }) => code === 'beyond-hull' && by > BEYOND * length))
    return null;
  const files = (of.checked?.forms ?? [of.checked]).flatMap(form => form?.mesh?.file ?? []);
  if (files.length === 0) return null;
  const { from, to } = of.bounds;
  return `With “${files.join('” and “')}” this reaches from ${stationWords(from[0], boat.units)} to ${stationWords(to[0], boat.units)}, but the hull is ${lengthText(length, boat.units)} long. Check “unit”, “axes” and “at” of the mesh, and the hull’s length.`;
}
