/** What both entries share: options of the language client, the views beside the text, the commands. */
import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import {
  type ReadFileResult,
  readFileRequest,
  type StartOptions,
  type SummaryParams,
  summaryNotification,
} from '../server/editor/protocol.ts';
import { activeBoat } from './activeBoat.ts';
import { boatLanguage } from './boatLanguage.ts';
import { inPieces } from './filePieces.ts';
import { createFileReader, type RealPath } from './fileReader.ts';
import { openNewBoat } from './newBoat.ts';
import { insertNewTrial } from './newTrial.ts';
import { writePoolsidePage } from './poolsidePage.ts';
import { printSheet } from './printSheet.ts';
import { createReportView } from './reportView.ts';
import { createSheetPanel } from './sheetPanel.ts';
import { createSummaryBar } from './summaryBar.ts';
import { takePoolsideTrials } from './takeTrials.ts';
import { unpackPage } from './unpackPage.ts';

export function clientOptions({ extensionUri }: vscode.ExtensionContext): LanguageClientOptions {
  const start: StartOptions = {
    isExtension: true,
    reference: vscode.Uri.joinPath(extensionUri, 'schema', 'REFERENCE.md').toString(),
  };
  return {
    initializationOptions: start,
    documentSelector: [{ language: boatLanguage }],
    synchronize: {
      configurationSection: 'trimwright',
      fileEvents: vscode.workspace.createFileSystemWatcher('**/*.{stl,3mf}'),
    },
    diagnosticCollectionName: 'trimwright',
  };
}

/** Starts `client` and everything that shows what it hears; all of it ends with the extension. */
export async function startClient(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
  realPath: RealPath,
): Promise<void> {
  const summaryBar = createSummaryBar('trimwright.report');
  const reports = createReportView(client);
  const print = (boat: vscode.Uri | null): Promise<void> => printSheet(client, boat);
  const readFile = createFileReader(realPath);
  const poolside = { client, extension: context.extensionUri, readFile };
  const sheets = createSheetPanel({ client, extension: context.extensionUri, print });
  context.subscriptions.push(
    summaryBar,
    reports,
    sheets,
    client,
    client.onRequest<ReadFileResult, void>(readFileRequest, inPieces(readFile)),
    client.onNotification(summaryNotification, (summary: SummaryParams) => {
      summaryBar.show(summary);
      reports.refresh(summary.uri);
      sheets.refresh(summary.uri);
    }),
    vscode.commands.registerCommand('trimwright.newBoat', () => openNewBoat(client)),
    vscode.commands.registerCommand('trimwright.openSheet', (uri?: unknown) =>
      sheets.open(typeof uri === 'string' ? uri : undefined),
    ),
    vscode.commands.registerCommand('trimwright.printSheet', () => print(activeBoat() ?? sheets.boat())),
    vscode.commands.registerCommand('trimwright.unpackPage', () => unpackPage(client)),
    vscode.commands.registerCommand('trimwright.newTrial', () => insertNewTrial(client)),
    vscode.commands.registerCommand('trimwright.poolside', () =>
      writePoolsidePage(poolside, activeBoat() ?? sheets.boat()),
    ),
    vscode.commands.registerCommand('trimwright.takeTrials', () => takePoolsideTrials(client)),
    vscode.commands.registerCommand('trimwright.report', () => reports.openForActiveEditor()),
    vscode.commands.registerCommand('trimwright.restart', () => restart(client)),
  );
  await client.start();
}

/** A hung server makes `stop` fail after its time limit; a new one is started all the same. */
async function restart(client: BaseLanguageClient): Promise<void> {
  try {
    if (client.isRunning()) {
      await client.stop();
    }
  } finally {
    await client.start();
  }
}
