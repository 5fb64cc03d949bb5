import { type Address, isBelow } from './isBelow.ts';

/** What can be known of files and links, by their addresses. */
export interface Lookout<A extends Address> {
  /** Where a file lies once all links on the way are followed; null where nobody tells, as in a browser. */
  readonly follow: ((address: A) => Promise<A>) | null;
  readonly isLink: (address: A) => Promise<boolean>;
  /** The address of what stands so many steps further down. */
  readonly below: (folder: A, steps: readonly string[]) => A;
}

/**
 * Where to read a file that shall lie below a folder; null where it does not, or where a link on the way leads out. Where
 * nobody tells what a link leads to, none is followed.
 */
export async function findInside<A extends Address>(file: A, folder: A, lookout: Lookout<A>): Promise<A | null> {
  if (!isBelow(file, folder)) return null;
  if (lookout.follow) {
    const [real, realFolder] = await Promise.all([lookout.follow(file), lookout.follow(folder)]);
    return isBelow(real, realFolder) ? real : null;
  }
  const steps = stepsBetween(file, folder);
  for (const [i] of steps.entries()) {
    if (await lookout.isLink(lookout.below(folder, steps.slice(0, i + 1)))) return null;
  }
  return file;
}

const stepsBetween = (file: Address, folder: Address): readonly string[] => stepsOf(file).slice(stepsOf(folder).length);

const stepsOf = ({ path }: Address): readonly string[] => path.split('/').filter(step => step !== '' && step !== '.');
