/** Findings about trials: what was read off the boat in the water and on the bench. */
export const trialFindings = {
  'trial-empty': {
    title: 'A trial without readings',
    means: 'The trial says what was done, but not what was read.',
    why: 'Without readings the pool teaches nothing.',
    todo: 'Add marks, heel and trim for a boat afloat; the fill of the tank and the trim for one under water; what the scales read on the bench.',
  },
  'trial-impossible': {
    title: 'A reading that cannot be',
    means:
      'The reading does not fit the boat, or is given twice: a mark beyond the hull, more water than the tank holds, three scales under one keel.',
    why: 'It would teach the file something wrong, so it is left out; the figures of the boat do not depend on it.',
    todo: 'Look at your notes, and at the place that is named.',
  },
  'trial-reading-unused': {
    title: 'A reading that belongs to another condition',
    means: 'What is given means nothing in a trial of this condition.',
    why: 'It is compared with nothing.',
    todo: 'Check the condition of the trial, or make two trials of it.',
  },
  'unknown-day': {
    title: 'A day that no trial knows',
    means: '“fitted”, “removed” or “until” is neither a date nor one of the trials.',
    why: 'Each trial is held against the boat as it was that day. What cannot be placed among the trials is passed over there; the boat as it is now does not depend on it.',
    todo: 'Write a date such as 2026-05-10, or a trial by its place in the list, such as “after trial 3”.',
  },
} as const;
