import type { TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Fetched, MeshLookup } from '../service/meshes.ts';
import type { Analysis, AsRead, BoatService, TextRead } from '../service/service.ts';
import { createAnalysisCache } from './analysisCache.ts';
import type { Clock } from './clock.ts';
import type { GuardHost } from './guard.ts';
import { createMeshStore } from './meshStore.ts';
import type { ReadFileParams } from './protocol.ts';
import { takeLongTurn } from './turn.ts';

/** A file that is open in the editor. */
export interface OpenFile {
  readonly document: TextDocument;
  /** Some of the way to `analysis`, or to `read`; true when it is there. What is asked for before is made at once. */
  step(towards?: 'read'): boolean;
  /** What is read of it, for what needs no figures. */
  readonly read: AsRead;
  readonly analysis: Analysis;
}

export interface OpenFilesHost {
  readonly readFile: (asked: ReadFileParams, pause: () => Promise<void>) => Promise<Fetched>;
  readonly clock: Clock;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly documents: TextDocuments<TextDocument>;
  /** A file must be told anew: a mesh file that it names came or changed. */
  readonly onOutdated: (uris: readonly string[]) => void;
}

/** The files that are open, with their analyses and the mesh files that they name. */
export interface OpenFiles {
  at(uri: string): OpenFile | undefined;
  /** Some of the way through a text, the first part of its analysis; true when it is read. */
  read(document: TextDocument): boolean;
  analysisOf(document: TextDocument): Analysis;
  /** Some of the way to that; true when it is there. */
  step(document: TextDocument): boolean;
  meshesOf(uri: string): MeshLookup;
  /** What the last analysis of a file took, ms. */
  costOf(uri: string): number;
  closed(uri: string): void;
  /** Files on disk have changed. */
  changedOnDisk(uris: readonly string[]): void;
}

export function createOpenFiles(host: OpenFilesHost): OpenFiles {
  const { readFile, clock, service, guard, documents } = host;
  const costs = new Map<string, number>();
  const costOf = (uri: string): number => costs.get(uri) ?? 0;
  const pause = (): Promise<void> => new Promise(resolve => guard.defer(resolve));
  const meshes = createMeshStore(
    (uri, boatUri) => readFile({ uri, boatUri }, pause),
    () => renew(),
    pause,
  );
  const meshesOf =
    (uri: string): MeshLookup =>
    name =>
      meshes.lookup(uri, name);
  const analyses = createAnalysisCache<Analysis, TextRead>({
    read(document, previous) {
      costs.set(document.uri, 0);
      return service.read(document.getText(), previous, meshesOf(document.uri));
    },
    analyse: (_, previous, read) => service.conclude(read, previous),
  });
  /** All of it in one turn where that is short: somebody waits for it. */
  const step = (document: TextDocument, towards: 'get' | 'read' = 'get'): boolean => {
    const start = clock.now();
    const isThere = takeLongTurn(() => analyses.step(document, towards), clock.now);
    costs.set(document.uri, costOf(document.uri) + clock.now() - start);
    return isThere;
  };
  const wantedBy = ({ uri }: TextDocument): readonly string[] => analyses.last(uri)?.file.wantedFiles ?? [];

  /** Analyses anew every open file that names mesh files, or may do so: it is being read. */
  const renew = (): void => {
    const outdated = documents
      .all()
      .filter(document => analyses.isUnderWay(document.uri) || wantedBy(document).length > 0);
    for (const { uri } of outdated) analyses.outdate(uri);
    host.onOutdated(outdated.map(({ uri }) => uri));
  };

  /** Meshes that no open file names are let go; while one is being read, which may name others, none. */
  const letMeshesGo = (): void => {
    const open = documents.all();
    if (open.some(({ uri }) => analyses.isUnderWay(uri))) return;
    meshes.keepOnly(open.map(other => ({ boatUri: other.uri, names: wantedBy(other) })));
  };

  return {
    at(uri) {
      const document = documents.get(uri);
      return (
        document && {
          document,
          step: towards => step(document, towards),
          get read() {
            return analyses.read(document);
          },
          get analysis() {
            return analyses.get(document);
          },
        }
      );
    },
    read: document => step(document, 'read'),
    analysisOf: analyses.get,
    step: document => step(document),
    meshesOf,
    costOf,
    closed(uri) {
      analyses.drop(uri);
      costs.delete(uri);
      letMeshesGo();
    },
    changedOnDisk(uris) {
      if (uris.map(uri => meshes.forget(uri)).includes(true)) renew();
    },
  };
}
