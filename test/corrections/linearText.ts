import type { BalanceRow } from '../../server/core/corrections/balance/row.ts';
import type { Slot } from '../../server/core/corrections/room/slots.ts';

/*
 * The programme written a second time, from what the rows and slots mean, as a text in the LP format that other solvers
 * read. Masses m in g, moments in g·mm: q aft of the forward end of the slot's room, s to starboard and p to port of
 * where the piece would rest athwart.
 */

const TANGENTS = 5;
const FOAM_PRICE = 30;
const PRICE_OFF_CENTRE = 1e-4;

type Terms = readonly (readonly [factor: number, variable: string])[];

const sum = (terms: Terms): string => {
  const written = terms
    .filter(([factor]) => factor !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`);
  return written.length > 0 ? written.join(' ') : '0 m0';
};

/** Where a piece rests athwart: nearest to the centreline. */
const restOf = ({ offset }: Slot) => Math.min(Math.max(0, offset[0]), offset[1]);

export function linearText(slots: readonly Slot[], rows: readonly BalanceRow[]): string {
  const lines: string[] = [];
  const objective: [number, string][] = [];
  const bounds: string[] = [];
  const whole: string[] = [];
  for (const [r, { measure, wanted, effectOf }] of rows.entries()) {
    // In g, a mass row as it is; a moment row with its arms in mm, and the moments q and p as they are.
    const scale = measure === 'mass' ? 1e3 : 1e6;
    const terms: Terms = slots.flatMap((slot, i): Terms => {
      const { perMass, perAft, perStarboard } = effectOf(slot);
      return [
        [((perMass + perStarboard * (restOf(slot) - slot.offset[0])) * scale) / 1e3, `m${i}`],
        [(perAft * scale) / 1e6, `q${i}`],
        [(perStarboard * scale) / 1e6, `s${i}`],
        [(-perStarboard * scale) / 1e6, `p${i}`],
      ];
    });
    if ('slack' in wanted) {
      // The way off the aim in stretches, each at its own price and no longer than it is.
      const stretches = wanted.off.flatMap(({ size, price }, k) =>
        [-1, 1].map(sign => ({ sign, size, price, name: `off${r}x${k}${sign > 0 ? 'under' : 'over'}` })),
      );
      lines.push(
        `${sum([...terms, ...stretches.map(({ sign, name }) => [sign, name] as const)])} = ${wanted.value * scale}`,
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
    if (slot.pieces.length > 0) {
      lines.push(`${sum([[1, `m${i}`], ...slot.pieces.map((mass, k) => [-1e3 * mass, `n${i}x${k}`] as const)])} = 0`);
      whole.push(...slot.pieces.map((_, k) => `n${i}x${k}`));
    }
  }
  return [
    'Minimize',
    ` cost: ${sum(objective)}`,
    'Subject To',
    ...lines.map((line, n) => ` c${n}: ${line}`),
    'Bounds',
    ...bounds.map(bound => ` ${bound}`),
    ...(whole.length > 0 ? ['General', ` ${whole.join(' ')}`] : []),
    'End',
  ].join('\n');
}
