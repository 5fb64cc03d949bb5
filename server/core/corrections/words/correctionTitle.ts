import type { FileUnits } from '../../../../schema/units.ts';
import type { Boat } from '../../boat/boat.ts';
import { conditionsOf, divesAtAll, SUBMERGED, SURFACED } from '../../conditions/loadingCondition.ts';
import type { Submerged } from '../../conditions/submerged.ts';
import { withCondition } from '../../figures/figured.ts';
import { FIGURES } from '../../figures/table.ts';
import { conditionOf, type Finding } from '../../findings/finding.ts';
import { judgeIn } from '../../judges/judge.ts';
import { judgeSubmerged } from '../../judges/judgeSubmerged.ts';
import { judgeSurfaced } from '../../judges/judgeSurfaced.ts';
import { capital } from '../../wording/capital.ts';
import { bare, exactText } from '../../wording/exactText.ts';
import { lengthText, massText, tapeText } from '../../wording/numbers.ts';
import type { OpenLoads } from '../balance/open.ts';
import { isInScope, type Scope, scopeOf } from '../balance/row.ts';
import { chanceOfAll, type Floating, inHand, type LimitKept, limitsKept } from '../balance/sureness.ts';
import type { Carried, CorrectedBoat } from '../correction.ts';
import type { Move } from '../room/movers.ts';
import { countWords } from '../room/pieceEntry.ts';
import { tapeOf } from '../room/shift.ts';
import type { Piece } from '../room/slots.ts';
import { chanceWords } from './surenessWords.ts';

/** Longer lines than this are cut off in an editor's menu, characters. */
const MENU = 90;

/** The first of several ways to say the same, the fullest first, that a menu shows whole; else the shortest. */
const fitted = (ways: readonly string[]): string => ways.find(way => way.length <= MENU) ?? ways.at(-1) ?? '';

/** What a correction does and what it brings, for the editor's menu and the report. */
export const correctionTitle = (laid: CorrectedBoat, scope: Scope, before: Floating, open: OpenLoads): string =>
  titleOf(
    doneWays(laid),
    isOut(before, scope)
      ? bringsWays(laid, scope, before.submerged, withinWords(limitsKept(laid, scope, open)))
      : surerWays(laid, scope, before, open),
  );

/** What is moved and what is added, the fullest way first. */
function doneWays({ pieces, moves, boat }: CorrectedBoat): readonly string[] {
  const moved = moves.map(move => `move “${move.part.name}” ${wayOf(move, boat.units)}`);
  const added = pieces.length > 0 ? addedWays(pieces, boat).map(words => [`insert ${words}`]) : [[]];
  const names = moves.length > 1 ? [`move ${moves.map(({ part }) => `“${part.name}”`).join(' and ')}`] : moved;
  return [...added.map(words => [...moved, ...words]), [...names, ...added.at(-1)!]].map(way =>
    capital(way.join(', ')),
  );
}

/** How far and which way a part is moved: "10 mm forward and 3 mm to port". */
export function wayOf({ part, along, across }: Move, units: FileUnits): string {
  return [
    ...(along === 0 ? [] : [`${tapeText(Math.abs(along), tapeOf(part, 0, units))} ${along > 0 ? 'aft' : 'forward'}`]),
    ...(across === 0
      ? []
      : [`${tapeText(Math.abs(across), tapeOf(part, 1, units))} to ${across > 0 ? 'starboard' : 'port'}`]),
  ].join(' and ');
}

const isOut = (floating: Floating, scope: Scope): boolean =>
  conditionsOf(floating)
    .filter(({ condition }) => isInScope(condition, scope, floating.boat))
    .some(inCondition => outOf(judgeIn(floating.boat, inCondition, FIGURES)) > 0);

/** What the boat, within its limits already, gains. */
function surerWays(laid: CorrectedBoat, scope: Scope, before: Floating, open: OpenLoads): readonly string[] {
  const [was, is] = [before, laid].map(boat => chanceWords(chanceOfAll(limitsKept(boat, scope, open))));
  const ways = ['surer to keep all limits'];
  return was === is ? ways : [`surer to keep all limits, ${was} before, ${is} then`, ...ways];
}

