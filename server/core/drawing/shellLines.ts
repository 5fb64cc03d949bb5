import type { Form } from '../geometry/form/form.ts';
import { type Lines, linesAmong, type Seen } from '../geometry/outline/hiddenLines.ts';
import type { Sight } from '../geometry/outline/sight.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { Steps } from '../steps/steps.ts';
import type { Thing } from './things.ts';

/** From astern, from port and from above: whether more along the axis is nearer to who looks. */
const NEARER: readonly [1, -1, 1] = [1, -1, 1];

/** The outlines of the hull's shells, each by its pieces, with what lies behind another apart, m in the seen axes. */
export function* shellLines(shells: readonly Thing[], along: Sight, shapes: Shapes): Steps<Lines> {
  const pieces: Seen[] = [];
  for (const { form } of shells) {
    if (form) pieces.push(...(yield* standingOut(yield* shapes.formsIn(form), along, shapes)));
  }
  const lines = pieces.map(one =>
    linesAmong(
      one,
      pieces.filter(other => other !== one),
    ),
  );
  return { seen: lines.flatMap(({ seen }) => seen), hidden: lines.flatMap(({ hidden }) => hidden) };
}

/** What of a form is seen beside its largest pieces: a wall's inside and frames within a hull are nothing to draw. */
function* standingOut(forms: readonly Form[], along: Sight, shapes: Shapes): Steps<readonly Seen[]> {
  const all = forms.map(form => {
    const { from, to } = shapes.boundsOf(form);
    return { form, from, to };
  });
  const outermost = all.filter(
    one =>
      !all.some(
        other =>
          other !== one &&
          [0, 1, 2].every(axis => other.from[axis as Sight] < one.from[axis as Sight]) &&
          [0, 1, 2].every(axis => other.to[axis as Sight] > one.to[axis as Sight]),
      ),
  );
  const seen: Seen[] = [];
  for (const { form, from, to } of outermost) {
    const ends = [NEARER[along] * from[along], NEARER[along] * to[along]];
    const loops = yield* shapes.silhouetteSteps(form, along);
    seen.push({ loops, nearest: Math.max(...ends), outline: (ends[0]! + ends[1]!) / 2 });
  }
  return seen;
}
