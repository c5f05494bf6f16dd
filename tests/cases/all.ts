import { cases as clock } from "./brood-clock-cases.js";
import { cases as strength, type Case } from "./cases.js";
import { cases as forecast } from "./forecast-cases.js";
import { cases as pay } from "./pay-cases.js";
import { cases as placing } from "./placing-cases.js";
import { cases as sampling } from "./sampling-cases.js";

/** Every case, in the order of the handbook. */
export const cases: readonly Case[] = [
  ...strength,
  ...clock,
  ...forecast,
  ...sampling,
  ...pay,
  ...placing,
];
