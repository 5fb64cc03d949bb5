/** The core in a browser, as a worker: the language server, or what answers the poolside page where that says so. */
import './withoutEval.ts';
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { asMeant } from './editor/asMeant.ts';
import { plainClock } from './editor/clock.ts';
import { startServer } from './editor/languageServer.ts';
import { answerPoolside, type PoolScope } from './poolWorker.ts';
import { createBoatService } from './service/service.ts';

/** The worker's own scope; the whole DOM library would let other code use the DOM unnoticed. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0] & PoolScope;

if ('poolside' in self) answerPoolside(self);
else {
  const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self), {
    messageStrategy: asMeant,
  });
  startServer({ connection, clock: plainClock, service: createBoatService(), readFile: null });
}
