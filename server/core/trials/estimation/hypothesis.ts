import { cholesky, forward, inner, logDeterminant, type Matrix, solve, type Triangle, times } from './cholesky.ts';
import { logSum, mixed } from './mixture.ts';
import type { Normal, Space } from './space.ts';
import { withinBounds, withinReach } from './truncated.ts';

/** A sum of few: places, and how much of each. */
type Few = readonly (readonly [place: number, share: number])[];

/**
 * One piece of what is believed beforehand of several w together: they are `middle + spread·z`, z standard normal. What is
 * not normal (a mass of which only the scale is open, a place on either side of the water) is made of many.
 */
export interface PriorPiece {
  /** Natural logarithm of its share. */
  readonly logShare: number;
  /** In the thing's basis; the spread for each z. */
  readonly middle: Few;
  readonly spread: readonly Few[];
  /** Those z that are even over a stretch instead of normal, such as a place in a room. */
  readonly even: readonly number[];
  /** Facts that are told of it, such as a mass: their middle, and for each z what it does to them. */
  readonly facts: { readonly middle: readonly number[]; readonly spread: readonly Few[] };
}

/** Several w that are believed together, such as the loads of a weight. */
export interface SupposedThing {
  /** Natural logarithm of its share among those that it is one of. */
  readonly logShare: number;
  /** Each vector of the basis by its w: in it a piece is a sum of few. */
  readonly basis: Matrix;
  readonly pieces: readonly PriorPiece[];
}

/** What the readings make of a hypothesis. */
export interface Judged {
  /** Natural logarithm of how well it foretold the readings, what was open of it averaged over. */
  readonly logEvidence: number;
  readonly w: Normal;
  readonly facts: Normal;
}

/** A space in which some columns, each standard normal beforehand, are averaged out too. */
export interface Narrowed {
  readonly stiffness: Matrix;
  readonly pull: readonly number[];
  readonly logEvidence: number;
}

/** Columns `open` averaged out; what is left is of `places`. */
export function narrowed(space: Space, open: readonly number[], places: readonly number[]): Narrowed {
  const { stiffness, pull } = space;
  const bare = -(space.base + space.spread) / 2;
  const seen = { stiffness: places.map(a => places.map(b => stiffness[a]![b]!)), pull: places.map(a => pull[a]!) };
  if (open.length === 0) return { ...seen, logEvidence: bare };
  const inside = openedUp(space, open);
  const ofOpen = solve(
    inside,
    open.map(a => pull[a]!),
  );
  const across = places.map(a =>
    solve(
      inside,
      open.map(b => stiffness[a]![b]!),
    ),
  );
  return {
    stiffness: places.map((_, i) =>
      places.map(
        (b, k) => seen.stiffness[i]![k]! - open.reduce((sum, c, n) => sum + across[i]![n]! * stiffness[c]![b]!, 0),
      ),
    ),
    pull: places.map((a, i) => seen.pull[i]! - open.reduce((sum, c, n) => sum + stiffness[a]![c]! * ofOpen[n]!, 0)),
    logEvidence:
      bare +
      inner(
        open.map(a => pull[a]!),
        ofOpen,
      ) /
        2 -
      logDeterminant(inside) / 2,
  };
}

/** How two columns averaged out foretell the readings: as above, in closed form, for there are many pairs. */
export function evidenceOfPair({ stiffness, pull, base, spread }: Space, a: number, b: number): number {
  const [one, two, both] = [stiffness[a]![a]! + 1, stiffness[b]![b]! + 1, stiffness[a]![b]!];
  const determinant = one * two - both * both;
  const [p, q] = [pull[a]!, pull[b]!];
  const told = (two * p * p - 2 * both * p * q + one * q * q) / determinant;
  return (told - base - spread - Math.log(determinant)) / 2;
}

/** The stiffness of columns that are each standard normal beforehand. */
const openedUp = ({ stiffness }: Space, open: readonly number[]) =>
  cholesky(open.map(a => open.map(b => stiffness[a]![b]! + (a === b ? 1 : 0))))!;

