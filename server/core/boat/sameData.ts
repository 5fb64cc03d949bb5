import { isList, isMap } from '../../../schema/fields.ts';

/** Whether two pieces of plain data are the same throughout, the order of their keys included. */
export function sameData(one: unknown, two: unknown): boolean {
  if (Object.is(one, two)) return true;
  if (isList(one) && isList(two)) return one.length === two.length && one.every((each, i) => sameData(each, two[i]));
  if (!isMap(one) || !isMap(two)) return false;
  const [keys, others] = [Object.keys(one), Object.keys(two)];
  return keys.length === others.length && keys.every((key, i) => key === others[i] && sameData(one[key], two[key]));
}
