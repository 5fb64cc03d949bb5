import type { Connection } from 'vscode-languageserver';
import type { BoatService } from '../service/service.ts';
import { type GuardHost, guard } from './guard.ts';
import { makingOf } from './making.ts';
import type { OpenFile } from './openFiles.ts';
import {
  type NewBoatParams,
  type NewBoatResult,
  type NewTrialParams,
  type NewTrialResult,
  newBoatRequest,
  newTrialRequest,
  type ReportParams,
  type ReportResult,
  reportRequest,
  type UnpackParams,
  type UnpackResult,
  unpackRequest,
} from './protocol.ts';

export interface FileRequestsHost {
  readonly connection: Connection;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly fileAt: (uri: string) => OpenFile | undefined;
}

const NO_REPORT = 'The report could not be made.';
const NOT_OPEN = 'Open the boat file to see its report.';

/** Answers what the extension's commands ask of a whole file: its report, a trial to fill in, a new boat, one out of a page. */
export function answerFileRequests({ connection, service, guard: host, fileAt }: FileRequestsHost): void {
  connection.onRequest(reportRequest, (...given: readonly unknown[]) => {
    const making = makingOf(service.reports, host.now);
    return guard<ReportParams, ReportResult>(
      host,
      { name: 'report', fallback: { text: NO_REPORT, html: `<p>${NO_REPORT}</p>` }, given },
      params => {
        const file = fileAt(params.uri);
        return file ? making(file.analysis, params).all() : { text: NOT_OPEN, html: `<p>${NOT_OPEN}</p>` };
      },
      params => {
        const file = fileAt(params.uri);
        return !file || (file.step() && making(file.analysis, params).step());
      },
    );
  });
  connection.onRequest(newTrialRequest, (...given: readonly unknown[]) =>
    guard<NewTrialParams, unknown>(
      host,
      { name: 'new trial', fallback: null, given },
      ({ uri }) => {
        const file = fileAt(uri);
        const splice = file && service.newTrial(file.analysis);
        if (!splice) return null;
        const { document } = file;
        const range = { start: document.positionAt(splice.start), end: document.positionAt(splice.end) };
        return { range, snippet: splice.text } satisfies NewTrialResult;
      },
      ({ uri }) => fileAt(uri)?.step() ?? true,
    ),
  );
  connection.onRequest(newBoatRequest, (...given: readonly unknown[]) =>
    guard<NewBoatParams, NewBoatResult>(
      host,
      { name: 'new boat', fallback: { text: '' }, given },
      ({ name, units, plan }) => {
        if (plan === undefined) return { text: service.newBoat(name, units) };
        const planned = service.plannedBoat(name, plan, units);
        return planned.status === 'done' ? { text: planned.text } : { text: '', problem: planned.reason };
      },
    ),
  );
  connection.onRequest(unpackRequest, (...given: readonly unknown[]) =>
    guard<UnpackParams, unknown>(
      host,
      { name: 'unpack', fallback: null, given },
      ({ html }) => service.fileIn(html) satisfies UnpackResult,
    ),
  );
}
