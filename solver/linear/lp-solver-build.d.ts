// What the project uses of the library's browser build: its main entry would load node modules that solver/ has no use for.
declare module '*/javascript-lp-solver/dist/index.browser.mjs' {
  interface Model {
    readonly optimize: string;
    readonly opType: 'max' | 'min';
    readonly constraints: Record<string, { min?: number; max?: number }>;
    readonly variables: Record<string, Record<string, number>>;
    readonly ints?: Record<string, 1>;
    readonly options?: { readonly timeout?: number; readonly exitOnCycles?: boolean };
  }
  const solver: { Solve(model: Model): Record<string, number | boolean | undefined> };
  export { solver as default };
}
