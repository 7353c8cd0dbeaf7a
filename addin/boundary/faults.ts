/**
 * Where a fault of a function goes. Its cell can only say that there was one: the error itself goes to the console, in
 * tests to whoever runs them.
 */
export const faults = {
  report(name: string, error: unknown): void {
    console.error(`${name}:`, error);
  },
};
