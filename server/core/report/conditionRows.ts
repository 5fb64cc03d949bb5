import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import { besideText, type Figured, figuredIn, isKept, limitWords, mainText } from '../figures/figured.ts';
import { standingOf } from '../judges/standings.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { massText } from '../wording/numbers.ts';
import { factsOf } from './conditionFacts.ts';
import type { Row } from './rows.ts';
import { withUncertainty } from './withUncertainty.ts';

/** The figures of a condition against their limits, each with its uncertainty, and what else there is to know there. */
export function conditionRows({ boat, scheme, uncertainties }: Analysis, inCondition: InCondition): readonly Row[] {
  const all = figuredIn(boat, inCondition, scheme.figures);
  if (all.length === 0) return [withoutRest(inCondition, boat)];
  const known = uncertainties;
  const stays = all.every(figured => figured.stays);
  const facts = factsOf(inCondition, boat);
  const rows: Row[] = [];
  const headings = new Set(all.flatMap(({ figure }) => figure.heading ?? []));
  for (const heading of headings) {
    rows.push(...facts.filter(({ before }) => before === heading));
    rows.push(
      joined(all.filter(({ figure }) => figure.heading === heading).map(figured => rowOf(figured, known, stays))),
    );
  }
  return [...rows, ...facts.filter(({ before }) => before === undefined || !headings.has(before))];
}

function rowOf(figured: Figured, uncertainties: Uncertainties | null, stays: boolean): Row {
  const { figure, condition, units } = figured;
  const { kind, difference } = figure;
  // What runs off is told by where it ends; how far it is from its limit within its uncertainty says nothing.
  const isTold = stays || figured.margin === null;
  const uncertainty = isTold ? uncertainties?.conditions[condition.id]?.[figure.id] : undefined;
  const beside = besideText(figured);
  const value = withUncertainty(mainText(figured), uncertainty, sigma => kind.size(sigma, units));
  const row: Row = { name: figure.heading ?? '', value: beside === null ? value : `${value} (${beside})` };
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
