import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Boat, Part } from '../../server/core/boat/boat.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import type { Piece } from '../../server/core/corrections/room/slots.ts';
import { correct, scoreIn } from '../../server/core/corrections/search/correct.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { splice } from '../../server/core/text/editing/edit.ts';
import { tapeStep } from '../../server/core/wording/numbers.ts';
import { fileFindings, service, toldSince } from '../helpers/analysed.ts';
import { type BoatOptions, boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { corrected, firstOfBoth, outOfLimits, splicesOf } from '../helpers/corrected.ts';
import { isLong } from '../helpers/long.ts';

/*
 * Boats about which it is known that pieces in their bays trim them: they were drawn with such pieces, and those taken out.
 */
const BOATS = isLong ? 300 : 14;

const optionsFor = (seed: number): BoatOptions => {
  if (seed % 6 === 0) return { stock: 'pieces' };
  return seed % 6 === 1 ? { units: 'imperial' } : {};
};

/** A boat that the drawn pieces hardly trim is now and then in trim without them. */
const LEAST_OUT_OF_TRIM = 0.85 * BOATS;
/** The drawn pieces are not on the tape's marks, and one in a hundred boats allows no others. */
const LEAST_CORRECTED = 0.99;
const HAIR = 1e-6;
/** Places are written to a tenth of a millimetre or a thousandth of an inch. */
const WRITTEN = 1.01e-4;

/** What a piece takes up: the box that it fills in its room. */
const roomOf = ({ slot, station, offset }: Piece) => ({
  from: [station[0], offset - slot.breadth / 2, slot.height - slot.depth / 2],
  to: [station[1], offset + slot.breadth / 2, slot.height + slot.depth / 2],
  inside: slot.bay.inside,
});

const overlap = (a: Omit<ReturnType<typeof roomOf>, 'inside'>, b: { from: readonly number[]; to: readonly number[] }) =>
  [0, 1, 2].every(axis => a.from[axis]! < b.to[axis]! - HAIR && a.to[axis]! > b.from[axis]! + HAIR);

const isMultiple = (value: number, step: number) => Math.abs(value / step - Math.round(value / step)) < 1e-4;

/** Lead as a scale shows it: tenths of a gram, hundredths of an ounce. Foam is cut by its length and weighs what it weighs. */
const isWeighable = ({ mass, material }: Part, { units }: Boat) =>
  material !== 'lead' || isMultiple(mass, units.mass === 'oz' ? 0.028349523125 / 100 : 1e-4);

function expectPiecesFit({ pieces, parts, moves }: Correction, { payload: was, units }: Boat): void {
  const payload = was.map(part => moves.find(move => move.part === part)?.moved ?? part);
  for (const [i, piece] of pieces.entries()) {
    const room = roomOf(piece);
    const { bay } = piece.slot;
    for (const axis of [0, 1, 2] as const) {
      expect(room.from[axis]).toBeGreaterThanOrEqual(bay.from[axis] - HAIR);
      expect(room.to[axis]).toBeLessThanOrEqual(bay.to[axis] + HAIR);
    }
    const neighbours: readonly Part[] = payload.filter(part => part.inside === room.inside);
    expect(neighbours.filter(part => overlap(room, part)).map(part => part.name)).toEqual([]);
    expect(
      pieces.slice(i + 1).filter(other => other.slot.bay.inside === room.inside && overlap(room, roomOf(other))),
    ).toEqual([]);
    if (piece.counts.length > 0) {
      const made = piece.counts.reduce((sum, count, k) => sum + count * piece.slot.pieces[k]!, 0);
      expect(parts[i]!.mass).toBeCloseTo(made, 9);
    } else {
      const [from, to] = piece.slot.station;
      const fillsRoom = piece.station[0] - from < WRITTEN && to - piece.station[1] < WRITTEN;
      expect(fillsRoom || isMultiple(piece.station[1] - piece.station[0], tapeStep(units))).toBe(true);
    }
  }
}

/** The most that an editor's menu shows whole, characters (common practice, no source). */
const MENU = 90;

/** What is written lies in the bay too, as exact as it is written. */
function expectPartsFit({ pieces, parts }: Correction): void {
  for (const [i, { from, to }] of parts.entries()) {
    const { bay } = pieces[i]!.slot;
    for (const axis of [0, 1, 2] as const) {
      expect(from[axis]).toBeGreaterThanOrEqual(bay.from[axis] - WRITTEN);
      expect(to[axis]).toBeLessThanOrEqual(bay.to[axis] + WRITTEN);
    }
  }
}

/** Of what comes to as much to within this part either may be offered: not all that can be found is looked for. */
const AS_MUCH = 0.03;

/** What mends one condition and keeps the limits of both does not come to less than what is offered for both. */
function expectNoneBetter(analysis: Analysis): void {
  const boatToTrim = analysis.settled.all().boatToTrim!;
  const scoreOf = scoreIn(boatToTrim, 'both');
  const offered = Math.min(...analysis.corrections.all().filter(keepsBoth).map(scoreOf));
  for (const scope of ['surfaced', 'submerged'] as const) {
    const alone = finish(correct(boatToTrim, scope));
    if (!alone || outOfLimits(service.analyse(corrected(analysis, alone), analysis)).length > 0) continue;
    expect(scoreOf(alone)).toBeGreaterThanOrEqual((1 - AS_MUCH) * offered);
  }
}

const keepsBoth = ({ condition, left }: Correction): boolean => condition === 'both' && left.length === 0;

/** What was promised is what one gets, to the last digits of a place that was written and read again. */
function expectPromise(again: Analysis, { surfaced, submerged }: Correction): void {
  if (surfaced.status !== 'afloat' || again.surfaced.status !== 'afloat') throw new Error('it floats');
  if (submerged.status !== 'neutral' || again.submerged.status !== 'neutral') throw new Error('it hangs');
  for (const key of ['trim', 'heel', 'draft'] as const) {
    expect(again.surfaced.attitude[key]).toBeCloseTo(surfaced.attitude[key], 10);
  }
  for (const key of ['trim', 'heel', 'fill'] as const) {
    expect(again.submerged[key]).toBeCloseTo(submerged[key], 10);
  }
}

/** The text without what the splices put in. */
function withoutPut(text: string, before: string, analysis: Analysis, correction: Correction): void {
  const splices = splicesOf(analysis, correction);
  expect(splices.every(({ start, end }) => start === end)).toBe(true);
  let [rest, at, back] = [text, 0, ''];
  let last = 0;
  for (const { start, text: put } of splices) {
    back += rest.slice(at, at + start - last);
    at += start - last + put.length;
    last = start;
  }
  rest = back + rest.slice(at);
  expect(rest).toBe(before);
}

describe('a boat that its bays can trim', { timeout: 240_000 }, () => {
  test('is trimmed by the first correction, and by new pieces alone: written into the file and figured again it is within all limits', () => {
    let out = 0;
    const uncorrected: number[] = [];
    // Each boat is read with the schemas of the one before of its units, as an editor's next version is.
    const previous = new Map<string, Analysis>();
    for (let seed = 0; seed < BOATS; seed++) {
      const options = optionsFor(seed);
      const { text } = boatOutOfTrim(seed, options);
      const analysis = service.analyse(text, previous.get(options.units ?? 'metric'));
      previous.set(options.units ?? 'metric', analysis);
      expect(fileFindings(analysis).filter(({ severity }) => severity === 'error')).toEqual([]);
      if (outOfLimits(analysis).length === 0) continue;
      out++;
      const first = firstOfBoth(analysis);
      if (!first) {
        uncorrected.push(seed);
        continue;
      }
      const inserted = analysis.corrections.all().find(each => each.kind === 'insert' && keepsBoth(each));
      for (const correction of new Set([first, inserted ?? first])) {
        const changed = splice(text, splicesOf(analysis, correction));
        const again = service.analyse(changed, analysis);
        const left = [...outOfLimits(again), ...toldSince(analysis, again)].map(({ code }) => code);
        expect({ seed, left }).toEqual({ seed, left: correction.onTheWay.map(({ code }) => code) });
        expectPromise(again, correction);
        if (correction.kind === 'insert') withoutPut(changed, text, analysis, correction);
        expectPiecesFit(correction, analysis.boat);
        expectPartsFit(correction);
        for (const part of again.boat.payload.slice(analysis.boat.payload.length)) {
          expect({ seed, mass: part.mass, isWeighable: isWeighable(part, again.boat) }).toMatchObject({
            isWeighable: true,
          });
          expect(part.fixed).toBe(false);
        }
      }
      for (const { title } of analysis.corrections.all()) expect(title.length, title).toBeLessThanOrEqual(MENU);
      if (seed % 5 === 0) expectNoneBetter(analysis);
    }
    expect(out).toBeGreaterThan(LEAST_OUT_OF_TRIM);
    expect(uncorrected.length).toBeLessThanOrEqual((1 - LEAST_CORRECTED) * out);
  });
});
