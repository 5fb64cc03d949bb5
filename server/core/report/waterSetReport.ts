import type { Boat } from '../boat/boat.ts';
import { conditionsOf } from '../conditions/loadingCondition.ts';
import type { SetPiece, WaterSet } from '../corrections/kinds/waterSet.ts';
import { piecesWords } from '../corrections/words/correctionTitle.ts';
import type { Figure } from '../figures/figure.ts';
import { cautions, cutLines } from './bench.ts';
import { conditionFigures } from './correctionReport.ts';
import type { Paint } from './rows.ts';

/** The pieces that change with the water, in one table, how the boat lies with each, and what to cut. */
export function waterSetReport(set: WaterSet, figures: readonly Figure[], paint: Paint): string {
  const { fresh, sea, inBoth } = set;
  const { boat } = fresh.lying;
  const made = [...inBoth, ...fresh.only, ...sea.only].filter(({ made: cut }) => cut !== null);
  return [
    [paint.heading('Fresh and sea water'), ...setRows(set, boat)].join('\n'),
    conditionTable(set, figures, paint),
    ...(made.length > 0
      ? [
          [
            paint.heading('Cut list'),
            ...inBoth.flatMap(({ made: cut, part }) => (cut ? cutLines(cut.piece, part.name, boat) : [])),
            ...[...fresh.only, ...sea.only].flatMap(({ made: cut, part }) =>
              cut ? cutLines(cut.piece, part.name, boat, 'comes out') : [],
            ),
          ].join('\n'),
          [paint.heading('Caution'), ...cautions(made.flatMap(({ made: cut }) => cut?.piece ?? []))].join('\n'),
        ]
      : []),
  ].join('\n\n');
}

function setRows({ inBoth, fresh, sea }: WaterSet, boat: Boat): readonly string[] {
  const changes = fresh.only.length + sea.only.length > 0;
  const none = changes ? 'nothing' : 'nothing: the same boat is within its limits in both';
  const rows = [
    ['Add in both waters', inBoth.length > 0 ? said(inBoth, boat) : 'nothing'],
    ['In sea water only', sea.only.length > 0 ? said(sea.only, boat) : none],
    [
      'In fresh water only',
      fresh.only.length > 0
        ? said(fresh.only, boat)
        : sea.only.length > 0
          ? 'nothing: take out again what is for the sea'
          : none,
    ],
  ] as const;
  const widest = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `  ${name.padEnd(widest)}  ${value}`);
}

/** New pieces with amount and place, those aboard by their names. */
const said = (pieces: readonly SetPiece[], boat: Boat): string =>
  pieces
    .map(({ made, part }) => (made ? piecesWords([made.piece], boat) : `“${part.name}”, which is aboard`))
    .join(', ');

function conditionTable({ fresh, sea }: WaterSet, figures: readonly Figure[], paint: Paint): string {
  const columns = [fresh, sea].map(({ lying, water }) => ({
    head: water.words,
    cells: conditionFigures(lying.boat, conditionsOf(lying), figures),
  }));
  const [first, second] = columns;
  if (!first || !second) return '';
  const widest = Math.max(...first.cells.map(([name]) => name.length));
  const broadest = Math.max(first.head.length, ...first.cells.map(([, value]) => value.length));
  return [
    paint.heading(`  ${''.padEnd(widest)}  ${first.head.padEnd(broadest)}  ${second.head}`),
    ...first.cells.map(
      ([name, value], i) => `  ${name.padEnd(widest)}  ${value.padEnd(broadest)}  ${second.cells[i]![1]}`,
    ),
  ].join('\n');
}
