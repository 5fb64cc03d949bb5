import type { Message, MessageStrategy } from 'vscode-languageserver';

type Sent = Message & { readonly method?: string; readonly params?: unknown };

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Nothing in the place of nothing said: `null` is what some editors write for it. */
const saidOf = (value: unknown): Readonly<Record<string, unknown>> =>
  isRecord(value) ? Object.fromEntries(Object.entries(value).filter(([, said]) => said !== null)) : {};

/**
 * Messages as they are meant, for the connection would fail on them before any handler is asked. Parameters that are null are
 * none: JSON-RPC knows no such parameters. An editor that says nothing of what it can do can do nothing besides.
 */
export const asMeant: MessageStrategy = {
  handleMessage(message, next) {
    const { params, ...bare } = message as Sent;
    if (bare.method === 'initialize') {
      const said = saidOf(params);
      next({ ...bare, params: { ...said, capabilities: saidOf(said.capabilities) } } as Message);
    } else next(params === null ? bare : message);
  },
};
