// Several files as one to download, and back: a ZIP archive, stored and not compressed (PKWARE APPNOTE 6.3.10).
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const LOCAL = 0x04034b50,
    CENTRAL = 0x02014b50,
    END = 0x06054b50,
    LARGEST = 512 * 1024 * 1024, // of one file inside; a page is a hundredth of that
    UTF8 = 0x0800;
  const MOST = 0xffffffff;

  const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
    for (let k = 0; k < 8; k += 1) n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
    return n;
  });

  /** CRC-32 (ISO 3309) of bytes. */
  function crc32(bytes) {
    let crc = 0xffffffff;
    for (let i = 0; i < bytes.length; i += 1) crc = TABLE[(crc ^ bytes[i]) & 255] ^ (crc >>> 8);
    return (crc ^ 0xffffffff) >>> 0;
  }

  /** A record of the format: pairs of [size in bytes, value]. */
  function record(...fields) {
    const bytes = new Uint8Array(fields.reduce((sum, [size]) => sum + size, 0)),
      view = new DataView(bytes.buffer);
    let at = 0;
    for (const [size, value] of fields) {
      if (size === 2) view.setUint16(at, value, true);
      else view.setUint32(at, value, true);
      at += size;
    }
    return bytes;
  }

  /** Parts of an archive, for a Blob. `files`: [{name, bytes: Uint8Array}]. Dates are left at the format's first day. */
  function zip(files) {
    const parts = [],
      directory = [];
    let offset = 0;
    for (const { name, bytes } of files) {
      const called = new TextEncoder().encode(name);
      const shared = [[2, 20], [2, UTF8], [2, 0], [2, 0], [2, 0x21], [4, crc32(bytes)], [4, bytes.length], [4, bytes.length], [2, called.length], [2, 0]];
      const head = record([4, LOCAL], ...shared);
      directory.push(record([4, CENTRAL], [2, 20], ...shared, [2, 0], [2, 0], [2, 0], [4, 0], [4, offset]), called);
      parts.push(head, called, bytes);
      offset += head.length + called.length + bytes.length;
      if (offset > MOST || files.length > 65535) throw new Error("More than 4 GB: too much for one file.");
    }
    const size = directory.reduce((sum, part) => sum + part.length, 0);
    return [...parts, ...directory, record([4, END], [2, 0], [2, 0], [2, files.length], [2, files.length], [4, size], [4, offset], [2, 0])];
  }

  /** The files of an archive: [{name, bytes}]. Throws where it is no archive, damaged, or packed in a way not known here. */
  async function unzip(bytes) {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    let end = bytes.length - 22;
    while (end >= 0 && view.getUint32(end, true) !== END) end -= 1;
    if (end < 0) throw new Error("This is no ZIP file, or it is cut short.");
    const files = [];
    let at = view.getUint32(end + 16, true);
    for (let left = view.getUint16(end + 10, true); left > 0; left -= 1) {
      if (view.getUint32(at, true) !== CENTRAL) throw new Error("This ZIP file is damaged.");
      const [method, packed, size] = [view.getUint16(at + 10, true), view.getUint32(at + 20, true), view.getUint32(at + 24, true)];
      const [called, extra, comment] = [28, 30, 32].map((shift) => view.getUint16(at + shift, true));
      const local = view.getUint32(at + 42, true),
        name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + called));
      const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
      const held = bytes.subarray(start, start + packed);
      at += 46 + called + extra + comment;
      if (name.endsWith("/")) continue;
      if (size > LARGEST) throw new Error(`${name} is too large.`);
      const whole = method === 0 ? held : method === 8 ? await inflated(held, size) : null;
      if (!whole || whole.length !== size) throw new Error(`${name} is packed in a way that cannot be read here.`);
      files.push({ name, bytes: whole });
    }
    return files;
  }

  /** What was deflated, up to the size the archive says; more than that is refused and never unpacked. */
  async function inflated(held, size) {
    const reader = new Blob([held]).stream().pipeThrough(new root.DecompressionStream("deflate-raw")).getReader();
    const whole = new Uint8Array(size);
    let at = 0;
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return at === size ? whole : null;
      if (at + value.length > size) {
        reader.cancel();
        return null;
      }
      whole.set(value, at);
      at += value.length;
    }
  }

  InPeriod.zip = { zip, unzip, crc32 };
  if (typeof module !== "undefined") module.exports = InPeriod.zip;
})(globalThis);
