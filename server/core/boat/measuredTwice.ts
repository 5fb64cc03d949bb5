/**
 * Two measurements of one thing that are further apart than so many standard uncertainties of their difference are told:
 * by chance alone one in four hundred is (the normal distribution).
 */
export const APART = 3;
