/** One step of a scenario: what it throws says which. */
export async function step(what: string, act: () => Promise<void>): Promise<void> {
  try {
    await act();
  } catch (error) {
    throw new Error(`${what}: ${error instanceof Error ? error.message : error}`, { cause: error });
  }
}
