import { samePath } from '../../../schema/path.ts';
import type { Entry } from '../boat/boat.ts';
import type { Finding } from '../findings/finding.ts';
import { type Analysis, findingsOf, type Places, type Said } from './analysis.ts';

/** What the editor is told of a file. */
export type ToTell = Pick<
  Analysis,
  'syntax' | 'file' | 'boat' | 'scheme' | 'conditions' | 'others' | 'filed' | 'withTrials' | 'uncertainties'
> & {
  readonly findings: readonly Finding[];
  readonly said: Pick<Said, 'openQuestions'>;
};

/** What was known of a file when it was last told of. */
export interface LastKnown {
  readonly places: Places;
  readonly said: Said;
}

/** What is known of a file now; what is not, as it was known before. Null where all of it never was. */
export function lastKnown({ file: { places }, said, settled, trials }: Analysis, before: LastKnown | null) {
  if (settled.isDone()) return { places, said };
  if (!before) return null;
  return { places: newer(places, before.places), said: trials.length > 0 ? before.said : meanwhile(said, before.said) };
}

/** Some of the way to what must be found before a file is told of: what is told meanwhile has it not; true when it is there. */
export const readyToTell = ({ file: { places }, said }: Analysis, last: LastKnown | null): boolean =>
  last === null
    ? places.found.step() && said.inMotion.step()
    : areOfTheSame(places, last.places) || places.found.step();

/**
 * What is told until all is known: what is not known yet stays as it was told last. Of a boat with trials that is everything,
 * for they are heeded in it.
 */
export function toldMeanwhile(analysis: Analysis, last: LastKnown): ToTell {
  const { syntax, file, boat, scheme, conditions, others, filed, withTrials, uncertainties, trials } = analysis;
  const said = trials.length > 0 ? last.said : meanwhile(analysis.said, last.said);
  const places = areOfTheSame(file.places, last.places) ? newer(file.places, last.places) : file.places;
  const findings = findingsOf([...file.written, ...places.found.all()], said);
  return { syntax, file, boat, scheme, conditions, others, filed, withTrials, uncertainties, said, findings };
}

const meanwhile = (said: Said, last: Said): Said => ({
  ...said,
  inMotion: said.inMotion.isDone() ? said.inMotion : last.inMotion,
  openQuestions: last.openQuestions,
});

const newer = (places: Places, last: Places): Places => (places.found.isDone() ? places : last);

/** The same entries stand in the same places of the file, so that what was said of them still stands where they do. */
const areOfTheSame = ({ of }: Places, last: Places): boolean =>
  of !== null && last.of?.length === of.length && of.every((entry, i) => isSame(entry, last.of![i]!));

const isSame = (one: Entry, other: Entry): boolean =>
  one === other || (one.name === other.name && samePath(one.path, other.path));
