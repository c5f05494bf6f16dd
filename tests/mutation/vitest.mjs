/** What a test imports from vitest, for runner.mjs: the same parts without vitest's workers. */
import {
  chai,
  customMatchers,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from "@vitest/expect";

export { describe, it } from "@vitest/runner";

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
export const { expect } = /** @type {any} */ (chai);
Object.defineProperty(globalThis, GLOBAL_EXPECT, { value: expect });
expect.extend(expect, customMatchers);
setState({ assertionCalls: 0 }, expect);
