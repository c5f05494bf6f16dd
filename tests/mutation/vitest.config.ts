import { defineConfig } from "vitest/config";

/** What judges src/core: its own tests, and those of the functions over it. No files, no pages. */
export default defineConfig({
  test: {
    include: [
      "tests/{core,published}/**/*.test.ts",
      "tests/functions/{cases,lot,sampling,placing,statement,adapter*}.test.ts",
    ],
    testTimeout: 60_000,
    setupFiles: ["tests/seed.ts"],
  },
});
