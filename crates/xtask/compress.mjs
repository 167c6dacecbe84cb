// Writes FILE.br and FILE.gz beside every file of a folder that gets smaller by it.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const folder = process.argv[2];
const small = /\.(html|js|css|wasm|json|webmanifest|jsonl|svg|txt)$/;
for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
  if (!entry.isFile() || !small.test(entry.name)) continue;
  const path = join(entry.parentPath ?? entry.path, entry.name);
  const plain = readFileSync(path);
  const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: plain.length };
  for (const [ending, packed] of [["br", brotliCompressSync(plain, { params })], ["gz", gzipSync(plain, { level: 9 })]]) {
    if (packed.length < plain.length) writeFileSync(`${path}.${ending}`, packed);
  }
}
