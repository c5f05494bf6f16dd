/** `npm start [-- --port 8080]`: builds the playground and serves it to this machine alone. */
import { createServer } from "node:http";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { buildPlayground } from "./playground.mjs";

const FIRST_PORT = 8085;
const LAST_PORT = 65535;

const port = readPort();
console.log("building the playground; the first time takes about a minute longer");
buildPlayground({ development: true });
const { default: sirv } = await import("sirv");
const folder = fileURLToPath(new URL("../dist/playground", import.meta.url));
const files = sirv(folder, { dev: true, etag: true });
listen(port);

function listen(/** @type {number} */ at) {
  const server = createServer((request, response) => {
    files(
      request,
      response,
      () => void response.writeHead(404).end("There is no such file here.\n"),
    );
  });
  server.once("error", (/** @type {NodeJS.ErrnoException} */ error) => {
    if (error.code !== "EADDRINUSE" || at === LAST_PORT) throw error;
    console.log(`port ${at} is taken: trying ${at + 1}`);
    listen(at + 1);
  });
  // Nobody else in the network is to see what is open here.
  server.listen(at, "127.0.0.1", () => {
    console.log(`The playground is at http://localhost:${at}/ (Ctrl+C ends it)`);
  });
}

function readPort() {
  try {
    const { values } = parseArgs({ options: { port: { type: "string" } } });
    const port = values.port === undefined ? FIRST_PORT : Number(values.port);
    if (!Number.isInteger(port) || port < 1 || port > LAST_PORT) {
      throw new Error(`--port ${values.port}: a whole number from 1 to ${LAST_PORT} was expected`);
    }
    return port;
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(2);
  }
}
