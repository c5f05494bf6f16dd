/** What the simulation takes of the core, in one import. */
export { tQuantile } from "../../src/core/distributions.js";
export { countLot } from "../../src/core/lot.js";
export { quickLook } from "../../src/core/quick-look.js";
export { lotAverage, lotChance } from "../../src/core/sampling.js";
export { standardContract } from "../../src/core/standards.js";
export { adultLoss } from "../../src/core/adult-loss.js";
export { emergence } from "../../src/core/emergence.js";
export { averageForecast, cohort, forecast } from "../../src/core/forecast.js";
export { serialOfDay } from "../../src/core/serial.js";
