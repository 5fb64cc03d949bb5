/** A text with a name and a version, as an editor holds it. */
export interface VersionedText {
  readonly uri: string;
  readonly version: number;
  getText(): string;
}

/** One analysis for each version of a text; the last of each file is at hand for the next. */
export interface AnalysisCache<A> {
  get(document: VersionedText): A;
  drop(uri: string): void;
  /** The next `get` analyses anew, for something besides the text has changed. */
  outdate(uri: string): void;
}

export function createAnalysisCache<A>(analyse: (document: VersionedText, previous?: A) => A): AnalysisCache<A> {
  const kept = new Map<string, { readonly version: number | null; readonly analysis: A }>();
  return {
    get(document) {
      const last = kept.get(document.uri);
      if (last && last.version === document.version) return last.analysis;
      const analysis = analyse(document, last?.analysis);
      kept.set(document.uri, { version: document.version, analysis });
      return analysis;
    },
    drop: uri => void kept.delete(uri),
    outdate(uri) {
      const last = kept.get(uri);
      if (last) kept.set(uri, { ...last, version: null });
    },
  };
}
