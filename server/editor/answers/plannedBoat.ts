import type { Describer } from '../../../schema/describe.ts';
import { readQuantity } from '../../../schema/quantity.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { analyse } from '../../core/analysis/analyse.ts';
import { type BoatPlan, plannedText, planProblem } from '../../core/planning/plannedText.ts';
import { applyChanges, splice } from '../../core/text/editing/edit.ts';
import { type NewUnits, newBoatTitle, UNITS } from './newBoat.ts';

/** The text of a boat planned from a few figures; or what is wrong with them. */
export type Planned =
  | { readonly status: 'done'; readonly text: string }
  | { readonly status: 'refused'; readonly reason: string };

const EXAMPLE = { metric: '900, 90, 62, 1:60', inches: '35 1/2, 3 1/2, 2 3/8, 1:60' } as const;

/**
 * A boat from length, beam, waterline and, where it has a prototype, scale, as they are typed: "900, 90, 62, 1:60". Its hull is
 * in proportion, its tank the one that it wants; what it carries is still to be weighed.
 */
export function plannedBoat(name: string, figures: string, units: NewUnits, describer: Describer): Planned {
  const typed = figures.split(',').map(each => each.trim());
  if (typed.length < 3 || typed.length > 4)
    return { status: 'refused', reason: `Length, beam, waterline and the scale, such as: ${EXAMPLE[units]}` };
  const measured = readPlan(typed, UNITS[units]);
  if (typeof measured === 'string') return { status: 'refused', reason: measured };
  const problem = planProblem(measured);
  if (problem !== null) return { status: 'refused', reason: problem };
  const text = plannedText(newBoatTitle(name), measured, UNITS[units]);
  const { syntax, findings } = analyse(text, describer);
  const mend = findings.find(({ code }) => code === 'tank-wanted')?.mends?.[0];
  const splices = mend && applyChanges(syntax, mend.changes);
  return { status: 'done', text: splices ? splice(text, splices) : text };
}

/** The figures in SI; or what is wrong with one of them. */
function readPlan([length, beam, waterline, scale]: readonly string[], units: FileUnits): BoatPlan | string {
  const read = [length, beam, waterline].map(each => readQuantity(each, 'length', units, { positive: true }));
  const wrong = read.find(each => !each.ok);
  if (wrong && !wrong.ok) return wrong.slip.message;
  const [l, b, w] = read.map(each => (each.ok ? each.value.value : 0));
  if (scale !== undefined && !/^1\s*:\s*\d+(?:\.\d+)?$/.test(scale))
    return `A scale is written like 1:60, not “${scale}”.`;
  return { length: l!, beam: b!, waterline: w!, scale: scale ?? null };
}
