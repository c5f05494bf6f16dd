import { run } from "./program.js";

// Whoever reads the output may stop early, as `head` does: that is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  width: process.stdout.columns ?? 80,
  watched: process.stderr.isTTY ?? false,
});