/** What is done and what it brings, each said in several ways, the fullest first. */
export const titleOf = (done: readonly string[], brings: readonly string[]): string =>
  fitted(done.flatMap(what => brings.map(gain => `${what}: ${gain}`)));

/** What a correction of every condition brings. */
export function allWithin({ others, boat }: Floating, within = 'within limits'): readonly string[] {
  if (others.length === 0 && !divesAtAll(boat)) return [`surfaced ${within}`];
  const all = others.length > 0 ? 'all' : 'both';
  return [`${all} conditions ${within}`, `${all} ${within}`];
}

/** Of a limit: whose figure keeps less in hand is only just within it. */
const LAST = 0.05;

const withinWords = (kept: readonly LimitKept[]): string =>
  kept.some(each => !each.isLeast && inHand(each) < LAST) ? 'only just within limits' : 'within limits';

function bringsWays(laid: CorrectedBoat, scope: Scope, before: Submerged, within: string): readonly string[] {
  const { boat, surfaced, submerged, onTheWay } = laid;
  if (scope === scopeOf(boat)) {
    const ways = allWithin(laid, within);
    return onTheWay.length > 0 ? ways.map(way => `${way}, the way down not`) : ways;
  }
  const others = othersWords(laid);
  if (scope === SUBMERGED.id) {
    return [`submerged ${within}, surfaced ${outOf(judgeSurfaced(boat, surfaced)) > 0 ? 'not' : 'too'}${others}`];
  }
  if (scope !== SURFACED.id) return [`“${scope}” ${within}`];
  const left = outOf(judgeSubmerged(boat, submerged));
  if (left === 0) return [`surfaced ${within}, submerged too${others}`];
  const worse = before.status === 'neutral' && outOf(judgeSubmerged(boat, before)) < left;
  return [`surfaced ${within}, submerged ${worse ? 'worse' : 'not'}${others}`];
}

/** What the conditions of the builder's own come to besides. */
function othersWords({ boat, others }: CorrectedBoat): string {
  const out = others.filter(inCondition => outOf(judgeIn(boat, inCondition, FIGURES)) > 0);
  return out.length > 1 ? ', others not' : out.map(({ condition: { id } }) => `, “${id}” not`).join('');
}

const outOf = (findings: readonly Finding[]): number =>
  findings.filter(({ severity }) => severity !== 'information').length;

/** The pieces in a line, each with what, how much and where. */
export const piecesWords = (pieces: readonly Piece[], boat: Boat): string =>
  pieces.map(piece => `${amountWords(piece, boat)} in “${piece.slot.bay.name}”`).join(', ');

/**
 * The pieces in a line, the fullest way first: each with what, how much and where; a material said once; only what they
 * come to, with where; only what they come to.
 */
export function addedWays(pieces: readonly Piece[], boat: Boat): readonly string[] {
  const places = (those: readonly Piece[]) => those.map(({ slot }) => `“${slot.bay.name}”`).join(', ');
  const count = (those: readonly Piece[]) => (those.length > 1 ? `${those.length} pieces` : places(those));
  return [
    piecesWords(pieces, boat),
    byMaterial(pieces, those =>
      those
        .map((piece, i) => `${i > 0 ? amountOf(piece, boat) : amountWords(piece, boat)} in “${piece.slot.bay.name}”`)
        .join(', '),
    ),
    byMaterial(pieces, (those, material) => `${totalOf(those, boat.units)} ${material} in ${places(those)}`),
    byMaterial(pieces, (those, material) => `${totalOf(those, boat.units)} ${material} in ${count(those)}`),
    byMaterial(pieces, (those, material) => `${totalOf(those, boat.units)} ${material}`),
  ];
}

