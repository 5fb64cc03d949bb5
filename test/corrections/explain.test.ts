import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Bodies } from '../../server/core/bodies/assemble.ts';
import type { SubmergedNeutral } from '../../server/core/conditions/submerged.ts';
import type { SurfacedAfloat } from '../../server/core/conditions/surfaced.ts';
import { balanceName } from '../../server/core/corrections/balance/row.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import { explain } from '../../server/core/corrections/propose.ts';
import type { Piece } from '../../server/core/corrections/room/slots.ts';
import { service } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { corrected, firstOfBoth } from '../helpers/corrected.ts';
import { isLong } from '../helpers/long.ts';

interface Case {
  readonly seed: number;
  readonly before: Analysis;
  readonly after: Analysis;
  readonly correction: Correction;
}

/** Boats with their first correction, before and after. */
function casesOf(count: number): readonly Case[] {
  const cases: Case[] = [];
  let before: Analysis | undefined;
  for (let seed = 0; seed < count; seed++) {
    before = service.analyse(boatOutOfTrim(seed).text, before);
    const correction = firstOfBoth(before);
    if (!correction) continue;
    cases.push({ seed, before, after: service.analyse(corrected(before, correction), before), correction });
  }
  return cases;
}

const BOATS = isLong ? 40 : 10;
const cases = casesOf(BOATS);
const explained = ({ before, correction }: Case) => explain(before.boatToTrim!, correction);

const afloat = ({ surfaced }: Pick<Analysis, 'surfaced'>) => surfaced as SurfacedAfloat;
const neutral = ({ submerged }: Pick<Analysis, 'submerged'>) => submerged as SubmergedNeutral;

/** Each figure as the fields of the condition have it. */
const figures: Readonly<Record<string, (analysis: Analysis) => number>> = {
  'surfaced draft': analysis => afloat(analysis).attitude.draft,
  'surfaced trim': analysis => afloat(analysis).attitude.trim,
  'surfaced heel': analysis => afloat(analysis).attitude.heel,
  'surfaced gm': analysis => afloat(analysis).gm,
  'submerged trim': analysis => neutral(analysis).trim,
  'submerged heel': analysis => neutral(analysis).heel,
  'submerged fill': analysis => neutral(analysis).fill,
  'submerged bgEffectiveLongitudinal': analysis => neutral(analysis).bgEffectiveLongitudinal,
  'submerged bgEffective': analysis => neutral(analysis).bgEffective,
};

/** The piece's entry in the file a little heavier, lead by a gram and foam by a millilitre, and by as much longer. */
function withAGramMore({ after, before }: Case, i: number, piece: Piece): string {
  const entry = after.boat.payload[before.boat.payload.length + i]!;
  const { text } = after.syntax;
  const [head, rest] = [text.slice(0, text.indexOf(entry.name)), text.slice(text.indexOf(entry.name))];
  const little = entry.material === 'lead' ? 1 : (entry.mass / entry.volume) * 1e-3;
  const longer = little / piece.slot.massPerLength / 2;
  const ends = `${piece.station[0] * 1e3 - longer} to ${piece.station[1] * 1e3 + longer} mm`;
  const heavier = rest
    .replace(/mass: [\d.]+ g/, `mass: ${entry.mass * 1e3 + little} g`)
    .replace(/station: [\d.]+ to [\d.]+ mm/, `station: ${ends}`);
  return head + heavier;
}

