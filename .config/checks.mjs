// The checks beside the tests, each a program and its arguments: what `npm run check`, `npm run lint` and CI run.
const sources = ['{api,admin,tests,fixtures,.config}/**/*.{ts,svelte,mjs,js,css}', '!api/database/generated/**'];

export const types = {
  tsc: ['node_modules/typescript/bin/tsc', '--noEmit', '-p', '.'],
  'svelte-check': [
    'node_modules/svelte-check/bin/svelte-check',
    ...['--tsconfig', './tsconfig.json', '--output', 'human', '--fail-on-warnings'],
  ],
};

export const style = {
  eslint: ['node_modules/eslint/bin/eslint.js', '-c', '.config/eslint.js', '--max-warnings', '0', '.'],
  prettier: [
    'node_modules/prettier/bin/prettier.cjs',
    ...['--config', '.config/prettier.json', '--log-level', 'warn', '--check', ...sources],
  ],
  knip: ['node_modules/knip/bin/knip.js', '-c', '.config/knip.json'],
};
