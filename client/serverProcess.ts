/** How Node starts the server, and in what surroundings. */
export const SERVER_PROCESS = {
  /** Room for new values of 4 MB (V8’s semi-space). Left to itself it takes some 25 MB more and saves no time by it. */
  execArgv: ['--max-semi-space-size=4'],
  /**
   * Lists of 128 kB and more go back to the system when they are done with. Left to itself the C library of Linux (mallopt(3))
   * holds on to them, up to twice the memory where a mesh or a faired hull was tried many times; other systems have their own.
   */
  env: { MALLOC_MMAP_THRESHOLD_: '131072' },
} as const;