describe('what explains a correction', { timeout: 60_000 }, () => {
  test('the next gram is what the file with a gram more of the piece gives', () => {
    let hits = 0;
    for (const one of cases) {
      for (const [i, changes] of explained(one).more.entries()) {
        const piece = one.correction.pieces[i]!;
        const heavier = service.analyse(withAGramMore(one, i, piece), one.after);
        expect(changes).toHaveLength(9);
        for (const { figure, condition, change } of changes) {
          const name = `${condition.id} ${figure.id}`;
          const found = figures[name]!(heavier) - figures[name]!(one.after);
          // A part in fifty, or what changes less than anybody could see: 0.002° and 2 µm.
          expect(Math.abs(change - found), `${one.seed} ${name}`).toBeLessThan(0.02 * Math.abs(found) + 4e-5);
          hits++;
        }
      }
    }
    expect(hits).toBeGreaterThan(7 * BOATS);
  });

  /*
   * By hand: in a surfaced balance a piece counts with its weight less the buoyancy of what of it is wet, at its arm from
   * the centre of flotation; submerged, at its arm from where the next gram of ballast goes, the middle of a tank that
   * fills evenly or the piston.
   */
  test('each piece brings its weight in water times its arm', () => {
    let hits = 0;
    for (const { seed, before, correction } of cases) {
      const { balances } = explain(before.boatToTrim!, correction);
      const of = (name: string) => balances.find(({ row }) => balanceName(row) === name)!.brought;
      const [tank] = before.boat.tanks;
      const bounds = before.bodies.tanks[0]!;
      const water = nextWater(tank!.kind, bounds, neutral(correction).fill);
      const flotation = afloat(before).centreOfFlotation!;
      for (const [i, { slot, station, offset }] of correction.pieces.entries()) {
        const volume = slot.breadth * slot.depth * (station[1] - station[0]);
        const density = before.bodies.density;
        const [x, inside] = [(station[0] + station[1]) / 2, slot.bay.inside !== null];
        const line = before.boat.waterline!;
        const surface = line.bow + ((line.stern - line.bow) * x) / before.boat.length;
        const clear = Math.abs(surface - slot.height) > slot.depth / 2 + 0.004;
        if (!inside && !clear) continue;
        const isWet = !inside && slot.height < surface;
        const under = volume * (slot.density - (inside ? 0 : density));
        const above = volume * (slot.density - (isWet ? density : 0));
        const near = (found: number, known: number, least: number) =>
          expect(Math.abs(found - known), `${seed} piece ${i}`).toBeLessThan(1e-6 * Math.abs(known) + least);
        near(of('surfaced draft')[i]!, above, 1e-9);
        near(of('surfaced trim')[i]!, above * (x - flotation[0]), 1e-9);
        near(of('surfaced heel')[i]!, above * (offset - flotation[1]), 1e-9);
        near(of('neutral fill')[i]!, under, 1e-9);
        near(of('submerged trim')[i]!, under * (x - water), 1e-6);
        near(of('submerged heel')[i]!, under * offset, 1e-6);
        hits++;
      }
    }
    expect(hits).toBeGreaterThan(0.6 * BOATS);
  });

  test('what the pieces bring is what was missing, but for what a limit lets over', () => {
    for (const one of cases) {
      for (const { row, brought, byMoves } of explained(one).balances) {
        const sum = [...brought, ...byMoves].reduce((a, b) => a + b, 0);
        const { wanted } = row;
        // The whole limit: the rows allow 3/4 of it.
        if ('slack' in wanted) expect(Math.abs(sum - wanted.value)).toBeLessThan((wanted.slack / 0.75) * 1.02);
        else {
          expect(sum).toBeGreaterThan(wanted.least - 1e-4);
          expect(sum).toBeLessThan(wanted.most + 1e-4);
        }
      }
    }
  });

  test('a wider limit never costs lead', () => {
    let said = 0;
    for (const one of cases) {
      for (const { saves } of explained(one).relaxations) {
        expect(saves).toBeGreaterThan(0);
        said++;
      }
    }
    expect(said).toBeGreaterThan(0.25 * BOATS);
  });
});

/** Where the next of the ballast goes, station in m. */
function nextWater(kind: string, { tank }: Bodies['tanks'][number], fill: number): number {
  if (tank.form.shape !== 'revolved') throw new Error('the drawn tanks are round');
  const [start, length] = [tank.form.origin[0], tank.form.profile.at(-1)![0] - tank.form.profile[0]![0]];
  return kind === 'piston' ? start + fill * length : start + length / 2;
}
