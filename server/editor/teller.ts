import type { TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis, BoatService, LastKnown } from '../service/service.ts';
import type { Clock, Stop } from './clock.ts';
import { attempt, type GuardHost } from './guard.ts';
import { createNews, type News, type NewsHost, type Sayable } from './news.ts';
import { takeLongTurn, takeTurn } from './turn.ts';
import { createTyping } from './typing.ts';

/** Where an analysis has taken longer than this, typing is let pause before the next, ms. */
const CHEAP = 30;

/** A pause in the typing, ms: too short to be noticed, long enough to skip most keystrokes. */
const PAUSE = 60;

/** What takes long waits for a pause in the typing as long as this, ms: most of it would be overtaken. */
const REST = 200;

export interface TellerHost extends NewsHost {
  readonly clock: Clock;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly documents: TextDocuments<TextDocument>;
  /** Some of the way through a text, the first part of its analysis. */
  readonly read: (document: TextDocument) => unknown;
  readonly analysisOf: (document: TextDocument) => Analysis;
  /** Some of the way to that; true when it is there. */
  readonly step: (document: TextDocument) => boolean;
  /** What the last analysis of a file took, ms. */
  readonly costOf: (uri: string) => number;
  readonly reference: () => string | null;
}

/** What is found after the first is told, some of it at each call; true when it is all found. */
type Part = (analysis: Analysis) => boolean;
const placesAndMotion: Part = ({ file, said }) => file.places.found.step() && said.inMotion.step();
const settling: Part = ({ settled }) => settled.step();

/** Tells the editor what is known of its files, as it becomes known. */
export interface Teller {
  /** A file was opened or changed. */
  changed(uri: string): void;
  closed(uri: string): void;
  /** Tells all of a file as it is now. */
  publish(uri: string): void;
}

export function createTeller(host: TellerHost): Teller {
  const { clock, guard, documents, read, costOf } = host;
  const pending = new Map<string, Stop>();
  const typing = createTyping(clock);
  const sayings = createSayings(host);
  const news = createNews(host);
  const later = behindQuestions(guard);

  const cancel = (uri: string): void => {
    pending.get(uri)?.();
    pending.delete(uri);
  };

  const tell = tellerOf(host, sayings, news);

  const stepwise = stepping(host, { later, isOvertaken: uri => pending.has(uri), isReady: sayings.isReady, tell });

  /** Analyses a file as it is now and tells the editor; a run that a newer change or a close overtook never starts. */
  const publish = (uri: string): void => {
    pending.delete(uri);
    const document = documents.get(uri);
    if (document && !guard.refusal()) stepwise.analysed(document, document.version, tellAll);
  };

  const tellAll = (document: TextDocument, version: number): void => {
    const { uri } = document;
    const linkAll = (): void => stepwise.link(uri);
    const settle = (): void => stepwise.find(settling, uri, version, linkAll);
    const isTyping = typing.isGoingOn(uri);
    if (tell(document)) {
      later(linkAll);
      return;
    }
    later(() => stepwise.find(placesAndMotion, uri, version, isTyping ? () => {} : settle));
    if (isTyping) clock.after(REST, () => later(settle));
  };

  return {
    changed(uri) {
      cancel(uri);
      typing.changed(uri);
      const isWaiting = typing.isGoingOn(uri) && costOf(uri) > CHEAP;
      const run = safely(guard, 'telling', () => publish(uri));
      const readFirst = safely(guard, 'reading', () => {
        // Whatever becomes of the reading.
        pending.set(uri, afterQuestion(clock, run));
        const document = documents.get(uri);
        if (document && !guard.refusal()) read(document);
      });
      // A question behind the change waits for no more than the reading of the text.
      pending.set(uri, isWaiting ? clock.after(PAUSE, run) : afterQuestion(clock, readFirst));
    },
    closed(uri) {
      cancel(uri);
      typing.forget(uri);
      sayings.forget(uri);
      news.close(uri);
    },
    publish,
  };
}

interface Stepping {
  /** Runs something after what waits. */
  readonly later: (run: () => void) => void;
  /** A newer version of a file is soon told of. */
  readonly isOvertaken: (uri: string) => boolean;
  /** Some of the way to what must be found before it is told of; true when it is there. */
  readonly isReady: (document: TextDocument) => boolean;
  readonly tell: (document: TextDocument) => unknown;
}

