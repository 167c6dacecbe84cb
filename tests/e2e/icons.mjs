// Draws the PNG icons from their SVG, with a palette so that they stay small.
// Run by `cargo xtask icons`; the pictures are committed.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import { chromium } from "playwright-core";

const folder = fileURLToPath(new URL("../../public/icons/", import.meta.url));
const pictures = [
  ["icon.svg", "icon-192.png", 192],
  ["icon.svg", "icon-512.png", 512],
  ["maskable.svg", "maskable-192.png", 192],
  ["maskable.svg", "maskable-512.png", 512],
  ["maskable.svg", "apple-touch-180.png", 180],
];

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM, args: ["--no-sandbox"] });
const page = await browser.newPage();
for (const [from, to, size] of pictures) {
  const bytes = encode(await page.evaluate(draw, [readFileSync(folder + from, "utf8"), size]), size);
  writeFileSync(folder + to, bytes);
  console.log(`${to}: ${bytes.length} bytes`);
}
await browser.close();

async function draw([svg, size]) {
  const image = new Image(size, size);
  image.src = `data:image/svg+xml,${encodeURIComponent(svg.replace("<svg ", `<svg width="${size}" height="${size}" `))}`;
  await image.decode();
  const canvas = new OffscreenCanvas(size, size).getContext("2d");
  canvas.drawImage(image, 0, 0);
  return [...canvas.getImageData(0, 0, size, size).data];
}

// PNG, third edition: colour type 3, eight bits, no filter.
function encode(rgba, size) {
  // Soft edges keep sixteen steps a channel; the flat colours, which are many pixels, stay exact.
  const counts = new Map();
  const colourAt = (at) => rgba.slice(at * 4, at * 4 + 4);
  for (let at = 0; at < size * size; at += 1) {
    const key = String(colourAt(at));
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const palette = new Map();
  const rows = [];
  for (let at = 0; at < size * size; at += 1) {
    if (at % size === 0) rows.push(0);
    const colour = colourAt(at);
    const key = String(counts.get(String(colour)) > size ? colour : colour.map((value) => Math.round(value / 17) * 17));
    if (!palette.has(key)) palette.set(key, palette.size);
    rows.push(palette.get(key));
  }
  if (palette.size > 256) throw new Error(`${palette.size} colours do not fit a palette; draw with fewer`);
  const colours = [...palette.keys()].map((key) => key.split(",").map(Number));
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk("IHDR", header),
    chunk("PLTE", Buffer.from(colours.flatMap((colour) => colour.slice(0, 3)))),
    chunk("tRNS", Buffer.from(colours.map((colour) => colour[3]))),
    chunk("IDAT", deflateSync(Buffer.from(rows), { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

function crc32(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit += 1) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  }
  return ~rest >>> 0;
}
