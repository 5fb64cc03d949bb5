/**
 * One figure that the program computes, held against the same figure from elsewhere. The checks print the table of
 * `npm run accuracy` and are asserted one by one in accuracy.test.ts.
 */
export interface Check {
  readonly what: string;
  /** Where the expected figure comes from. */
  readonly source: string;
  readonly known: Known;
  readonly unit: string;
  /** A figure, or the range that the source allows. */
  readonly expected: number | readonly [least: number, most: number];
  /** Largest difference allowed: relative to the expected figure, or in its unit. A range needs none. */
  readonly within?: { readonly relative: number } | { readonly absolute: number };
  /** The program's own figure. */
  got(): number;
}

/**
 * `seen`: read in a public copy of the source. `from memory`: figure and source from memory, agreeing
 * with a recomputation. `derived`: follows from the source's formula, the instance is ours. `computed`: by another way
 * of computing, written for the check or in another library.
 */
type Known = 'seen' | 'from memory' | 'derived' | 'computed';

export interface Section {
  readonly title: string;
  /** What is held against what, where that needs saying. */
  readonly about?: string;
  readonly checks: readonly Check[];
}

/** A section with what the program got. */
export interface Evaluated extends Section {
  readonly outcomes: readonly Outcome[];
}

export const evaluate = (sections: readonly Section[]): readonly Evaluated[] =>
  sections.map(section => ({ ...section, outcomes: section.checks.map(outcomeOf) }));

export interface Outcome {
  readonly got: number;
  /** Relative to the expected figure; absolute where that is 0; 0 inside a range. */
  readonly error: number;
  readonly passes: boolean;
}

function outcomeOf(check: Check): Outcome {
  const got = check.got();
  const { expected, within } = check;
  if (typeof expected !== 'number') {
    const [least, most] = expected;
    const passes = got >= least && got <= most;
    const off = Math.max(0, least - got, got - most);
    return { got, error: off / Math.abs(got < least ? least : most), passes };
  }
  if (!within) throw new Error(`“${check.what}” has neither a range nor a tolerance`);
  const off = Math.abs(got - expected);
  const allowed = 'absolute' in within ? within.absolute : within.relative * Math.abs(expected);
  return { got, error: expected === 0 ? off : off / Math.abs(expected), passes: off <= allowed };
}

/** The same source, known and tolerance for a run of checks. */
export const alike =
  (shared: Pick<Check, 'source' | 'known' | 'unit'> & Partial<Pick<Check, 'within'>>) =>
  (what: string, expected: Check['expected'], got: () => number, own: Partial<Check> = {}): Check => ({
    ...shared,
    what,
    expected,
    got,
    ...own,
  });
