import type { Boat, Part } from '../boat/boat.ts';
import { assembleBodies, type Bodies, type BodyShelf } from '../bodies/assemble.ts';
import { floatSubmerged } from '../conditions/submerged.ts';
import { floatSurfaced, type SurfacedAfloat } from '../conditions/surfaced.ts';
import type { EntryText } from '../findings/finding.ts';
import { judgeSurfaced } from '../findings/judgeSurfaced.ts';
import type { Correction } from './correction.ts';
import { correctionTitle } from './correctionTitle.ts';
import { findLevers, type Lever, type Piece } from './levers.ts';
import {
  effectOf,
  effectOfPart,
  needWithin,
  type Shortfall,
  shortfallAt,
  type Target,
  targetSurface,
} from './needs.ts';
import { nameFor, partOfEntry, pieceAsEntry } from './pieceEntry.ts';
import { leastMass, type Share } from './program.ts';
import { cutPiece } from './rounding.ts';

/** Parts of the limits that the programme may use up, tried in turn: near the middle first, then as far as they go. */
const PARTS_OF_LIMIT = [0.15, 0.4, 0.7, 0.9];
/** Corrections offered at most, and candidates floated for them. */
const MOST_OFFERED = 5;
const MOST_FLOATED = 12;
/** Rounds of cutting, floating and solving again with what the pieces really do. */
const MOST_ROUNDS = 3;

interface Scene {
  readonly boat: Boat;
  readonly shelf: BodyShelf;
  readonly bodies: Bodies;
  readonly target: Target;
  readonly shortfall: Shortfall;
}

interface Candidate {
  readonly levers: readonly Lever[];
  readonly shares: readonly Share[];
  readonly part: number;
}

/**
 * Corrections of one or two pieces that bring the floating boat inside its surfaced limits, the best first: fewest
 * pieces, then nearest to the middle of the limits, then least mass. Each is cut to what can be cut, written as its
 * entry, read back and floated by the full model; what does not clear every surfaced finding is not offered.
 */
export function proposeSurfaced(
  boat: Boat,
  bodies: Bodies,
  surfaced: SurfacedAfloat,
  shelf: BodyShelf,
): readonly Correction[] {
  if (judgeSurfaced(boat, surfaced).length === 0) return [];
  const target = targetSurface(boat, surfaced);
  const scene: Scene = { boat, shelf, bodies, target, shortfall: shortfallAt(target, boat, bodies) };
  const levers = findLevers(boat);
  const single = levers.map(lever => [lever]);
  const pairs = levers.flatMap((a, i) => levers.slice(i + 1).map(b => [a, b]));
  const offered: Correction[] = [];
  for (const group of [single, pairs]) {
    const candidates = group.flatMap(chosen => solveFor(chosen, scene) ?? []).sort(byWorth);
    for (const candidate of candidates.slice(0, MOST_FLOATED)) {
      const correction = realise(candidate, scene);
      if (correction) offered.push(correction);
      if (offered.length === MOST_OFFERED) return offered;
    }
  }
  return offered;
}

function solveFor(levers: readonly Lever[], scene: Scene): Candidate | null {
  const effects = levers.map(lever => effectOf(lever, scene.target, scene.bodies.density));
  for (const part of PARTS_OF_LIMIT) {
    const shares = leastMass(effects, needWithin(scene.shortfall, part));
    if (shares) return { levers, shares, part };
  }
  return null;
}

const massOf = (candidate: Candidate): number => candidate.shares.reduce((sum, share) => sum + share.mass, 0);

const byWorth = (a: Candidate, b: Candidate): number => (a.part === b.part ? massOf(a) - massOf(b) : a.part - b.part);

/** Cuts and floats a candidate; solved again with what the cut pieces really do until the full model is content. */
function realise(candidate: Candidate, scene: Scene): Correction | null {
  let shares = candidate.shares;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const pieces = shares.flatMap(share => cutPiece(share, scene.boat.units) ?? []);
    if (pieces.length === 0 || pieces.length < candidate.levers.length) return null;
    const laid = layPieces(pieces, scene);
    if (!laid) return null;
    if (laid.correction) return laid.correction;
    const effects = pieces.map((piece, i) =>
      effectOfPart(piece.lever, laid.parts[i]!, scene.target, scene.bodies.density),
    );
    const again = leastMass(effects, needWithin(scene.shortfall, candidate.part));
    if (!again) return null;
    shares = again;
  }
  return null;
}

interface Laid {
  readonly parts: readonly Part[];
  /** Null when the full model still has something to say about the surface. */
  readonly correction: Correction | null;
}

function layPieces(pieces: readonly Piece[], { boat, shelf, bodies }: Scene): Laid | null {
  const parts: Part[] = [];
  const entries: EntryText[] = [];
  for (const piece of pieces) {
    const name = nameFor(piece, [...boat.payload, ...boat.shells, ...boat.compartments, ...boat.tanks, ...parts]);
    const entry = pieceAsEntry(piece, name, boat);
    const part = partOfEntry(entry, boat.payload.length + parts.length, boat);
    if (!part) return null;
    parts.push(part);
    entries.push(entry);
  }
  const corrected: Boat = { ...boat, payload: [...boat.payload, ...parts] };
  const after = assembleBodies(corrected, shelf);
  const surfaced = floatSurfaced(after, boat.length);
  if (surfaced.status !== 'afloat' || judgeSurfaced(corrected, surfaced).length > 0) return { parts, correction: null };
  const submerged = floatSubmerged(after);
  const before = floatSubmerged(bodies);
  const title = correctionTitle(pieces, corrected, surfaced, { before, after: submerged });
  return {
    parts,
    correction: { title, condition: 'surfaced', pieces, parts, entries, boat: corrected, surfaced, submerged },
  };
}
