/** What the simulation takes of the core, in one import. */
export { tQuantile } from "../../src/core/distributions.js";
export { countLot } from "../../src/core/lot.js";
export { quickLook } from "../../src/core/quick-look.js";
export { lotAverage, lotChance } from "../../src/core/sampling.js";
export { standardContract } from "../../src/core/standards.js";
