import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import { conditionsOf, type InCondition, type LoadingCondition } from '../conditions/loadingCondition.ts';
import { CANNOT_TELL } from '../corrections/balance/prospect.ts';
import { allPieces, type Correction } from '../corrections/correction.ts';
import { another, chanceOf } from '../corrections/kinds/another.ts';
import { chanceWords } from '../corrections/words/surenessWords.ts';
import type { Figure } from '../figures/figure.ts';
import { figuredIn, figuresOf, plainText, rowNameIn } from '../figures/figured.ts';
import { massText } from '../wording/numbers.ts';
import { cautions, cutLines, moveLines } from './bench.ts';
import type { Paint } from './rows.ts';

/** A correction for the bench: what it brings, and the pieces to cut, where they go and how to fix them. */
export function correctionReport(analysis: Analysis, correction: Correction, paint: Paint): string {
  const { boat } = analysis;
  return [
    [
      paint.heading(correction.title),
      ...(correction.note === null ? [] : [correction.note]),
      ...anotherLines(analysis, correction),
    ].join('\n'),
    beforeAndAfter(analysis, correction, paint),
    ...(correction.left.length > 0 ? [stillOut(correction, paint)] : []),
    ...(correction.moves.length > 0
      ? [[paint.heading('To move'), ...correction.moves.flatMap(move => moveLines(move, boat))].join('\n')]
      : []),
    ...(correction.pieces.length > 0
      ? [
          [
            paint.heading('Cut list'),
            ...correction.pieces.flatMap((piece, i) => cutLines(piece, correction.parts[i]!.name, boat)),
          ].join('\n'),
        ]
      : []),
    ...correction.carried.map(({ condition, pieces, parts }) =>
      [
        paint.heading(`Cut list, aboard for “${condition.id}” only`),
        ...pieces.flatMap((piece, i) => cutLines(piece, parts[i]!.name, boat, 'comes out')),
      ].join('\n'),
    ),
    [paint.heading('Caution'), ...cautions(allPieces(correction))].join('\n'),
  ].join('\n\n');
}

/** What another bit of lead would do to the chance to be within all limits; nothing where nobody can tell what that is. */
function anotherLines({ boatToTrim, boat }: Analysis, correction: Correction): readonly string[] {
  if (!boatToTrim || correction.left.length > 0) return [];
  const chance = chanceOf(correction, boatToTrim);
  if (chance === null || chance < CANNOT_TELL) return [];
  const more = another(correction, boatToTrim);
  if (!more) return [];
  const [is, then] = [chanceWords(chance), chanceWords(more.chance)];
  const does = is === then ? 'would change nothing of that' : `would make that ${then}`;
  return [`Another ${massText(more.mass, boat.units)} of lead, best in “${more.bay}”, ${does}.`];
}

/** Which limits give way, and by how much. */
const stillOut = ({ left }: Correction, paint: Paint): string =>
  [paint.heading('Still outside the limits'), ...left.map(({ message }) => `  ${message}`)].join('\n');

function beforeAndAfter(analysis: Analysis, correction: Correction, paint: Paint): string {
  const { figures } = analysis.scheme;
  const before = conditionFigures(analysis.boat, conditionsOf(analysis), figures);
  const after = conditionFigures(correction.boat, conditionsOf(correction), figures);
  const names = before.map(([name]) => name);
  const widest = Math.max(...names.map(name => name.length));
  const broadest = Math.max(...before.map(([, value]) => value.length), 'before'.length);
  const lines = before.map(
    ([name, value], i) => `  ${name.padEnd(widest)}  ${value.padEnd(broadest)}  ${after[i]![1]}`,
  );
  return [paint.heading(`  ${''.padEnd(widest)}  ${'before'.padEnd(broadest)}  after`), ...lines].join('\n');
}

/** A boat hangs neutral or is held under: it has the figure of the one or of the other. */
const isMeant = ({ id }: Figure, { loading }: LoadingCondition): boolean =>
  id === 'reserve' ? loading.kind === 'held' : id !== 'fill' || loading.kind === 'neutral';

/** The figures that a correction is about, those with a limit, each in words. */
export function conditionFigures(
  boat: Boat,
  conditions: readonly InCondition[],
  figures: readonly Figure[],
): readonly (readonly [string, string])[] {
  return conditions.flatMap(inCondition => {
    const { condition } = inCondition;
    const all = figuredIn(boat, inCondition, figures);
    return figuresOf(condition, figures)
      .filter(figure => figure.limit !== undefined && isMeant(figure, condition))
      .map(figure => {
        const figured = all.find(one => one.figure === figure);
        return [rowNameIn(condition, figure), figured ? plainText(figured) : 'none'] as const;
      });
  });
}
