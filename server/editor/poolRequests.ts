import type { Connection } from 'vscode-languageserver';
import type { BoatService } from '../service/service.ts';
import { type GuardHost, guard } from './guard.ts';
import { makingOf } from './making.ts';
import type { OpenFile } from './openFiles.ts';
import {
  type PoolsideParams,
  type PoolsideResult,
  poolsideRequest,
  type TakeTrialsParams,
  type TakeTrialsResult,
  takeTrialsRequest,
} from './protocol.ts';

export interface PoolRequestsHost {
  readonly connection: Connection;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly fileAt: (uri: string) => OpenFile | undefined;
}

/** Answers what goes to the poolside, and what comes back from there. */
export function answerPoolRequests({ connection, service, guard: host, fileAt }: PoolRequestsHost): void {
  connection.onRequest(poolsideRequest, (...given: readonly unknown[]): Promise<unknown> => {
    const making = makingOf(service.poolBoat, host.now);
    return guard<PoolsideParams, PoolsideResult>(
      host,
      { name: 'poolside page', fallback: null, given },
      params => {
        const file = fileAt(params.uri);
        return file ? making(file.analysis, params).all() : null;
      },
      params => {
        const file = fileAt(params.uri);
        return !file || (file.step() && file.analysis.settled.step() && making(file.analysis, params).step());
      },
    );
  });
  const refused = (reason: string): TakeTrialsResult => ({ edit: { status: 'refused', reason }, words: '' });
  connection.onRequest(
    takeTrialsRequest,
    (...given: readonly unknown[]): Promise<unknown> =>
      guard<TakeTrialsParams, TakeTrialsResult>(
        host,
        { name: 'take trials', fallback: refused('The trials could not be taken.'), given },
        ({ uri, text }) => {
          const file = fileAt(uri);
          if (!file) return refused('Open the boat file first.');
          const { document, analysis } = file;
          const taking = service.takeTrials(analysis, text);
          if (taking.status === 'refused') return refused(taking.reason);
          const edits = taking.splices.map(({ start, end, text: newText }) => ({
            range: { start: document.positionAt(start), end: document.positionAt(end) },
            newText,
          }));
          return { edit: { status: 'done', version: document.version, edits }, words: taking.words };
        },
        ({ uri }) => fileAt(uri)?.step() ?? true,
      ),
  );
}
