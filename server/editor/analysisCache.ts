import type { Working } from '../service/service.ts';

/** A text with a name and a version, as an editor holds it. */
interface VersionedText {
  readonly uri: string;
  readonly version: number;
  getText(): string;
}

/** One analysis for each version of a text; the last of each file is at hand for the next. */
export interface AnalysisCache<A, R> {
  get(document: VersionedText): A;
  /** The text as it was read, which is the first half of its analysis; all of that where it is there. */
  read(document: VersionedText): A | R;
  /** A step of the way to `get`, or to `read`; true when it is there, or fails, which it then says when asked for. */
  step(document: VersionedText, towards: 'get' | 'read'): boolean;
  /** Whether a file is being read or analysed. */
  isUnderWay(uri: string): boolean;
  /** The last analysis of a file, maybe of an earlier version; undefined where it has none. */
  last(uri: string): A | undefined;
  drop(uri: string): void;
  /** The next `get` analyses anew, for something besides the text has changed. */
  outdate(uri: string): void;
}

/** How a text is read, and how it is analysed once it is read. */
export interface Halves<A, R> {
  read(document: VersionedText, previous?: A): Working<R>;
  analyse(document: VersionedText, previous: A | undefined, read: R): Working<A>;
}

interface Known<A> {
  readonly version: number | null;
  readonly analysis: A;
}

/** An analysis on the way. */
interface UnderWay<A, R> {
  readonly version: number;
  readonly reading: Working<R>;
  /** Null until the text is read. */
  analysing: Working<A> | null;
  /** What was analysed before. */
  readonly after: Known<A> | undefined;
}

export function createAnalysisCache<A, R>({ read, analyse }: Halves<A, R>): AnalysisCache<A, R> {
  const analysed = new Map<string, Known<A>>();
  const underWay = new Map<string, UnderWay<A, R>>();
  const isThere = ({ uri, version }: VersionedText): boolean => analysed.get(uri)?.version === version;
  const workOn = (document: VersionedText): UnderWay<A, R> => {
    const { uri, version } = document;
    const after = analysed.get(uri);
    const known = underWay.get(uri);
    if (known && known.version === version && known.after === after) return known;
    const work = { version, reading: read(document, after?.analysis), analysing: null, after };
    underWay.set(uri, work);
    return work;
  };
  /** What fails is begun anew when it is asked for again. */
  const orDrop = <T>(uri: string, run: () => T): T => {
    try {
      return run();
    } catch (problem) {
      underWay.delete(uri);
      throw problem;
    }
  };
  const readOnce = (document: VersionedText): R => orDrop(document.uri, () => workOn(document).reading.all());
  const advance = (document: VersionedText, towards: 'get' | 'read'): boolean =>
    orDrop(document.uri, () => {
      if (isThere(document)) return true;
      const { uri, version } = document;
      const work = workOn(document);
      if (!work.reading.step()) return false;
      if (towards === 'read') return true;
      work.analysing ??= analyse(document, work.after?.analysis, work.reading.all());
      if (!work.analysing.step()) return false;
      underWay.delete(uri);
      analysed.set(uri, { version, analysis: work.analysing.all() });
      return true;
    });
  return {
    get(document) {
      // Ends: a step is a stretch of work, and the work ends.
      while (!advance(document, 'get'));
      return analysed.get(document.uri)!.analysis;
    },
    read: document => (isThere(document) ? analysed.get(document.uri)!.analysis : readOnce(document)),
    step(document, towards) {
      try {
        return advance(document, towards);
      } catch {
        return true;
      }
    },
    isUnderWay: uri => underWay.has(uri),
    last: uri => analysed.get(uri)?.analysis,
    drop(uri) {
      analysed.delete(uri);
      underWay.delete(uri);
    },
    outdate(uri) {
      underWay.delete(uri);
      const last = analysed.get(uri);
      if (last) analysed.set(uri, { ...last, version: null });
    },
  };
}
