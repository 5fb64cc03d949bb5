import type { Readable } from 'node:stream';
import {
  type Connection,
  createConnection,
  type DataCallback,
  type Disposable,
  type MessageStrategy,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

/** A message that takes longer to come than this has a length that is none, ms. */
const LONGEST = 60_000;

/**
 * Reads messages from a stream. Where one has a header that cannot be read, or a length that never comes, there is no telling
 * where the next one begins: `lost` is called. A body that is no JSON is passed over, for its length is known; so is a message
 * that the connection fails over.
 */
export class HeededReader extends StreamMessageReader {
  private readonly stream: Readable;
  private readonly now: () => number;
  private readonly lost: () => void;
  /** When the first bytes came of a message that is not whole yet, ms. */
  private since: number | null = null;

  constructor(stream: Readable, { now, lost }: { readonly now: () => number; readonly lost: () => void }) {
    super(stream);
    this.stream = stream;
    this.now = now;
    this.lost = lost;
    this.onError(problem => {
      if (problem instanceof SyntaxError) this.since = null;
      else lost();
    });
  }

  override listen(callback: DataCallback): Disposable {
    this.stream.on('data', () => {
      this.since ??= this.now();
      if (this.now() - this.since > LONGEST) this.lost();
    });
    return super.listen(message => {
      this.since = null;
      try {
        callback(message);
      } catch {
        // A cancellation of nothing, say: nobody waits for an answer to it.
      }
    });
  }
}

/** A connection over standard input and output. Rather than hear nothing for ever the server ends, and the editor starts another. */
export function connectOverStdio(messageStrategy: MessageStrategy): Connection {
  let hasLeft = false;
  const listening: MessageStrategy = {
    handleMessage(message, next) {
      if ((message as { readonly method?: string }).method === 'shutdown') hasLeft = true;
      messageStrategy.handleMessage(message, next);
    },
  };
  const { stdin, stdout, stderr } = process;
  const reader = new HeededReader(stdin, {
    now: () => performance.now(),
    lost: () => {
      stderr.write('What came over standard input has no header of the language server protocol. The server ends.\n');
      process.exit(1);
    },
  });
  for (const over of ['end', 'close']) stdin.on(over, () => process.exit(hasLeft ? 0 : 1));
  return createConnection(ProposedFeatures.all, reader, new StreamMessageWriter(stdout), {
    messageStrategy: listening,
  });
}
