// The README's settings for nginx, as they stand there: nginx is started with them on loopback, and
// what it answers is held against the headers and files of `dist/`.
import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openBrowser, temporaryFolder } from "../e2e/site.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const dist = join(root, "dist");
const program = process.argv[2] ?? "/usr/sbin/nginx";
let passed = 0, failed = 0;
function hold(what, holds, found = "") {
  if (holds) passed += 1; else failed += 1;
  console.log(`${holds ? "ok" : "not ok"} - ${what}${holds ? "" : `: found ${found}`}`);
}

const port = await new Promise((done) => {
  const server = createServer().listen(0, "127.0.0.1", () => { const { port } = server.address(); server.close(() => done(port)); });
});
const block = /```nginx\n([\s\S]*?)```/.exec(readFileSync(join(root, "README.md"), "utf8"))[1];
const folder = temporaryFolder();
for (const name of ["body", "proxy", "fastcgi", "uwsgi", "scgi"]) mkdirSync(join(folder, name));
writeFileSync(join(folder, "nginx.conf"), `
daemon off; pid ${folder}/nginx.pid; error_log ${folder}/error.log; worker_processes 1;
${process.getuid() === 0 ? "user root;" : ""}
events {}
http {
include /etc/nginx/mime.types; access_log off; client_body_temp_path ${folder}/body; proxy_temp_path ${folder}/proxy;
fastcgi_temp_path ${folder}/fastcgi; uwsgi_temp_path ${folder}/uwsgi; scgi_temp_path ${folder}/scgi;
${block.replace("listen 80;", `listen 127.0.0.1:${port};`).replace("/srv/shimwright", dist)}
}`);
execFileSync(program, ["-t", "-q", "-c", join(folder, "nginx.conf")], { stdio: "inherit" });
const server = spawn(program, ["-c", join(folder, "nginx.conf")], { stdio: "inherit" });
process.on("exit", () => server.kill());
const url = `http://127.0.0.1:${port}`;
// It listens a moment after it has started.
for (let up = false; !up;) up = await fetch(url).then(() => true, () => server.exitCode !== null);

/** The headers that `_headers` gives to a path. */
function wanted(path) {
  const headers = new Map();
  let applies = false;
  for (const line of readFileSync(join(dist, "_headers"), "utf8").split("\n")) {
    if (!line.startsWith(" ")) applies = line === "/*" || line === path;
    else if (applies) { const [name, ...value] = line.trim().split(": "); headers.set(name, value.join(": ")); }
  }
  return headers;
}

const paths = readFileSync(join(dist, "_headers"), "utf8").split("\n").filter((line) => line.startsWith("/") && line !== "/*");
for (const path of [...paths, "/manifest.webmanifest", "/licences.txt"]) {
  const answer = await fetch(url + path);
  hold(`${path} is there`, answer.status === 200, answer.status);
  for (const [name, value] of wanted(path)) hold(`${path} ${name}`, answer.headers.get(name) === value, answer.headers.get(name));
}
for (const [path, type] of [["/", "text/html"], ["/sw.js", "application/javascript"], ["/manifest.webmanifest", "application/manifest+json"],
  [paths.find((path) => path.endsWith(".wasm")), "application/wasm"]]) {
  const found = (await fetch(url + path)).headers.get("content-type");
  hold(`${path} is ${type}`, found?.split(";")[0] === type, found);
}
for (const [path, status] of [["/job/27/setup", 200], ["/code-0000/gone.wasm", 404], ["/_headers", 404]]) {
  const found = (await fetch(url + path)).status;
  hold(`${path} answers ${status}`, found === status, found);
}

// And the app itself: it starts, is kept, and opens again with the server gone.
const complaints = [];
const browser = await openBrowser(temporaryFolder());
const page = browser.pages()[0];
page.on("console", (message) => { if (["error", "warning"].includes(message.type())) complaints.push(message.text()); });
await page.goto(url);
await page.waitForFunction(() => "ready" in document.documentElement.dataset);
await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
server.kill();
await new Promise((done) => server.once("exit", done));
await page.goto(url);
await page.waitForFunction(() => "ready" in document.documentElement.dataset);
hold("the app opens with the server gone", true);
hold("nothing on the console", complaints.length === 0, complaints.join(" | "));
await browser.close();
console.log(`# pass ${passed}\n# fail ${failed}`);
process.exit(failed ? 1 : 0);
