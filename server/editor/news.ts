import type { Connection, Diagnostic } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Summary } from '../service/service.ts';
import type { SummaryParams } from './protocol.ts';
import { sendOff } from './sendOff.ts';

/** What there is to say of a file. */
export interface Sayable {
  readonly diagnostics: readonly Diagnostic[];
  readonly summary: Summary;
}

export interface NewsHost {
  readonly connection: Connection;
  /** Tells the editor in one line how the boat lies; where it cannot show that, nothing. */
  readonly summarise: (summary: SummaryParams) => void;
}

/** Sends the editor what is new in what is said of its files: the same is not sent twice. */
export interface News {
  send(document: TextDocument, said: Sayable): void;
  close(uri: string): void;
}

interface Told {
  readonly version: number;
  readonly diagnostics: string;
  readonly summary: string;
}

export function createNews({ connection, summarise }: NewsHost): News {
  const told = new Map<string, Told>();
  return {
    send({ uri, version }, said) {
      const now: Told = {
        version,
        diagnostics: JSON.stringify(said.diagnostics),
        summary: JSON.stringify(said.summary),
      };
      const before = told.get(uri);
      told.set(uri, now);
      if (!before || before.version !== version || before.diagnostics !== now.diagnostics)
        void sendOff(() => connection.sendDiagnostics({ uri, version, diagnostics: [...said.diagnostics] }));
      if (before && before.version === version && before.summary === now.summary) return;
      summarise({ uri, ...said.summary });
    },
    close(uri) {
      told.delete(uri);
      void sendOff(() => connection.sendDiagnostics({ uri, diagnostics: [] }));
    },
  };
}
