import {
  type Connection,
  createConnection,
  type MessageStrategy,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

/**
 * A connection over standard input and output. Where a message has a header that cannot be read there is no telling where the
 * next one begins: rather than hear nothing for ever the server ends, and the editor starts another. A body that is no JSON is
 * passed over, for its length is known.
 */
export function connectOverStdio(messageStrategy: MessageStrategy): Connection {
  let hasLeft = false;
  const listening: MessageStrategy = {
    handleMessage(message, next) {
      if ((message as { readonly method?: string }).method === 'shutdown') hasLeft = true;
      messageStrategy.handleMessage(message, next);
    },
  };
  const { stdin, stdout, stderr } = process;
  const reader = new StreamMessageReader(stdin);
  reader.onError(problem => {
    if (problem instanceof SyntaxError) return;
    stderr.write('What came over standard input has no header of the language server protocol. The server ends.\n');
    process.exit(1);
  });
  for (const over of ['end', 'close']) stdin.on(over, () => process.exit(hasLeft ? 0 : 1));
  return createConnection(ProposedFeatures.all, reader, new StreamMessageWriter(stdout), {
    messageStrategy: listening,
  });
}
