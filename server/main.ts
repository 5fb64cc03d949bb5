/** Entry of the server in Node: the extension's on a desktop or a remote host, and any other editor's with `--stdio`. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { asMeant } from './editor/asMeant.ts';
import { plainClock } from './editor/clock.ts';
import { startServer } from './editor/languageServer.ts';
import { connectOverStdio } from './overStdio.ts';
import { createBoatService } from './service/service.ts';
import { readByAddress } from './terminal/readByAddress.ts';

const connection = process.argv.includes('--stdio')
  ? connectOverStdio(asMeant)
  : createConnection(ProposedFeatures.all, { messageStrategy: asMeant });
startServer({ connection, clock: plainClock, service: createBoatService(), readFile: readByAddress });
