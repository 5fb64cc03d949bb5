import { add, scale, type Vec3 } from '../form/vector.ts';
import { boxOf, type Cuttable, type Immersion } from './immersion.ts';
import type { Wall } from './wall.ts';

const NOWHERE: Vec3 = [0, 0, 0];

/**
 * Several bodies as one: their sums. The box round each tells most of them wholly wet or dry by a few products, so that a
 * plane costs real work only near itself.
 */
export function compoundSolid(bodies: readonly Cuttable[]): Cuttable {
  const records = recordsOf(bodies);
  const extent = (n: Vec3): readonly [number, number] => {
    let lowest = Infinity;
    let highest = -Infinity;
    bodies.forEach((body, i) => {
      const middle = heightOf(records, RECORD * i, n);
      const reach = reachOf(records, RECORD * i, n);
      if (middle - reach >= lowest && middle + reach <= highest) return;
      const [low, high] = body.extent(n);
      if (low < lowest) lowest = low;
      if (high > highest) highest = high;
    });
    return [lowest, highest];
  };
  let rough: Cuttable | undefined;
  return {
    get rough() {
      if (bodies.some(body => body.rough)) rough ??= compoundSolid(bodies.map(body => body.rough ?? body));
      return rough;
    },
    volume: bodies.reduce((sum, body) => sum + body.volume, 0),
    moment: bodies.reduce<Vec3>((sum, body) => add(sum, body.moment), NOWHERE),
    box: boxRound(bodies),
    extent,
    cut(n, h, sums) {
      for (let i = 0; i < bodies.length; i++) {
        const at = RECORD * i;
        const height = heightOf(records, at, n) - h;
        const reach = reachOf(records, at, n);
        if (height >= reach) continue;
        if (height > -reach) bodies[i]!.cut(n, h, sums);
        else addRecord(records, at, sums);
      }
    },
  };
}

/** Numbers a body in one row: the middle and half-size of its box, its volume and first moment. */
const RECORD = 10;
/** So that rounding leaves no corner outside its box. */
const MARGIN = 1 + 1e-9;

function recordsOf(bodies: readonly Cuttable[]): Float64Array {
  const records = new Float64Array(RECORD * bodies.length);
  for (const [i, { box, volume, moment }] of bodies.entries()) {
    const at = RECORD * i;
    records.set(box.middle, at);
    for (let axis = 0; axis < 3; axis++) records[at + 3 + axis] = box.half[axis]! * MARGIN;
    records[at + 6] = volume;
    records.set(moment, at + 7);
  }
  return records;
}

const heightOf = (records: Float64Array, at: number, n: Vec3): number =>
  n[0] * records[at]! + n[1] * records[at + 1]! + n[2] * records[at + 2]!;

const reachOf = (records: Float64Array, at: number, n: Vec3): number =>
  Math.abs(n[0]) * records[at + 3]! + Math.abs(n[1]) * records[at + 4]! + Math.abs(n[2]) * records[at + 5]!;

function addRecord(records: Float64Array, at: number, sums: Immersion): void {
  sums.volume += records[at + 6]!;
  sums.mx += records[at + 7]!;
  sums.my += records[at + 8]!;
  sums.mz += records[at + 9]!;
}

/** The box round the boxes of several bodies. */
export function boxRound(bodies: readonly Pick<Cuttable, 'box'>[]): Cuttable['box'] {
  return boxOf(n => {
    let lowest = Infinity;
    let highest = -Infinity;
    for (const { box } of bodies) {
      const height = n[0] * box.middle[0] + n[1] * box.middle[1] + n[2] * box.middle[2];
      const reach = n[0] * box.half[0] + n[1] * box.half[1] + n[2] * box.half[2];
      lowest = Math.min(lowest, height - reach);
      highest = Math.max(highest, height + reach);
    }
    return [lowest, highest];
  });
}

/** Several walls as one, of one thickness all over: each takes material by its share of the area. */
export function compoundWall(walls: readonly Wall[]): Wall {
  const area = walls.reduce((sum, wall) => sum + wall.area, 0);
  const moment = walls.reduce<Vec3>((sum, wall) => add(sum, scale(wall.centroid, wall.area)), NOWHERE);
  return {
    area,
    centroid: scale(moment, 1 / area),
    withVolume: volume => compoundSolid(walls.map(wall => wall.withVolume((volume * wall.area) / area))),
  };
}
