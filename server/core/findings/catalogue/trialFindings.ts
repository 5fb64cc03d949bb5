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
} as const;
