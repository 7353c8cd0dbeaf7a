const { TestEnvironment } = require("jest-environment-node");

/** A mutant is found by the first test that fails: those after it are skipped. `together.ts` learns which tests were asked for. */
module.exports = class extends TestEnvironment {
  #failed = false;

  constructor(config, context) {
    super(config, context);
    this.global.testsAskedFor = config.globalConfig.testNamePattern;
  }

  async handleTestEvent(event) {
    if (event.name === "test_start" && this.#failed) event.test.mode = "skip";
    if (event.name === "test_done" && event.test.errors.length > 0) this.#failed = true;
  }
};
