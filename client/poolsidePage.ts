/** Writes the page for the poolside as one HTML file, wherever the editor's files are. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { POOLSIDE_FILES, poolsidePage } from '../server/editor/poolsidePage.ts';
import {
  type PoolsideParams,
  type PoolsideResult,
  poolsideRequest,
  type ReadFileParams,
} from '../server/editor/protocol.ts';
import { base64Of, type WholeFile } from './filePieces.ts';
import { savePage } from './savePage.ts';

export interface PoolsideHost {
  readonly client: BaseLanguageClient;
  readonly extension: vscode.Uri;
  readonly readFile: (asked: ReadFileParams) => Promise<WholeFile>;
}

export async function writePoolsidePage(host: PoolsideHost, boat: vscode.Uri | null): Promise<void> {
  if (!boat) {
    await vscode.window.showInformationMessage(
      'Open a boat file first (NAME.boat.yaml), then ask for its poolside page.',
    );
    return;
  }
  const params: PoolsideParams = { uri: boat.toString() };
  const asked = await host.client.sendRequest<PoolsideResult>(poolsideRequest, params);
  if (!asked) return;
  const { files, ...rest } = asked;
  const read = await Promise.all(files.map(name => meshBeside(host, boat, name)));
  const built = async (name: string): Promise<string> =>
    new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.joinPath(host.extension, 'dist', name)));
  const made = {
    page: await built(POOLSIDE_FILES.page),
    worker: await built(POOLSIDE_FILES.worker),
    licences: await built(POOLSIDE_FILES.licences),
  };
  await savePage(boat, {
    html: poolsidePage(made, { ...rest, meshes: read.flat() }),
    kind: 'poolside',
    title: 'Save the poolside page',
    said: name => `The poolside page is saved as ${name}. Copy it to the phone; it needs no network there.`,
    open: 'Look at it',
  });
}

/** A mesh file that cannot be read is left out: the page says of the boat what the editor says. */
async function meshBeside({ readFile }: PoolsideHost, boat: vscode.Uri, name: string) {
  const uri = vscode.Uri.joinPath(boat, '..', ...name.split('/')).toString();
  const file = await readFile({ uri, boatUri: boat.toString() });
  return file.status === 'read' ? [{ name, base64: base64Of(file.bytes) }] : [];
}
