// Reads what a PDF made by the browser's own print says: its pages, their sizes, their text.
// The objects used are those of ISO 32000-1: streams (7.3.8), pages (7.7.3), ToUnicode maps (9.10.3).
import { inflateSync } from "node:zlib";

/** The pages of a PDF in order: width and height in points, and the text without blanks. */
export function pages(bytes) {
  const objects = new Map();
  for (const [, number, body] of bytes.toString("latin1").matchAll(/(\d+) 0 obj\s([\s\S]*?)endobj/g)) objects.set(number, body);
  const stream = (number) => {
    const [, head, body] = /([\s\S]*?)stream\r?\n([\s\S]*?)\r?\nendstream/.exec(objects.get(number));
    const data = Buffer.from(body, "latin1");
    return (head.includes("/FlateDecode") ? inflateSync(data) : data).toString("latin1");
  };
  const letters = (hex) => Buffer.from(hex, "hex").swap16().toString("utf16le");
  /** Which letters each glyph of a font stands for. */
  const map = (font) => {
    const found = new Map();
    const text = stream(/\/ToUnicode (\d+) 0 R/.exec(objects.get(font))[1]);
    for (const [, lines] of text.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
      for (const [, glyph, unicode] of lines.matchAll(/<(\w+)>\s*<(\w+)>/g)) found.set(parseInt(glyph, 16), letters(unicode));
    }
    for (const [, lines] of text.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
      for (const [, from, to, unicode] of lines.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
        for (let glyph = parseInt(from, 16); glyph <= parseInt(to, 16); glyph += 1) {
          found.set(glyph, String.fromCodePoint(parseInt(unicode, 16) + glyph - parseInt(from, 16)));
        }
      }
    }
    return found;
  };
  const isPage = (body) => /\/Type\s*\/Page\b/.test(body);
  return [...objects.values()].filter(isPage).map((page) => {
    const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(page).map(Number);
    const fonts = new Map([...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name, font]) => [name, map(font)]));
    let text = "", font;
    for (const [, name, glyphs] of stream(/\/Contents (\d+) 0 R/.exec(page)[1]).matchAll(/\/(F\d+) [\d.]+ Tf|<([\da-fA-F]+)>/g)) {
      if (name) font = fonts.get(name);
      else for (const glyph of glyphs.match(/.{4}/g) ?? []) text += font?.get(parseInt(glyph, 16)) ?? "";
    }
    return { width, height, text: text.replace(/\s+/g, "") };
  });
}
