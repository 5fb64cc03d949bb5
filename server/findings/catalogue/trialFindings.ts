/** Findings about trials: what was read off the boat in the water. */
export const trialFindings = {
  'trial-empty': {
    title: 'A trial without readings',
    means: 'The trial says what was done, but not what was read.',
    why: 'Without readings the pool teaches nothing.',
    todo: 'Add marks, heel and trim for a boat afloat; the fill of the tank and the trim for one under water.',
  },
  'trial-impossible': {
    title: 'A reading that cannot be',
    means:
      'The reading does not fit the boat, or is given twice: a mark beyond the hull, more water than the tank holds.',
    why: 'It would teach the file something wrong, so it is left out; the figures of the boat do not depend on it.',
    todo: 'Look at your notes, and at the place that is named.',
  },
  'trial-reading-unused': {
    title: 'A reading that belongs to another condition',
    means: 'What is given means nothing in a trial of this condition.',
    why: 'It is compared with nothing.',
    todo: 'Check the condition of the trial, or make two trials of it.',
  },
  'trial-differs': {
    title: 'The boat was not as its file has it',
    means:
      'What was read in the water differs from what the full model says of the file, by more than twice what the reading itself and all tolerances of the file leave open (each a standard uncertainty).',
    why: 'Something weighs, lies or displaces other than the file says, and every figure suffers by it.',
    todo: 'Look for what nobody wrote down, and weigh and measure again what is named; or take one of the quick fixes: an entry for the unlisted weight, or changed figures.',
  },
  'trial-slip': {
    title: 'A reading that fits nothing',
    means:
      'Neither the file, nor a weight that nobody wrote down, nor any of the other readings agrees with it: its normalised residual is above 3.29, which a good reading is once in a thousand (Baarda’s data snooping).',
    why: 'One slip of the tape would spoil what all the others teach, so it is left out.',
    todo: 'Look at your notes: two figures swapped, the wrong end of the tape, port for starboard. Else read it again at the next trial.',
  },
  'trial-not-comparable': {
    title: 'A trial that the file does not know',
    means: 'By the file the boat would have sunk, turned over or not hung neutral under the conditions of the trial.',
    why: 'There is nothing to compare the readings with.',
    todo: 'Say under “aboard” what was on board that day, under “pool” what water it was; mend the file’s errors.',
  },
} as const;
