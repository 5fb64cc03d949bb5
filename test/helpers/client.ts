import { PassThrough } from 'node:stream';
import {
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import type { Clock } from '../../server/editor/clock.ts';
import { startServer } from '../../server/editor/languageServer.ts';
import type { ReadFileParams, SummaryParams } from '../../server/editor/protocol.ts';
import { summaryNotification } from '../../server/editor/protocol.ts';
import type { Fetched } from '../../server/service/meshes.ts';
import { type BoatService, createBoatService } from '../../server/service/service.ts';

/** What the server published of a file. */
interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly Diagnostic[];
}

/** A clock whose timers wait for the test; those without a delay run by themselves, soon. */
interface SteppedClock extends Clock {
  /** Lets time go by: every timer that is due runs. */
  step(milliseconds: number): void;
  /** Time that goes by while something runs. */
  spend(milliseconds: number): void;
  readonly waiting: number;
  /** Nothing runs any more. */
  stop(): void;
}

function steppedClock(): SteppedClock {
  const timers = new Map<number, { readonly run: () => void; readonly due: number }>();
  let now = 0;
  let last = 0;
  let isStopped = false;
  return {
    after(milliseconds, run) {
      if (milliseconds === 0) {
        const soon = setTimeout(() => isStopped || run(), 0);
        return () => clearTimeout(soon);
      }
      last += 1;
      const timer = last;
      timers.set(timer, { run, due: now + milliseconds });
      return () => void timers.delete(timer);
    },
    step(milliseconds) {
      now += milliseconds;
      for (const [timer, { run, due }] of [...timers]) {
        if (due > now) continue;
        timers.delete(timer);
        run();
      }
    },
    now: () => now,
    spend(milliseconds) {
      now += milliseconds;
    },
    get waiting() {
      return timers.size;
    },
    stop() {
      isStopped = true;
    },
  };
}

/** An editor's end of the wire, with the real server at the other, in one process. */
export interface Session {
  readonly connection: ProtocolConnection;
  readonly clock: SteppedClock;
  readonly initialized: InitializeResult;
  readonly published: readonly Published[];
  readonly summaries: readonly SummaryParams[];
  readonly logged: readonly string[];
  open(uri: string, text: string): Promise<void>;
  /** The whole text anew, as the given version. */
  change(uri: string, version: number, text: string): Promise<void>;
  close(uri: string): Promise<void>;
  /** Waits until all that was sent has been taken in. */
  settle(): Promise<void>;
  end(): void;
}

export interface SessionOptions {
  /** The editor checks versions of edits; it does unless told otherwise. */
  readonly documentChanges?: boolean;
  readonly service?: BoatService;
  /** The extension's own editor; it is unless told otherwise. */
  readonly isExtension?: boolean;
  /** Reads files for an editor that is not. */
  readonly readFile?: (asked: ReadFileParams) => Fetched;
  /** The editor says that it can be asked to draw its marks anew and to watch files, and then answers with an error. */
  readonly refuses?: boolean;
  /** What an analysis takes by the clock, ms; nothing unless told otherwise. */
  readonly cost?: number;
}

export async function startSession(options: SessionOptions = {}): Promise<Session> {
  const { documentChanges = true, isExtension = true, service: given = createBoatService(), cost = 0 } = options;
  const refused = {
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
  };
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const clock = steppedClock();
  const wire = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toClient));
  const service: BoatService = {
    ...given,
    conclude: (...asked) => {
      clock.spend(cost);
      return given.conclude(...asked);
    },
  };
  startServer({ connection: wire, clock, service, readFile: options.readFile ?? null });
  const connection = createProtocolConnection(new StreamMessageReader(toClient), new StreamMessageWriter(toServer));
  const published: Published[] = [];
  const summaries: SummaryParams[] = [];
  const logged: string[] = [];
  connection.onNotification('textDocument/publishDiagnostics', (sent: Published) => void published.push(sent));
  connection.onNotification(summaryNotification, (sent: SummaryParams) => void summaries.push(sent));
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => void logged.push(message));
  connection.listen();
  const initialized = await connection.sendRequest<InitializeResult>('initialize', {
    processId: null,
    rootUri: null,
    capabilities: { workspace: { workspaceEdit: { documentChanges }, ...(options.refuses && refused) } },
    initializationOptions: isExtension ? { isExtension } : undefined,
  });
  await connection.sendNotification('initialized', {});
  const settle = async (): Promise<void> => {
    // Messages are taken in order: once this one is answered, those before it have been.
    await connection.sendRequest('trimwright/newBoat', { name: 'settle' });
  };
  return {
    connection,
    clock,
    initialized,
    published,
    summaries,
    logged,
    open: (uri, text) =>
      connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri, languageId: 'boat', version: 1, text },
      }),
    change: (uri, version, text) =>
      connection.sendNotification('textDocument/didChange', {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      }),
    close: uri => connection.sendNotification('textDocument/didClose', { textDocument: { uri } }),
    settle,
    end: () => {
      clock.stop();
      connection.dispose();
      toServer.end();
      toClient.end();
    },
  };
}
