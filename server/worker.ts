/** Entry of the server in a browser, as a worker. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { plainClock } from './editor/clock.ts';
import { startServer } from './editor/languageServer.ts';
import { createBoatService } from './editor/service.ts';

/** The worker's own scope; the whole DOM library would let other code use the DOM unnoticed. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));
startServer({ connection, clock: plainClock, service: createBoatService(), readFile: null });