/** Long work on a file, a turn at a time, as long as the file is still the same. */
function stepping(host: TellerHost, { later, isOvertaken, isReady, tell }: Stepping) {
  const { documents, step, guard, clock, analysisOf, service, reference } = host;
  const isSame = (uri: string, version: number): boolean =>
    documents.get(uri)?.version === version && !isOvertaken(uri);
  return {
    /** Goes on with a file once it is analysed: at once where that does not take long. */
    analysed(document: TextDocument, version: number, then: (document: TextDocument, version: number) => void): void {
      if (!isSame(document.uri, version)) return;
      // What fails is told of when it is told.
      const turn = (): boolean => step(document) && takeLongTurn(() => isReady(document), clock.now);
      if (attempt({ ...guard, log: () => {} }, 'analysis', turn, () => true)) then(document, version);
      else later(() => this.analysed(document, version, then));
    },
    /** Some way towards what takes a while; the editor is told as soon as there is more. */
    find(part: Part, uri: string, version: number, then: () => void): void {
      const document = documents.get(uri);
      if (!document || !isSame(uri, version)) return;
      const turn = (): boolean => step(document) && takeTurn(() => part(analysisOf(document)), clock.now);
      const isFound = attempt(guard, 'findings', turn, () => true);
      if (isFound) tell(document);
      later(isFound ? then : () => this.find(part, uri, version, then));
    },
    /** Links are made after the first file has been told of: nobody follows one so soon. */
    link(uri: string): void {
      const document = documents.get(uri);
      if (!document || reference() === null || isOvertaken(uri) || service.links.isDone()) return;
      if (
        attempt(
          guard,
          'links',
          () => takeTurn(service.links.step, clock.now),
          () => true,
        )
      )
        tell(document);
      else later(() => this.link(uri));
    },
  };
}

/** Runs something behind a question that is being taken in: it takes two turns until it is answered. */
const behindQuestions =
  ({ defer }: GuardHost) =>
  (run: () => void): void =>
    defer(() => defer(run));

/** What fails in a timer would end the server. */
const safely = (guard: GuardHost, name: string, run: () => void) => (): void => attempt(guard, name, run, () => {});

/** Runs something as soon as a question that came with a change has been taken in: what takes no time goes before it. */
function afterQuestion({ after }: Clock, run: () => void): Stop {
  let stop: Stop = () => {
    isStopped = true;
  };
  let isStopped = false;
  // Whoever takes in messages has by then seen to it that the next one has its turn.
  queueMicrotask(() => {
    if (!isStopped) stop = after(0, run);
  });
  return () => stop();
}

/** Tells the editor what is known of a file, and the caller whether that is all. */
const tellerOf =
  ({ guard, service }: TellerHost, sayings: ReturnType<typeof createSayings>, news: News) =>
  (document: TextDocument): boolean => {
    const { isAll, ...said } = attempt(
      guard,
      'analysis',
      () => sayings.of(document),
      reason => ({ ...service.ownFault(reason), isAll: true }),
    );
    news.send(document, said);
    return isAll;
  };

/** What there is to say of a file as it is now. */
function createSayings({ service, analysisOf, reference }: TellerHost) {
  /** What was known of a file when all of it was last told. */
  const known = new Map<string, LastKnown>();
  return {
    /** What is known of a file, and whether that is all. */
    of(document: TextDocument): Sayable & { readonly isAll: boolean } {
      const analysis = service.known(analysisOf(document));
      const isAll = analysis.settled.isDone();
      const last = known.get(document.uri) ?? null;
      const shown = isAll || !last ? analysis : service.meanwhile(analysis, last);
      const now = service.lastKnown(analysis, last);
      if (now) known.set(document.uri, now);
      return { isAll, diagnostics: service.diagnostics(shown, reference()), summary: service.summary(shown) };
    },
    isReady: (document: TextDocument): boolean =>
      service.readyToTell(service.known(analysisOf(document)), known.get(document.uri) ?? null),
    forget: (uri: string) => void known.delete(uri),
  };
}
