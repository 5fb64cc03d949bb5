import type { Connection, Diagnostic, TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { type Analysis, knownBy, type Said, saying } from '../core/analysis/analysis.ts';
import type { Summary } from './answers/summary.ts';
import type { Clock, Timer } from './clock.ts';
import { attempt, type GuardHost } from './guard.ts';
import type { SummaryParams } from './protocol.ts';
import type { BoatService } from './service.ts';

/** Where an analysis has taken longer than this, typing is let pause before the next, ms. */
const CHEAP = 30;

/** A pause in the typing, ms: too short to be noticed, long enough to skip most keystrokes. */
const PAUSE = 60;

export interface TellerHost {
  readonly connection: Connection;
  /** Tells the editor in one line how the boat lies; where it cannot show that, nothing. */
  readonly summarise: (summary: SummaryParams) => void;
  readonly clock: Clock;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly documents: TextDocuments<TextDocument>;
  readonly analysisOf: (document: TextDocument) => Analysis;
  /** What the last analysis of a file took, ms. */
  readonly costOf: (uri: string) => number;
  readonly reference: () => string | null;
}

/** Tells the editor what is known of its files, as it becomes known. */
export interface Teller {
  /** A file was opened or changed. */
  changed(uri: string): void;
  closed(uri: string): void;
  /** Tells all of a file as it is now. */
  publish(uri: string): void;
}

interface Told {
  readonly version: number;
  readonly diagnostics: string;
  readonly summary: string;
}

export function createTeller(host: TellerHost): Teller {
  const { connection, clock, service, guard, documents, analysisOf, costOf, reference } = host;
  const pending = new Map<string, Timer>();
  /** What was said of a file when all was last known: what waits stays until it is known again. */
  const saidLast = new Map<string, Said>();
  const told = new Map<string, Told>();

  const cancel = (uri: string): void => {
    const timer = pending.get(uri);
    if (timer !== undefined) clock.clearTimeout(timer);
    pending.delete(uri);
  };

  const send = (
    { uri, version }: TextDocument,
    said: { readonly diagnostics: readonly Diagnostic[]; readonly summary: Summary },
  ): void => {
    const now: Told = { version, diagnostics: JSON.stringify(said.diagnostics), summary: JSON.stringify(said.summary) };
    const before = told.get(uri);
    told.set(uri, now);
    if (!before || before.version !== version || before.diagnostics !== now.diagnostics)
      void connection.sendDiagnostics({ uri, version, diagnostics: [...said.diagnostics] });
    if (before?.version === version && before.summary === now.summary) return;
    host.summarise({ uri, ...said.summary });
  };

  /** Tells the editor what is known of a file, and the caller whether that is all. */
  const tell = (document: TextDocument): boolean => {
    const { uri } = document;
    const { isAll, ...said } = attempt(
      guard,
      'analysis',
      () => {
        const analysis = knownBy(analysisOf(document));
        const isAll = analysis.settled.isDone();
        if (isAll) saidLast.set(uri, analysis.said);
        const shown = isAll ? analysis : meanwhile(analysis, saidLast.get(uri));
        return { isAll, diagnostics: service.diagnostics(shown, reference()), summary: service.summary(shown) };
      },
      reason => ({ ...service.ownFault(reason), isAll: true }),
    );
    send(document, said);
    return isAll;
  };

  /** Links are made after the first file has been told of: nobody follows one so soon. */
  const link = (uri: string): void => {
    const document = documents.get(uri);
    if (!document || reference() === null || pending.has(uri)) return;
    const isNew = attempt(guard, 'links', service.makeLinks, () => false);
    if (isNew) tell(document);
  };

  /** One step towards what takes a while; the editor is told as soon as there is more, unless the file has changed. */
  const findTheRest = (uri: string, version: number): void => {
    const document = documents.get(uri);
    if (document?.version !== version || pending.has(uri)) return;
    const isAll = attempt(
      guard,
      'findings',
      () => analysisOf(document).settled.step(),
      () => true,
    );
    if (isAll) tell(document);
    guard.defer(() => (isAll ? link(uri) : findTheRest(uri, version)));
  };

  /** Analyses a file as it is now and tells the editor; a run that a newer change or a close overtook never starts. */
  const publish = (uri: string): void => {
    pending.delete(uri);
    const document = documents.get(uri);
    if (!document || guard.refusal()) return;
    const { version } = document;
    const isAll = tell(document);
    guard.defer(() => (isAll ? link(uri) : findTheRest(uri, version)));
  };

  return {
    changed(uri) {
      cancel(uri);
      const wait = costOf(uri) > CHEAP ? PAUSE : 0;
      pending.set(
        uri,
        // What fails in a timer would end the server.
        clock.setTimeout(
          () =>
            attempt(
              guard,
              'telling',
              () => publish(uri),
              () => {},
            ),
          wait,
        ),
      );
    },
    closed(uri) {
      cancel(uri);
      saidLast.delete(uri);
      told.delete(uri);
      void connection.sendDiagnostics({ uri, diagnostics: [] });
    },
    publish,
  };
}

/** What is said while uncertainties and trials are not in yet: of a boat with trials what was said last, for they are heeded in it. */
function meanwhile(analysis: Analysis, last: Said | undefined): Analysis {
  if (!last) return analysis;
  const said: Said = analysis.trials.length > 0 ? last : { ...analysis.said, openQuestions: last.openQuestions };
  return saying(analysis, said);
}
