import type { Analysis } from '../analysis/analysis.ts';
import { byFileWords, filedIn } from '../analysis/withTrials.ts';
import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import { besideText, type Figured, figuredIn, isKept, limitWords, mainText, plainText } from '../figures/figured.ts';
import { standingOf } from '../judges/standings.ts';
import { massText } from '../wording/numbers.ts';
import { factsOf } from './conditionFacts.ts';
import type { Row } from './rows.ts';
import { withUncertainty } from './withUncertainty.ts';

/** The figures of a condition against their limits, each with its uncertainty, and what else there is to know there. */
export function conditionRows(analysis: Analysis, inCondition: InCondition): readonly Row[] {
  const { boat, scheme } = analysis;
  const all = figuredIn(boat, inCondition, scheme.figures);
  if (all.length === 0) return [withoutRest(inCondition, boat), ...otherwiseByFile(analysis, inCondition)];
  const stays = all.every(figured => figured.stays);
  const facts = factsOf(inCondition, boat);
  const rows: Row[] = [];
  const headings = new Set(all.flatMap(({ figure }) => figure.heading ?? []));
  for (const heading of headings) {
    rows.push(...facts.filter(({ before }) => before === heading));
    rows.push(
      joined(all.filter(({ figure }) => figure.heading === heading).map(figured => rowOf(figured, analysis, stays))),
    );
  }
  const last = facts.filter(({ before }) => before === undefined || !headings.has(before));
  return [...rows.filter(isNews), ...last, ...otherwiseByFile(analysis, inCondition)];
}

/** Of two figures of a kind that read the same, as BG with its tank water free and locked, one is enough. */
const isNews = ({ name, value, limit }: Row, at: number, rows: readonly Row[]): boolean => {
  const above = rows[at - 1];
  const [kind] = name.split(', ');
  return limit !== undefined || above?.value !== value || above.name.split(', ')[0] !== kind;
};

/** Where the trials have the boat come to rest and the file has not, or the other way round: what it does by the file. */
function otherwiseByFile(analysis: Analysis, inCondition: InCondition): readonly Row[] {
  const { boat, filed, scheme, withTrials } = analysis;
  const there = withTrials ? filedIn(analysis, inCondition) : null;
  if (!there) return [];
  const figures = figuredIn(filed.boat, there, scheme.figures);
  if (figures.length === 0) {
    const { name, value } = withoutRest(there, boat);
    return there.state.status === inCondition.state.status ? [] : [{ name: 'By the file', value: `${name}: ${value}` }];
  }
  if (figuredIn(boat, inCondition, scheme.figures).length > 0) return [];
  const told = figures.filter(({ limit }) => limit !== null).map(one => `${one.figure.words} ${plainText(one)}`);
  return [{ name: 'By the file', value: told.join(', ') }];
}

function rowOf(figured: Figured, analysis: Analysis, stays: boolean): Row {
  const { uncertainties } = analysis;
  const { figure, condition, units } = figured;
  const { kind, difference } = figure;
  // What runs off is told by where it ends; how far it is from its limit within its uncertainty says nothing.
  const isTold = stays || figured.margin === null;
  const uncertainty = isTold ? uncertainties?.conditions[condition.id]?.[figure.id] : undefined;
  const beside = [besideText(figured), byFileWords(analysis, figured)].filter(words => words !== null).join('; ');
  const value = withUncertainty(mainText(figured), uncertainty, sigma => kind.size(sigma, units));
  const row: Row = { name: figure.heading ?? '', value: beside === '' ? value : `${value} (${beside})` };
  if (figured.margin === null) return row;
  const standing = stays && uncertainties ? standingOf(figured, uncertainties) : null;
  return {
    ...row,
    limit: `${limitWords(figured)}${difference ? ` ${difference.from}` : ''}`,
    isKept: isKept(figured),
    isOpen: standing?.verdict === 'cannot-tell',
  };
}

/** Figures under one heading stand in one row. */
const joined = (rows: readonly Row[]): Row => ({ ...rows[0]!, value: rows.map(({ value }) => value).join(', ') });

/** Why there are no figures. */
function withoutRest({ state }: InCondition, { units }: Boat): Row {
  switch (state.status) {
    case 'sinks':
      return { name: 'Sinks', value: `${massText(state.excess, units)} too heavy` };
    case 'overturns':
      return { name: 'Overturns', value: 'does not stay upright on the surface' };
    case 'heavy':
      return { name: 'Too heavy', value: `by ${massText(state.excess, units)}, tanks empty` };
    case 'light':
      return {
        name: 'Too light',
        value: `by ${massText(state.lack, units)}${state.hasTank ? ', tanks full' : '; there is no tank'}`,
      };
    case 'unsettled':
      return { name: 'Unsettled', value: 'no attitude at rest was found' };
    case 'empty':
    case 'afloat':
    case 'neutral':
      return { name: 'Unknown', value: 'nothing that floats is in the file yet' };
  }
}
