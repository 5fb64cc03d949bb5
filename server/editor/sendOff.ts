/**
 * Sends what nobody waits for. Whether the editor takes it is its own affair: one that answers with an error, or that has left,
 * would otherwise end the server.
 */
export async function sendOff(send: () => Promise<unknown>): Promise<void> {
  try {
    await send();
  } catch {
    // Nobody is there to be told.
  }
}
