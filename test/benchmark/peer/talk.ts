import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { inPieces } from '../../../client/filePieces.ts';
import { type ReadFileResult, readFileRequest } from '../../../server/editor/protocol.ts';

/** A language server to be measured. */
export interface Contender {
  readonly name: 'ours' | 'theirs';
  readonly script: string;
  readonly languageId: string;
  /** What Node is told beside the script, and in what surroundings it runs. */
  readonly started: { readonly execArgv: readonly string[]; readonly env: NodeJS.ProcessEnv };
}

/** What a process has used so far. */
interface Use {
  /** ms */
  readonly processor: number;
  /** Resident set, bytes. */
  readonly memory: number;
}

/** For how long a process was held at a time. */
export interface Wait {
  /** By the clock, ms. */
  readonly clock: number;
  /** By the clock but for the time in which its main thread could have run and others had the processors, ms. */
  readonly own: number;
  /** Of its main thread's processor time, ms: what others do on the machine is not in it. */
  readonly processor: number;
}

/** The editor's end of a server in a process of its own. */
export interface Talk {
  readonly connection: ProtocolConnection;
  /** From the start of the process to the answer to `initialize`, ms. */
  readonly initialized: number;
  /** From the start of the process, ms. */
  readonly sinceStart: () => number;
  /** The next diagnostics that are sent. */
  readonly diagnostics: () => Promise<void>;
  /** The next that find anything. */
  readonly findings: () => Promise<void>;
  readonly open: (uri: string, text: string) => void;
  /** What it has used once it has come to rest: `little`, what it then still does between two looks, ms. */
  readonly atRest: (little?: number) => Promise<Use>;
  /** The longest since it was last asked for; the first time begins it. */
  readonly longestWait: () => Promise<Wait>;
  readonly end: () => void;
}

/** Between two looks at a process, ms; when it has done next to nothing thrice, it rests: ours waits for a pause in the typing. */
const LOOK = 100;
const NEXT_TO_NOTHING = 0.7;

const schema = pathToFileURL(resolve('schema/boat.schema.json')).href;
const settings = { schemas: { [schema]: '*.boat.yaml' }, validate: true, hover: true, completion: true };

/** Starts a server and says hello. `mesh` is what any mesh file that it asks for holds. */
export async function startTalk({ script, languageId, started }: Contender, mesh?: Uint8Array): Promise<Talk> {
  const start = performance.now();
  const child = spawn(
    process.execPath,
    [...started.execArgv, '--require', resolve('test/benchmark/peer/probe.cjs'), script, '--stdio'],
    { stdio: ['pipe', 'pipe', 'inherit', 'ipc'], env: { ...process.env, ...started.env } },
  );
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout!),
    new StreamMessageWriter(child.stdin!),
  );
  let heard: (count: number) => void = () => {};
  connection.onNotification('textDocument/publishDiagnostics', ({ diagnostics }) => heard(diagnostics.length));
  const next = (isIt: (count: number) => boolean): Promise<void> =>
    new Promise(resolved => {
      heard = count => {
        if (isIt(count)) resolved();
      };
    });
  const handOut = inPieces(async () => (mesh ? { status: 'read', bytes: mesh } : { status: 'missing' }));
  connection.onRequest<ReadFileResult, void>(readFileRequest, handOut);
  connection.onRequest(
    'workspace/configuration',
    ({ items }: { readonly items: readonly { readonly section: string }[] }) =>
      items.map(({ section }) => (section === 'yaml' ? settings : {})),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: {},
    initializationOptions: { isExtension: true },
  });
  const initialized = performance.now() - start;
  void connection.sendNotification('initialized', {});
  void connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
  return {
    connection,
    initialized,
    sinceStart: () => performance.now() - start,
    diagnostics: () => next(() => true),
    findings: () => next(count => count > 0),
    open: (uri, text) =>
      void connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri, languageId, version: 1, text },
      }),
    atRest: little => atRest(child, little),
    longestWait: () => answerOf<Wait>(child, 'wait'),
    end: () => {
      connection.dispose();
      child.kill();
    },
  };
}

const answerOf = <T>(child: ChildProcess, question: 'use' | 'wait'): Promise<T> =>
  new Promise(resolve => {
    child.once('message', answer => resolve(answer as T));
    child.send(question);
  });

async function atRest(child: ChildProcess, little = NEXT_TO_NOTHING): Promise<Use> {
  let last = await answerOf<Use>(child, 'use');
  for (let quiet = 0; quiet < 3; ) {
    await new Promise(resolved => setTimeout(resolved, LOOK));
    const now = await answerOf<Use>(child, 'use');
    quiet = now.processor - last.processor < little ? quiet + 1 : 0;
    last = now;
  }
  return last;
}