const byMaterial = (
  pieces: readonly Piece[],
  say: (those: readonly Piece[], material: Piece['slot']['material']) => string,
): string =>
  (['lead', 'foam'] as const)
    .map(material => ({ material, those: pieces.filter(({ slot }) => slot.material === material) }))
    .flatMap(({ those, material }) => (those.length > 0 ? [say(those, material)] : []))
    .join(', ');

/** With its material: "69 g lead", "3 x 10 g of lead". */
const amountWords = (piece: Piece, boat: Boat): string =>
  `${amountOf(piece, boat)}${piece.counts.length > 0 ? ' of' : ''} ${piece.slot.material}`;

/** Lead by the scale, foam by its three sizes, whole pieces by their number. */
function amountOf(piece: Piece, boat: Boat): string {
  const { slot, station, mass } = piece;
  if (piece.counts.length > 0) return countWords(piece, boat);
  if (slot.material === 'lead') return massText(mass, boat.units);
  const at = (metres: number) => bare(exactText(metres, boat.units));
  return `${at(slot.breadth)} x ${at(slot.depth)} x ${tapeText(station[1] - station[0], boat.units)}`;
}

function totalOf(pieces: readonly Piece[], units: FileUnits): string {
  const sum = (size: (piece: Piece) => number) => pieces.reduce((total, piece) => total + size(piece), 0);
  return pieces[0]?.slot.material === 'foam'
    ? tapeText(
        sum(({ station }) => station[1] - station[0]),
        units,
      )
    : massText(
        sum(({ mass }) => mass),
        units,
      );
}

/** The title of pieces that are carried in a condition of the builder's own, with what is done besides. */
export function carryTitle(laid: CorrectedBoat, carried: readonly Carried[], isForAll: boolean): string {
  const { pieces, moves, boat } = laid;
  const besides = pieces.length + moves.length > 0 ? doneWays(laid) : [];
  const said = (way: number) =>
    carried.map(each => `for “${each.condition.id}” carry ${addedWays(each.pieces, boat)[way]!}`).join(', ');
  const ways = [0, 2, 4].map(said);
  const done = besides.length > 0 ? besides.flatMap(what => ways.map(way => `${what}, ${way}`)) : ways.map(capital);
  return titleOf(done, isForAll ? allWithin(laid) : ['within limits there']);
}

/** The title of a correction that also stiffens the boat, B above G in m before and after. */
export const stiffeningTitle = (laid: CorrectedBoat, before: number, after: number): string => {
  const [was, is] = [before, after].map(height => lengthText(height, laid.boat.units));
  return titleOf(
    addedWays(laid.pieces, laid.boat).map(added => `Insert ${added}`),
    [`${allWithin(laid).at(-1)}, BG ${bare(was!)} to ${is}`],
  );
};

/** The title of the nearest that can be had: the limits that give way, each with its figure where there is room. */
export function nearestTitle(nearest: CorrectedBoat): string {
  const { left } = nearest;
  const names = left.map(limitName).join(', ');
  const count = left.length === 1 ? 'one limit' : `${left.length} limits`;
  return titleOf(doneWays(nearest), [`the nearest; still out: ${names}`, `the nearest; ${count} still out`]);
}

/** Of a condition of the builder's own with its name. */
function limitName(finding: Finding): string {
  const [name, id] = [LIMIT_NAMES[finding.code] ?? finding.code, conditionOf(finding)];
  return id === null || id === SURFACED.id || id === SUBMERGED.id ? name : withCondition(id, name);
}

const LIMIT_NAMES: Readonly<Record<string, string>> = {
  'surfaced-draft': 'draft',
  'surfaced-trim': 'trim',
  'surfaced-heel': 'heel',
  'surfaced-gm': 'metacentric height',
  'submerged-trim': 'submerged trim',
  'submerged-heel': 'submerged heel',
  'submerged-bg': 'BG',
  'neutral-fill': 'tank',
  'submerged-reserve': 'reserve',
  'submerged-light': 'too light to dive',
  'submerged-heavy': 'too heavy to rise',
};
