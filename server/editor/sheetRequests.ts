import type { Connection } from 'vscode-languageserver';
import type { MeshLookup } from '../service/meshes.ts';
import {
  type Analysis,
  allDone,
  type BoatService,
  type Edits,
  type SheetParts,
  type Working,
} from '../service/service.ts';
import { type GuardHost, guard } from './guard.ts';
import { makingOf } from './making.ts';
import type { OpenFile } from './openFiles.ts';
import {
  type EditResult,
  type EntryAtParams,
  type EntryAtResult,
  type EntryRangeParams,
  type EntryRangeResult,
  entryAtRequest,
  entryRangeRequest,
  type MoveParams,
  moveRequest,
  type PreviewParams,
  type PreviewResult,
  type ProposalParams,
  previewRequest,
  proposalRequest,
  type SheetParams,
  type SheetResult,
  sheetRequest,
} from './protocol.ts';

export interface SheetRequestsHost {
  readonly connection: Connection;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly fileAt: (uri: string) => OpenFile | undefined;
  readonly meshesOf: (uri: string) => MeshLookup;
}

/** Answers what the trim sheet beside the text asks. */
export function answerSheetRequests(host: SheetRequestsHost): void {
  const { connection, service, fileAt } = host;
  type About = { readonly uri: string };
  /** What is made of the file in steps, and then answered; `prepare` says when that can begin. */
  const made = <P extends About, M, T>(
    method: string,
    fallback: T,
    make: (analysis: Analysis, params: P) => Working<M>,
    run: (file: OpenFile, made: M, params: P) => T,
    prepare: (file: OpenFile, params: P) => boolean = () => true,
  ): void => {
    connection.onRequest(method, (...given: readonly unknown[]): Promise<unknown> => {
      const making = makingOf<P, M>(make, host.guard.now);
      const answered = (params: P): T => {
        const file = fileAt(params.uri);
        return file ? run(file, making(file.analysis, params).all(), params) : fallback;
      };
      const prepared = (params: P): boolean => {
        const file = fileAt(params.uri);
        return !file || (file.step() && prepare(file, params) && making(file.analysis, params).step());
      };
      return guard(host.guard, { name: method, fallback, given }, answered, prepared);
    });
  };
  const answer = <P extends About, T>(method: string, fallback: T, run: (file: OpenFile, params: P) => T): void =>
    made<P, null, T>(
      method,
      fallback,
      () => allDone(null),
      (file, _, params) => run(file, params),
    );
  const closed: EditResult = { status: 'refused', reason: 'Open the boat file first.' };

  made<SheetParams, SheetParts, SheetResult>(
    sheetRequest,
    null,
    (analysis, { proposal, seen, width, names }) =>
      service.sheet(analysis, { proposal, width, names, ...(seen ? { seen } : {}) }),
    ({ document, analysis }, sheet, { proposal }) => {
      const proposals = proposal === null ? [] : service.proposals(analysis);
      return { version: document.version, ...sheet, proposals };
    },
    // All pictures take what takes long.
    ({ analysis }, { proposal }) => proposal === null || (analysis.settled.step() && analysis.corrections.step()),
  );
  made<PreviewParams, SheetParts | null, PreviewResult>(
    previewRequest,
    null,
    (analysis, { uri, path, metres, seen, width, names }) => {
      const moved = service.moved(analysis, { key: path, by: { metres } }, host.meshesOf(uri));
      if (!moved) return allDone(null);
      return service.sheet(moved, { proposal: null, moved: path, width, names, ...(seen ? { seen } : {}) });
    },
    ({ document }, sheet) => sheet && { version: document.version, ...sheet },
  );
  answer<MoveParams, EditResult>(moveRequest, closed, (file, { path, by }) =>
    edited(file, service.moveEdits(file.analysis, { key: path, by })),
  );
  answer<ProposalParams, EditResult>(proposalRequest, closed, (file, { proposal }) =>
    edited(file, service.proposalEdits(file.analysis, proposal)),
  );
  answer<EntryAtParams, EntryAtResult>(entryAtRequest, { path: null }, ({ document, analysis }, { position }) => ({
    path: service.entryKey(analysis, document.offsetAt(position)),
  }));
  answer<EntryRangeParams, EntryRangeResult>(entryRangeRequest, { range: null }, ({ analysis }, { path }) => ({
    range: service.entryRange(analysis, path),
  }));
}

function edited({ document }: OpenFile, edits: Edits): EditResult {
  if (edits.status === 'refused') return edits;
  return {
    status: 'done',
    version: document.version,
    edits: edits.splices.map(({ start, end, text }) => ({
      range: { start: document.positionAt(start), end: document.positionAt(end) },
      newText: text,
    })),
  };
}
