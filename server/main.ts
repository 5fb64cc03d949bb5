/** Entry of the server in Node, on a desktop or a remote host. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { plainClock } from './clock.ts';
import { startServer } from './server.ts';
import { createBoatService } from './service.ts';

const connection = createConnection(ProposedFeatures.all);
startServer({ connection, clock: plainClock, service: createBoatService() });