interface JudgedPiece {
  readonly logWeight: number;
  /** Of z, and the triangle of its precision. */
  readonly mean: readonly number[];
  readonly triangle: Triangle;
}

/** A space seen along a thing's basis. */
const inBasis = ({ stiffness, pull, logEvidence }: Narrowed, basis: Matrix): Narrowed => {
  const images = basis.map(vector => times(stiffness, vector));
  return {
    stiffness: basis.map(vector => images.map(image => inner(vector, image))),
    pull: basis.map(vector => inner(vector, pull)),
    logEvidence,
  };
};

/** How a piece foretells the readings, and its z by them. */
function judgePiece({ stiffness, pull }: Narrowed, { logShare, middle, spread }: PriorPiece): JudgedPiece | null {
  const matrix = spread.map((one, a) => {
    const row = new Array<number>(a + 1).fill(0);
    for (let b = 0; b <= a; b++) row[b] = product(stiffness, one, spread[b]!);
    row[a]! += 1;
    return row;
  });
  const triangle = cholesky(matrix);
  if (!triangle) return null;
  const aim = spread.map(one => along(pull, one) - product(stiffness, one, middle));
  const mean = solve(triangle, aim);
  const logWeight =
    logShare +
    along(pull, middle) -
    product(stiffness, middle, middle) / 2 +
    inner(aim, mean) / 2 -
    logDeterminant(triangle) / 2;
  return { logWeight, mean, triangle };
}

function along(vector: readonly number[], few: Few): number {
  let sum = 0;
  for (let n = 0; n < few.length; n++) sum += few[n]![1] * vector[few[n]![0]]!;
  return sum;
}

function product(matrix: Matrix, a: Few, b: Few): number {
  let sum = 0;
  for (let n = 0; n < a.length; n++) {
    const row = matrix[a[n]![0]]!;
    const share = a[n]![1];
    for (let m = 0; m < b.length; m++) sum += share * b[m]![1] * row[b[m]![0]]!;
  }
  return sum;
}

interface Weighed extends JudgedPiece {
  readonly piece: PriorPiece;
  readonly basis: Matrix;
}

/** All pieces of several things, each by its share; of those that count, what is even is kept within its stretch. */
function weighed(space: Narrowed, things: readonly SupposedThing[]): readonly Weighed[] {
  const all: Weighed[] = [];
  let best = Number.NEGATIVE_INFINITY;
  for (const { logShare, pieces, basis } of things) {
    const seen = inBasis(space, basis);
    for (const piece of pieces) {
      const found = judgePiece(seen, piece);
      if (!found) continue;
      const { mean, triangle } = found;
      const logWeight = logShare + found.logWeight;
      best = Math.max(best, logWeight);
      all.push({ mean, triangle, piece, basis, logWeight });
    }
  }
  return all
    .filter(({ logWeight }) => logWeight >= best - NO_WEIGHT)
    .map(each => ({ ...each, logWeight: each.logWeight + inside(each) }));
}

/** Smaller by so much (natural logarithm) a piece counts for nothing. */
const NO_WEIGHT = 12;

/** How much likelier it is that what is even lies within its stretch than it was beforehand (natural logarithm). */
function inside({ piece, mean, triangle }: Weighed): number {
  return piece.even.reduce((sum, k) => {
    const column = forward(
      triangle,
      mean.map((_, i) => (i === k ? 1 : 0)),
    );
    return sum + Math.log(withinBounds(mean[k]!, inner(column, column)) / withinBounds(0, 1));
  }, 0);
}

/** How one of several things foretells the readings, each by its share; only that. */
export const evidenceOf = (space: Narrowed, things: readonly SupposedThing[]): number =>
  space.logEvidence + logSum(weighed(space, things).map(({ logWeight }) => logWeight));

