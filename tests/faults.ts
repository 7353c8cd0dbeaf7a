import { faults } from "../addin/boundary/faults";

/** A fault of a function fails the test that meets it, with the function's own stack. */
faults.report = (_name, error) => {
  throw error;
};
