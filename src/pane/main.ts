import { associateAll } from "../functions/excel.js";
import { open } from "./open.js";

associateAll();
// A runtime without a page runs the functions alone.
if (typeof document !== "undefined") void open(document.getElementById("pane")!);
