/** Entry of the server in Node: the extension's on a desktop or a remote host, and any other editor's with `--stdio`. */
import { type Connection, createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { asMeant } from './editor/asMeant.ts';
import { plainClock } from './editor/clock.ts';
import { startServer } from './editor/languageServer.ts';
import { connectOverStdio } from './overStdio.ts';
import { createBoatService } from './service/service.ts';
import { readByAddress } from './terminal/readByAddress.ts';

/** What the editor's own client starts it with. */
const OTHER_WAYS = /^--(?:node-ipc$|socket|pipe)/;

function connect(): Connection | null {
  const given = process.argv.slice(2);
  if (given.includes('--stdio')) return connectOverStdio(asMeant);
  return given.some(each => OTHER_WAYS.test(each))
    ? createConnection(ProposedFeatures.all, { messageStrategy: asMeant })
    : null;
}

const connection = connect();
if (connection) startServer({ connection, clock: plainClock, service: createBoatService(), readFile: readByAddress });
else {
  process.stderr.write('This is the language server, for an editor to start: trimwright serve\n');
  process.exitCode = 2;
}
