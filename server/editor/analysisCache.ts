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
  drop(uri: string): void;
  /** The next `get` analyses anew, for something besides the text has changed. */
  outdate(uri: string): void;
}

/** How a text is read, and how it is analysed once it is read. */
export interface Halves<A, R> {
  read(document: VersionedText, previous?: A): R;
  analyse(document: VersionedText, previous: A | undefined, read: R): A;
}

interface Known<A> {
  readonly version: number | null;
  readonly analysis: A;
}

interface Read<A, R> {
  readonly version: number;
  readonly read: R;
  /** What was analysed before. */
  readonly after: Known<A> | undefined;
}

export function createAnalysisCache<A, R>({ read, analyse }: Halves<A, R>): AnalysisCache<A, R> {
  const analysed = new Map<string, Known<A>>();
  const texts = new Map<string, Read<A, R>>();
  const readOnce = (document: VersionedText): R => {
    const { uri, version } = document;
    const after = analysed.get(uri);
    const known = texts.get(uri);
    if (known && known.version === version && known.after === after) return known.read;
    const text = { version, read: read(document, after?.analysis), after };
    texts.set(uri, text);
    return text.read;
  };
  return {
    get(document) {
      const { uri, version } = document;
      const last = analysed.get(uri);
      if (last && last.version === version) return last.analysis;
      const analysis = analyse(document, last?.analysis, readOnce(document));
      texts.delete(uri);
      analysed.set(uri, { version, analysis });
      return analysis;
    },
    read(document) {
      const last = analysed.get(document.uri);
      return last && last.version === document.version ? last.analysis : readOnce(document);
    },
    drop(uri) {
      analysed.delete(uri);
      texts.delete(uri);
    },
    outdate(uri) {
      const last = analysed.get(uri);
      if (last) analysed.set(uri, { ...last, version: null });
    },
  };
}
