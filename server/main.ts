/** Entry of the server in Node, on a desktop or a remote host. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { plainClock } from './editor/clock.ts';
import { startServer } from './editor/languageServer.ts';
import { createBoatService } from './service/service.ts';

const connection = createConnection(ProposedFeatures.all);
startServer({ connection, clock: plainClock, service: createBoatService() });
