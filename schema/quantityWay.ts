import { expectation, type Wanted, type Way } from './quantityExamples.ts';
import type { Written } from './quantityGrammar.ts';
import { bad, type Read } from './slip.ts';

/** The word between two values, null where there is only one. */
const jointOf: Readonly<Record<Way, 'to' | 'x' | null>> = {
  one: null,
  range: 'to',
  extent: 'to',
  section: 'x',
  taper: 'to',
};

/** One value where two are wanted, two where one is, or the wrong word between them. */
export function faultOfWay(text: string, { amounts, joint }: Written, wanted: Wanted): Read<never> | null {
  const right = jointOf[wanted.way];
  const expected = expectation(wanted);
  if (joint === null) {
    const needsTwo = wanted.way === 'range' || wanted.way === 'section';
    return needsTwo ? bad(`${expected}, but this is one value.`, amounts[0]) : null;
  }
  if (right === null) return bad(`${expected}, but here are two.`, { start: joint.start, end: amounts.at(-1)!.end });
  if (joint.isRight && joint.meaning === right) return null;
  const before = /\s$/.test(text.slice(0, joint.start)) ? '' : ' ';
  const after = /^\s/.test(text.slice(joint.end)) ? '' : ' ';
  return bad(`${expected}: write “${right}” between the two.`, joint, before + right + after);
}