/** The thing by the readings, whichever of several it is. */
export function judgeThings(space: Narrowed, things: readonly SupposedThing[]): Judged {
  const judged = weighed(space, things);
  const total = logSum(judged.map(({ logWeight }) => logWeight));
  const told = judged
    .map(({ logWeight, piece, basis, ...found }) => ({
      weight: Math.exp(logWeight - total),
      piece,
      basis,
      z: piece.even.reduce(withinReach, ofZ(found)),
    }))
    .filter(({ weight }) => weight > LEAST_SHARE);
  const ofFacts = ({ middle, spread }: PriorPiece['facts']): Columns => ({
    middle,
    columns: spread.map(few => middle.map((_, i) => few.find(([place]) => place === i)?.[1] ?? 0)),
  });
  return {
    logEvidence: space.logEvidence + total,
    w: mixed(told.map(({ piece, basis, weight, z }) => ({ weight, ...carried(inW(piece, basis), z) }))),
    facts: mixed(told.map(({ piece, weight, z }) => ({ weight, ...carried(ofFacts(piece.facts), z) }))),
  };
}

/** Pieces of less weight are left out of what is told. */
const LEAST_SHARE = 1e-4;

function ofZ({ mean, triangle }: Pick<JudgedPiece, 'mean' | 'triangle'>): Normal {
  const white = mean.map((_, k) =>
    forward(
      triangle,
      mean.map((__, i) => (i === k ? 1 : 0)),
    ),
  );
  return { mean, covariance: white.map(a => white.map(b => inner(a, b))) };
}

function inW({ middle, spread }: PriorPiece, basis: Matrix): Columns {
  const whole = (few: Few) =>
    basis[0]!.map((_, i) => few.reduce((sum, [place, share]) => sum + share * basis[place]![i]!, 0));
  return { middle: whole(middle), columns: spread.map(whole) };
}

interface Columns {
  readonly middle: readonly number[];
  readonly columns: Matrix;
}

/** Middle + columns·z. */
function carried({ middle, columns }: Columns, { mean, covariance }: Normal): Normal {
  const rows = middle.map((_, i) => columns.map(column => column[i]!));
  const halves = rows.map(row => times(covariance, row));
  return {
    mean: middle.map((value, i) => value + inner(rows[i]!, mean)),
    covariance: rows.map(row => halves.map(half => inner(row, half))),
  };
}

/** No thing can foretell the readings better than this (natural logarithm): the likelihood at its greatest. */
export function mostEvidence({ stiffness, pull, logEvidence }: Narrowed): number {
  const triangle = cholesky(stiffness.map((row, i) => row.map((value, k) => (i === k ? value * (1 + RIDGE) : value))));
  return triangle ? logEvidence + inner(pull, solve(triangle, pull)) / 2 : Number.POSITIVE_INFINITY;
}

/** Keeps columns that hang on each other apart. */
const RIDGE = 1e-9;

/** Columns that were averaged out, beside the w of a thing: all of them together by the readings, the open ones first. */
export function withOpen(space: Space, open: readonly number[], places: readonly number[], w: Normal): Normal {
  const { stiffness, pull } = space;
  if (open.length === 0) return w;
  const inside = openedUp(space, open);
  const left = open.map(a => pull[a]! - places.reduce((sum, b, k) => sum + stiffness[a]![b]! * w.mean[k]!, 0));
  const own = open.map((_, n) =>
    solve(
      inside,
      open.map((__, k) => (n === k ? 1 : 0)),
    ),
  );
  const across = places.map(b =>
    solve(
      inside,
      open.map(a => stiffness[a]![b]!),
    ),
  );
  // How the open ones answer to w.
  const answer = open.map((_, n) => places.map((__, k) => -across[k]![n]!));
  const ofBoth = answer.map(row => times(w.covariance, row));
  return {
    mean: [...solve(inside, left), ...w.mean],
    covariance: [
      ...open.map((_, n) => [...open.map((__, k) => own[n]![k]! + inner(answer[n]!, ofBoth[k]!)), ...ofBoth[n]!]),
      ...places.map((_, i) => [...open.map((__, n) => ofBoth[n]![i]!), ...w.covariance[i]!]),
    ],
  };
}
