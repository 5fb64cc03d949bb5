import type { TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { MeshLookup } from '../service/meshes.ts';
import type { Analysis, AsRead, BoatService, TextRead } from '../service/service.ts';
import { createAnalysisCache } from './analysisCache.ts';
import type { Clock } from './clock.ts';
import { attempt, type GuardHost } from './guard.ts';
import { createMeshStore } from './meshStore.ts';
import type { ReadFileParams, ReadFileResult } from './protocol.ts';

/** A file that is open in the editor. */
export interface OpenFile {
  readonly document: TextDocument;
  /** What is read of it, for what needs no figures. */
  readonly read: AsRead;
  readonly analysis: Analysis;
}

export interface OpenFilesHost {
  readonly readFile: (asked: ReadFileParams) => Promise<ReadFileResult>;
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
  /** Reads a text, the first part of its analysis. */
  read(document: TextDocument): void;
  analysisOf(document: TextDocument): Analysis;
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
  const meshes = createMeshStore(
    (uri, boatUri) => readFile({ uri, boatUri }),
    () => renew(),
    () => new Promise(resolve => guard.defer(resolve)),
  );
  const meshesOf =
    (uri: string): MeshLookup =>
    name =>
      meshes.lookup(uri, name);
  const analyses = createAnalysisCache<Analysis, TextRead>({
    read(document, previous) {
      const start = clock.now();
      const read = service.read(document.getText(), previous, meshesOf(document.uri));
      costs.set(document.uri, clock.now() - start);
      return read;
    },
    analyse(document, previous, read) {
      const start = clock.now();
      const analysis = service.conclude(read, previous);
      costs.set(document.uri, costOf(document.uri) + clock.now() - start);
      return analysis;
    },
  });
  const wantedBy = (document: TextDocument) => analyses.get(document).file.wantedFiles;

  /** Analyses anew every open file that names mesh files. */
  const renew = (): void => {
    const outdated = documents.all().filter(document => wantedBy(document).length > 0);
    for (const { uri } of outdated) analyses.outdate(uri);
    host.onOutdated(outdated.map(({ uri }) => uri));
  };

  /** Meshes that no open file names are let go. */
  const letMeshesGo = (): void =>
    attempt(
      guard,
      'letting meshes go',
      () => meshes.keepOnly(documents.all().map(other => ({ boatUri: other.uri, names: wantedBy(other) }))),
      () => {},
    );

  return {
    at(uri) {
      const document = documents.get(uri);
      return (
        document && {
          document,
          get read() {
            return analyses.read(document);
          },
          get analysis() {
            return analyses.get(document);
          },
        }
      );
    },
    read: analyses.read,
    analysisOf: analyses.get,
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
