import fc from "fast-check";

// The same examples on every run, so that a red test is a defect; `npm run soak` draws others.
fc.configureGlobal({ seed: Number(process.env.SEED ?? 20261125) });
