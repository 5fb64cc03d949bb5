/**
 * Nothing is exported that nobody imports, and no code of the program serves the tests alone: an export that only tests
 * import is used in its own file (asked by `--production`).
 */
export default ({ production }: { readonly production?: boolean }) => ({
  entry: [
    'client/{extension,webExtension,panel/panel}.ts!',
    'client/poolside/poolside.ts!',
    'server/{main,worker,cli}.ts!',
    'client/launch/{start,prepare}.mjs!',
    'test/{accuracy/print,coverage/print,benchmark/*,builder/print,fuzz/print,slips/print}.ts',
  ],
  project: [
    '{client,server,schema}/**/*.{ts,mjs}!',
    '!client/{launch/licences,poolside/bundle}.mjs!',
    'test/**/*.{ts,mjs}',
    '*.mjs!',
  ],
  vitest: { config: ['vitest*.config.mts', 'test/editor/vitest.config.mts'] },
  ignoreExportsUsedInFile: production === true,
});
