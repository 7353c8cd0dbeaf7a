const { TestEnvironment } = require("jest-environment-node");

/** A mutant is found by the first test that fails, so that those after it are skipped; and only the tests asked for are loaded. */
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
