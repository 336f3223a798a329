/**
 * Reads a PNG of eight bits a channel, not interlaced (PNG specification, third edition: IHDR, IDAT, PLTE, filter types).
 * Written for the tests of the icons; it refuses what it does not know.
 */
import { inflateSync } from "node:zlib";

export type Pixel = readonly [red: number, green: number, blue: number, alpha: number];

export interface Picture {
  readonly width: number;
  readonly height: number;
  at(x: number, y: number): Pixel;
}

const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

export function readPng(bytes: Buffer): Picture {
  if (bytes.toString("latin1", 1, 4) !== "PNG") throw new Error("no PNG");
  const chunks = chunksOf(bytes);
  const [header] = chunks.get("IHDR") ?? [];
  if (header === undefined) throw new Error("no header");
  const [width, height, depth, colour, interlaced] = [header.readUInt32BE(0), header.readUInt32BE(4), header[8], header[9], header[12]];
  const channels = CHANNELS[colour as number];
  if (depth !== 8 || channels === undefined || interlaced !== 0) throw new Error(`not read here: depth ${depth}, colour ${colour}`);
  const raw = unfiltered(inflateSync(Buffer.concat(chunks.get("IDAT") ?? [])), width * channels, height, channels);
  const palette = chunks.get("PLTE")?.[0];
  const at = (x: number, y: number): Pixel => pixel(raw, (y * width + x) * channels, channels, palette);
  return { width, height, at };
}

function chunksOf(bytes: Buffer): Map<string, Buffer[]> {
  const chunks = new Map<string, Buffer[]>();
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    const name = bytes.toString("latin1", at + 4, at + 8);
    chunks.set(name, [...(chunks.get(name) ?? []), bytes.subarray(at + 8, at + 8 + length)]);
    at += length + 12;
  }
  return chunks;
}

function unfiltered(data: Buffer, rowBytes: number, height: number, step: number): Buffer {
  const out = Buffer.alloc(rowBytes * height);
  for (let y = 0; y < height; y += 1) {
    const filter = data[y * (rowBytes + 1)] as number;
    for (let x = 0; x < rowBytes; x += 1) {
      const [a, b] = [x < step ? 0 : byte(out, y, x - step, rowBytes), y === 0 ? 0 : byte(out, y - 1, x, rowBytes)];
      const c = x < step || y === 0 ? 0 : byte(out, y - 1, x - step, rowBytes);
      out[y * rowBytes + x] = ((data[y * (rowBytes + 1) + 1 + x] as number) + guess(filter, a, b, c)) & 255;
    }
  }
  return out;
}

function byte(out: Buffer, y: number, x: number, rowBytes: number): number {
  return out[y * rowBytes + x] as number;
}

/** What a filter type foretells from the bytes to the left, above, and above left. */
function guess(filter: number, a: number, b: number, c: number): number {
  const [pa, pb, pc] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)];
  const paeth = pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
  const guessed = [0, a, b, (a + b) >> 1, paeth][filter];
  if (guessed === undefined) throw new Error(`filter ${filter}`);
  return guessed;
}

function pixel(raw: Buffer, at: number, channels: number, palette: Buffer | undefined): Pixel {
  const value = (channel: number): number => raw[at + channel] as number;
  if (palette) return [palette[value(0) * 3] as number, palette[value(0) * 3 + 1] as number, palette[value(0) * 3 + 2] as number, 255];
  if (channels < 3) return [value(0), value(0), value(0), channels === 2 ? value(1) : 255];
  return [value(0), value(1), value(2), channels === 4 ? value(3) : 255];
}
