import type { BalanceRow } from '../../server/core/corrections/balance/row.ts';
import type { Mover } from '../../server/core/corrections/room/movers.ts';
import type { Slot } from '../../server/core/corrections/room/slots.ts';

/*
 * The programme written a second time, from what the rows and slots mean, as a text in the LP format that other solvers
 * read. Masses m in g, moments in g·mm: q aft of the forward end of the slot's room, s to starboard and p to port of
 * where the piece would rest athwart.
 */

const TANGENTS = 5;
const FOAM_PRICE = 30;
const PRICE_OFF_CENTRE = 1e-4;

type Term = readonly [factor: number, variable: string];
type Terms = readonly Term[];

/** A trace of rounding misleads the solver: less than this, in g or g·mm, is nothing. */
const TRACE = 1e-12;

const told = (value: number): number => (Math.abs(value) < TRACE ? 0 : value);

const sum = (terms: Terms): string => {
  const written = terms
    .filter(([factor]) => told(factor) !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`);
  return written.length > 0 ? written.join(' ') : '0 m0';
};

/** Where a piece rests athwart: nearest to the centreline. */
const restOf = ({ offset }: Slot) => Math.min(Math.max(0, offset[0]), offset[1]);

/** What else a programme may say. */
export interface Besides {
  /** What may be moved: its moments along and across, g·mm. */
  readonly movers?: readonly Mover[];
  /** Of so many things at most. */
  readonly mostMoved?: number;
  /** Slots by number of which only one group may be used: ways to fill one bay. */
  readonly either?: readonly (readonly (readonly number[])[])[];
  /** So many pieces at most. */
  readonly mostPieces?: number;
  /** Masses that are cut already, kg. */
  readonly cut?: readonly number[];
}

export function linearText(slots: readonly Slot[], rows: readonly BalanceRow[], besides: Besides = {}): string {
  const { movers = [], either = [], cut, mostPieces, mostMoved } = besides;
  const lines: string[] = [];
  const yesOrNo: string[] = [];
  const objective: [number, string][] = [];
  const bounds: string[] = [];
  const whole: string[] = [];
  for (const [r, { measure, wanted, effectOf, axis }] of rows.entries()) {
    // In g, a mass row as it is; a moment row with its arms in mm, and the moments q and p as they are.
    const scale = measure === 'mass' ? 1e3 : 1e6;
    const ofMoves: Terms = movers.flatMap((_, j): Terms => {
      const name = axis === 'along' ? 'x' : axis === 'across' ? 'y' : null;
      return name === null ? [] : [[scale / 1e6, `${name}${j}`]];
    });
    const ofPieces = slots.flatMap((slot, i): Terms => {
      const { perMass, perAft, perStarboard } = effectOf(slot);
      return [
        [((perMass + perStarboard * (restOf(slot) - slot.offset[0])) * scale) / 1e3, `m${i}`],
        [(perAft * scale) / 1e6, `q${i}`],
        [(perStarboard * scale) / 1e6, `s${i}`],
        [(-perStarboard * scale) / 1e6, `p${i}`],
      ];
    });
    const terms: Terms = [...ofPieces, ...ofMoves];
    if ('slack' in wanted) {
      // The way off the aim in stretches, each at its own price and no longer than it is.
      const stretches = wanted.off.flatMap(({ size, price }, k) =>
        [-1, 1].map(sign => ({ sign, size, price, name: `off${r}x${k}${sign > 0 ? 'under' : 'over'}` })),
      );
      lines.push(
        `${sum([...terms, ...stretches.map(({ sign, name }) => [sign, name] as const)])} = ${told(wanted.value * scale)}`,
      );
      for (const { size, price, name } of stretches) {
        objective.push([price / scale, name]);
        bounds.push(`${name} <= ${size * scale}`);
      }
    } else {
      const comfortable = wanted.near.reduce((least, { size }) => least + size, wanted.least);
      const short = wanted.near.map((_, k) => [1, `near${r}x${k}`] as const);
      if (Number.isFinite(wanted.least)) lines.push(`${sum([...terms, ...short])} >= ${comfortable * scale}`);
      for (const [k, { size, price }] of wanted.near.entries()) {
        objective.push([price / scale, `near${r}x${k}`]);
        bounds.push(`near${r}x${k} <= ${size * scale}`);
      }
      if (Number.isFinite(wanted.most)) lines.push(`${sum(terms)} <= ${wanted.most * scale}`);
    }
  }
  for (const [i, slot] of slots.entries()) {
    objective.push([slot.material === 'lead' ? 1 : FOAM_PRICE, `m${i}`]);
    const long = (slot.station[1] - slot.station[0]) * 1e3;
    // kg/m is g/mm.
    const lambda = slot.massPerLength;
    for (let t = 0; t < TANGENTS; t++) {
      // A piece of m grams is m/λ long, and so its middle is at least half of that from either end: q >= m²/2λ, of which
      // the tangent at m = a is a·m/λ - a²/2λ.
      const a = (long * lambda * t) / (TANGENTS - 1);
      lines.push(
        `${sum([
          [1, `q${i}`],
          [-a / lambda, `m${i}`],
        ])} >= ${-(a * a) / (2 * lambda)}`,
      );
      lines.push(
        `${sum([
          [long - a / lambda, `m${i}`],
          [-1, `q${i}`],
        ])} >= ${-(a * a) / (2 * lambda)}`,
      );
    }
    const rest = restOf(slot);
    const starboard = (slot.offset[1] - rest) * 1e3;
    const port = (rest - slot.offset[0]) * 1e3;
    lines.push(
      `${sum([
        [1, `s${i}`],
        [-starboard, `m${i}`],
      ])} <= 0`,
    );
    lines.push(
      `${sum([
        [1, `p${i}`],
        [-port, `m${i}`],
      ])} <= 0`,
    );
    objective.push([PRICE_OFF_CENTRE, `s${i}`], [PRICE_OFF_CENTRE, `p${i}`]);
    if (cut) lines.push(`1 m${i} = ${Math.min(1e3 * cut[i]!, long * lambda)}`);
    if (mostPieces !== undefined || either.length > 0) {
      yesOrNo.push(`use${i}`);
      lines.push(
        `${sum([
          [1, `m${i}`],
          [-long * lambda, `use${i}`],
        ])} <= 0`,
      );
    }
    if (slot.pieces.length > 0 && !cut) {
      lines.push(`${sum([[1, `m${i}`], ...slot.pieces.map((mass, k) => [-1e3 * mass, `n${i}x${k}`] as const)])} = 0`);
      whole.push(...slot.pieces.map((_, k) => `n${i}x${k}`));
    }
  }
  if (mostPieces !== undefined && slots.length > 0)
    lines.push(`${sum(slots.map((_, i) => [1, `use${i}`] as const))} <= ${mostPieces}`);
  for (const [e, groups] of either.entries()) {
    for (const [g, group] of groups.entries()) {
      yesOrNo.push(`way${e}x${g}`);
      for (const i of group)
        lines.push(
          `${sum([
            [1, `use${i}`],
            [-1, `way${e}x${g}`],
          ])} <= 0`,
        );
    }
    lines.push(`${sum(groups.map((_, g) => [1, `way${e}x${g}`] as const))} <= 1`);
  }
  for (const [j, { part, along, across }] of movers.entries()) {
    yesOrNo.push(`moved${j}`);
    for (const [name, { least, most }] of [
      ['x', along],
      ['y', across],
    ] as const) {
      const [back, forth] = [least, most].map(end => end * part.mass * 1e6);
      bounds.push(`${back} <= ${name}${j} <= ${forth}`);
      lines.push(
        `${sum([
          [1, `${name}${j}`],
          [-Math.max(forth!, 0), `moved${j}`],
        ])} <= 0`,
      );
      lines.push(
        `${sum([
          [1, `${name}${j}`],
          [Math.max(-back!, 0), `moved${j}`],
        ])} >= 0`,
      );
    }
  }
  if (mostMoved !== undefined && movers.length > 0)
    lines.push(`${sum(movers.map((_, j) => [1, `moved${j}`] as const))} <= ${mostMoved}`);
  return [
    'Minimize',
    ` cost: ${sum(objective)}`,
    'Subject To',
    ...lines.map((line, n) => ` c${n}: ${line}`),
    'Bounds',
    ...bounds.map(bound => ` ${bound}`),
    ...(whole.length > 0 ? ['General', ` ${whole.join(' ')}`] : []),
    ...(yesOrNo.length > 0 ? ['Binary', ` ${yesOrNo.join(' ')}`] : []),
    'End',
  ].join('\n');
}
