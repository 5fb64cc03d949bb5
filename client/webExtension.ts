/** Entry of the extension in a web editor: the server is a worker of the extension host. */
import * as vscode from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { clientOptions, startClient } from './startClient.ts';

/** What is used of the platform's worker; the whole DOM library would let Node code use the DOM unnoticed. */
declare class Worker {
  constructor(url: string, options: { readonly name: string });
  terminate(): void;
}

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const url = vscode.Uri.joinPath(context.extensionUri, 'dist', 'worker.js').toString(true);
  let running: Worker | undefined;
  // The transports and not the worker itself: the host's own kind of worker is no `instanceof Worker` to the client.
  const startWorker = async (): Promise<MessageTransports> => {
    running?.terminate();
    running = new Worker(url, { name: 'Trimwright' });
    return { reader: new BrowserMessageReader(running), writer: new BrowserMessageWriter(running) };
  };
  context.subscriptions.push({ dispose: () => running?.terminate() });
  const client = new LanguageClient('trimwright', 'Trimwright', startWorker, clientOptions(context));
  await startClient(context, client, null);
}
