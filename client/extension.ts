/** Entry of the extension in a desktop editor or on a remote host: the server is a Node process of its own. */
import { realpath } from 'node:fs/promises';
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { SERVER_PROCESS } from './serverProcess.ts';
import { clientOptions, startClient } from './startClient.ts';

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
  const options = clientOptions(context);
  const { execArgv, env } = SERVER_PROCESS;
  const client = new LanguageClient(
    'trimwright',
    'Trimwright',
    {
      run: { module, transport: TransportKind.ipc, options: { execArgv: [...execArgv], env } },
      debug: {
        module,
        transport: TransportKind.ipc,
        options: { execArgv: [...execArgv, '--nolazy', '--inspect=0'], env },
      },
    },
    options,
  );
  await startClient(context, client, path => realpath(path));
}
