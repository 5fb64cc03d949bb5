import { CancellationToken, ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import { takeTurn } from './turn.ts';

/** A turn of work that is long, ms. */
const LONG = 4;

/** What a handler needs of the world outside. */
export interface GuardHost {
  /** Runs something later, after messages that are waiting: a cancellation among them is then known. */
  readonly defer: (run: () => void) => void;
  /** Tells whoever looks after the server that something broke. */
  readonly log: (message: string) => void;
  /** The time of day, ms: long work is done so much at a time. */
  readonly now: () => number;
  /** Why nothing is answered now: the editor has not introduced itself yet, or has taken leave. */
  readonly refusal: () => ResponseError<void> | null;
}

/** What is asked for. */
export interface RequestAsked<T> {
  readonly name: string;
  /** The answer where our own code fails. */
  readonly fallback: T;
  /** As the connection hands it on: parameters and a cancellation token; the token alone where there are no parameters. */
  readonly given: readonly unknown[];
  /** Begun before what the change ahead of it asks for, and before a cancellation can be heard. */
  readonly isAtOnce?: boolean;
}

/**
 * Answers a request, whatever happens: nothing when it was cancelled, the fallback when our own code fails. `prepare` does
 * long work in steps and says when it is done: between two of them messages that wait are heard, a cancellation too.
 */
export function guard<P extends object, T>(
  host: GuardHost,
  { name, fallback, given, isAtOnce = false }: RequestAsked<T>,
  run: (params: P) => T,
  prepare: (params: P) => boolean = () => true,
): Promise<T | ResponseError<void>> {
  const refusal = host.refusal();
  if (refusal) return Promise.resolve(refusal);
  const token = given.find(one => CancellationToken.is(one)) ?? CancellationToken.None;
  const [params] = given;
  if (typeof params !== 'object' || params === null || params === token) {
    return Promise.resolve(new ResponseError(ErrorCodes.InvalidParams, `${name} came without its parameters`));
  }
  return new Promise(resolve => {
    let wasReady = false;
    const turn = (): void => {
      const began = host.now();
      if (token.isCancellationRequested) {
        resolve(new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled'));
        return;
      }
      const isReady = attempt(
        host,
        name,
        () => takeTurn(() => prepare(params as P), host.now),
        () => null,
      );
      if (isReady === null) resolve(fallback);
      // A large answer takes long to be sent: after long work it has a turn of its own.
      else if (isReady && (wasReady || host.now() - began < LONG))
        resolve(
          attempt(
            host,
            name,
            () => run(params as P),
            () => fallback,
          ),
        );
      else {
        wasReady = isReady;
        host.defer(turn);
      }
    };
    if (isAtOnce) turn();
    else host.defer(turn);
  });
}

/** Runs something of ours; when it fails, says so in the log and makes do. */
export function attempt<T>(host: GuardHost, name: string, run: () => T, otherwise: (reason: string) => T): T {
  try {
    return run();
  } catch (problem) {
    const reason = problem instanceof Error ? problem.message : String(problem);
    host.log(`${name} failed: ${problem instanceof Error ? (problem.stack ?? reason) : reason}`);
    return otherwise(reason);
  }
}
