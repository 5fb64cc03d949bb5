import type { Finding } from '../findings/finding.ts';
import { entryFault } from './fault.ts';
import type { Trial } from './trial.ts';

/** All trials have so many readings at most: each is held against each other, and a builder takes a few dozen of them. */
const MOST_READINGS = 300;

/** The trials as they are heard; that in which the readings become too many, and those below it, without any. */
export function trialsHeard(trials: readonly Trial[], findings: Finding[]): readonly Trial[] {
  let read = 0;
  const beyond = trials.findIndex(({ readings }) => {
    read += readings.length;
    return read > MOST_READINGS;
  });
  const first = trials[beyond];
  if (!first) return trials;
  findings.push(
    entryFault(
      'too-many',
      first.path,
      `More than ${MOST_READINGS} readings in all trials together are more than any boat needs: those of this trial and of the trials below it are left out. Take out trials that say the same as others.`,
    ),
  );
  return trials.map((trial, i) => (i < beyond ? trial : { ...trial, readings: [] }));
}
