// Lint rules: types are respected, promises are awaited, and the solver stays out of the world's reach.
import jsdoc from 'eslint-plugin-jsdoc';
import svelte from 'eslint-plugin-svelte';
import tseslint from 'typescript-eslint';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Folders that the solver may not import from, seen from any depth. */
const outside = [
  { regex: '(^|/)(app|renderer|tests)/', message: 'The solver knows nothing of who uses it.' },
  { regex: '^node:', message: 'The solver has no disk, no network, no clock.' },
  { regex: '^(?!\\.{1,2}/|valibot$)', message: 'The solver imports only valibot from outside.' },
];

export default tseslint.config(
  { ignores: ['.out/', 'node_modules/'] },
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommendedTypeChecked],
    plugins: { jsdoc },
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // A number that indexes an array of known length is asserted where the compiler cannot see it.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'Exports have names.' },
        { selector: 'ExportAllDeclaration', message: 'No barrel files.' },
      ],
      'jsdoc/check-alignment': 'error',
      'jsdoc/check-param-names': ['error', { checkDestructured: false, disableMissingParamChecks: true }],
      'jsdoc/check-tag-names': ['error', { definedTags: ['source'] }],
      'jsdoc/no-types': 'error',
    },
  },
  {
    files: ['solver/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...['Date', 'performance', 'process', 'fetch', 'setTimeout', 'setInterval', 'crypto', 'console'].map(
          (name) => ({
            name,
            message: 'What the solver needs from outside is handed in.',
          }),
        ),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Chance is seeded and handed in.' },
      ],
      'no-restricted-imports': ['error', { patterns: outside }],
    },
  },
  {
    files: ['tests/**/*.ts'],
    // Methods of spies and of libraries' objects are handed around.
    rules: { '@typescript-eslint/unbound-method': 'off' },
  },
  {
    // Configurations are exported as their tools ask for them.
    files: ['electron.config.ts', 'tests/vitest.config.ts', '.config/**/*.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  {
    files: ['**/*.svelte'],
    extends: [svelte.configs.recommended],
    languageOptions: { parserOptions: { parser: tseslint.parser } },
  },
);
