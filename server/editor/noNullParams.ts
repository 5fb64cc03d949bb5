import type { MessageStrategy } from 'vscode-languageserver';

/**
 * Parameters that are null are none: JSON-RPC knows no such parameters, and the connection would fail on them before any
 * handler is asked.
 */
export const noNullParams: MessageStrategy = {
  handleMessage(message, next) {
    const { params, ...bare } = message as typeof message & { readonly params?: unknown };
    next(params === null ? bare : message);
  },
};
