// What the linter asks for beyond the compiler: no way around the types, no dead code, no debugging left over.
import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';

export default ts.config(
  { ignores: ['node_modules/', '.data/', 'api/database/generated/', 'fixtures/**/*.py'] },
  js.configs.recommended,
  ...ts.configs.recommendedTypeChecked.map((config) => ({ ...config, files: ['**/*.ts'] })),
  ...svelte.configs.recommended,
  {
    languageOptions: {
      parserOptions: {
        projectService: true,
        tsconfigRootDir: fileURLToPath(new URL('..', import.meta.url)),
        extraFileExtensions: ['.svelte'],
      },
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
    rules: {
      // The rule of the same name that knows types stands below.
      'no-unused-vars': 'off',
      // Sets, maps and addresses that nothing on the screen follows are plain ones.
      'svelte/prefer-svelte-reactivity': 'off',
    },
  },
  {
    files: ['**/*.ts', '**/*.svelte'],
    plugins: { '@typescript-eslint': ts.plugin },
    rules: {
      // The compiler knows which names exist, in the browser and in Node.
      'no-undef': 'off',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/ban-ts-comment': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
    },
  },
  {
    // Yoga and Pothos take async functions where a promise may or may not be waited for.
    files: ['**/*.ts'],
    rules: { '@typescript-eslint/require-await': 'off' },
  },
  {
    // Numeric loops over typed arrays: the compiler cannot see that an index is within bounds, and a check would cost.
    files: ['api/science/**/*.ts', 'tests/science/**/*.ts', 'tests/bench/{exposure-day,plain}.ts'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // The test runner's matchers, `expect.stringMatching` and the like, are typed `any`.
    files: ['tests/**/*.ts'],
    rules: { '@typescript-eslint/no-unsafe-assignment': 'off' },
  },
  {
    files: ['**/*.js', '**/*.mjs'],
    ...ts.configs.disableTypeChecked,
    languageOptions: {
      globals: {
        process: 'readonly',
        URL: 'readonly',
        console: 'readonly',
        performance: 'readonly',
        setInterval: 'readonly',
        clearInterval: 'readonly',
      },
    },
  },
  {
    files: ['api/**/*.ts', 'admin/**/*'],
    rules: { 'no-restricted-syntax': ['error', { selector: 'TSEnumDeclaration', message: 'A union of words.' }] },
  },
);
