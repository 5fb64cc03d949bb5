/** Entry of the server in Node, on a desktop or a remote host. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { startServer } from './server.ts';

startServer(createConnection(ProposedFeatures.all), globalThis);
