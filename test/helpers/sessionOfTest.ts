import { onTestFinished } from 'vitest';
import { type Session, type SessionOptions, startSession } from './client.ts';

/** A session that ends with the test that began it. */
export async function sessionOfTest(options?: SessionOptions): Promise<Session> {
  const session = await startSession(options);
  onTestFinished(() => session.end());
  return session;
}
