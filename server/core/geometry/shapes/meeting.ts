import type { Bounds } from '../cut/solids.ts';
import type { Form } from '../form/form.ts';

/** A form of one thing and one of another whose boxes share room. */
export type Meeting = readonly [one: Form, two: Form];

/** So many forms of two things are held against each other at most, those first that share most room. */
const MOST = 300;

/** The forms of two things, single ones or of several, whose boxes share room. */
export function partsMeeting(one: Form, two: Form, boundsOf: (form: Form) => Bounds): readonly Meeting[] {
  if (one.shape !== 'compound' && two.shape !== 'compound') return [[one, two]];
  const placed = (form: Form) =>
    singles(form)
      .map(single => ({ single, bounds: boundsOf(single) }))
      .sort((a, b) => a.bounds.from[0] - b.bounds.from[0]);
  const others = placed(two);
  const longest = Math.max(...others.map(({ bounds }) => bounds.to[0] - bounds.from[0]));
  const meetings: { readonly meeting: Meeting; readonly room: number }[] = [];
  let first = 0;
  for (const { single, bounds } of placed(one)) {
    // Ends: those that begin so far forward end before this one begins, and before all that follow.
    while (first < others.length && others[first]!.bounds.from[0] + longest < bounds.from[0]) first++;
    // Ends: those that begin aft of its end cannot meet it.
    for (let i = first; i < others.length && others[i]!.bounds.from[0] < bounds.to[0]; i++) {
      const room = sharedRoom(bounds, others[i]!.bounds);
      if (room > 0) meetings.push({ meeting: [single, others[i]!.single], room });
    }
  }
  return meetings
    .sort((a, b) => b.room - a.room)
    .slice(0, MOST)
    .map(({ meeting }) => meeting);
}

const singles = (form: Form): readonly Form[] => (form.shape === 'compound' ? form.parts.flatMap(singles) : [form]);

/** Of the block that two boxes share, m3; 0 where they share none. */
function sharedRoom(a: Bounds, b: Bounds): number {
  const sizes = ([0, 1, 2] as const).map(axis =>
    Math.max(0, Math.min(a.to[axis], b.to[axis]) - Math.max(a.from[axis], b.from[axis])),
  );
  return sizes[0]! * sizes[1]! * sizes[2]!;
}
