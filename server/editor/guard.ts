import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/** What a handler needs of the world outside. */
export interface GuardHost {
  /** Runs something later, after messages that are waiting: a cancellation among them is then known. */
  readonly defer: (run: () => void) => void;
  /** Tells whoever looks after the server that something broke. */
  readonly log: (message: string) => void;
}

/**
 * Answers a request, whatever happens: nothing when it was cancelled, the fallback when our own code fails. `prepare` does
 * long work in steps and says when it is done: between two of them messages that wait are heard, a cancellation too.
 */
export function guard<T>(
  host: GuardHost,
  name: string,
  token: CancellationToken,
  fallback: T,
  run: () => T,
  prepare: () => boolean = () => true,
): Promise<T | ResponseError<void>> {
  return new Promise(resolve => {
    const turn = (): void => {
      if (token.isCancellationRequested) {
        resolve(new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled'));
        return;
      }
      const isReady = attempt(host, name, prepare, () => null);
      if (isReady === null) resolve(fallback);
      else if (isReady) resolve(attempt(host, name, run, () => fallback));
      else host.defer(turn);
    };
    host.defer(turn);
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
