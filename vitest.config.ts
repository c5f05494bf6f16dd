import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    // A slow machine is no fault of the code: no test is timed.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: "100%",
    setupFiles: ["tests/seed.ts"],
  },
});
