// Out and in: the source as its YAML file with its pictures, into a folder or as one download; and a file opened again.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const LARGEST = 16 * 1024 * 1024; // a source file larger than this is none

  /** The text of the source's file: a file that was opened keeps its comments, its order and its layout. */
  function textOf(work) {
    const { sourceYaml, updated } = InPeriod.recordYaml;
    return work.file ? updated(work.file.text, work.source) : sourceYaml(work.source);
  }

  const filed = new WeakMap();

  /** Whether the file that was opened or last saved says what the work says. */
  function isSaved({ source, file }) {
    const { read, plainValue, sourceYaml } = InPeriod.recordYaml;
    if (!filed.has(file)) filed.set(file, sourceYaml(plainValue(read(file.text).root)));
    return sourceYaml(source) === filed.get(file);
  }

  /** The pages that plates show, each with the name its picture gets under images/. */
  function picturesOf(work) {
    const wanted = new Set((work.source.plates || []).map((plate) => plate.image && plate.image.file));
    return work.pages.map((page) => ({ page, name: InPeriod.recordFigures.imageName(work, page) })).filter((each) => wanted.has(each.name));
  }

  /** Those pictures as files, and the names of those whose pages are not open. */
  async function opened(work) {
    const found = [],
      absent = [];
    for (const { page, name } of picturesOf(work)) {
      const file = await InPeriod.recordPages.fileOf(page);
      if (file) found.push({ name, file });
      else absent.push(page.name);
    }
    return { found, absent };
  }

  const markSaved = (work, name, text) => ({
    ...work, name, named: true, file: { name: `${name}.yaml`, text }, savedIds: (work.source.plates || []).map((plate) => plate.id),
  });

  /** One file to download: the YAML alone, or a ZIP of it and its pictures. Gives {file, pictures, absent}. */
  async function download(work, text) {
    const { found, absent } = await opened(work);
    if (!found.length) {
      InPeriod.download(`${work.name}.yaml`, "application/yaml", text);
      return { file: `${work.name}.yaml`, pictures: 0, absent };
    }
    const files = [{ name: `sources/${work.name}.yaml`, bytes: new TextEncoder().encode(text) }];
    for (const { name, file } of found) files.push({ name: `images/${name}`, bytes: new Uint8Array(await file.arrayBuffer()) });
    InPeriod.download(`${work.name}.zip`, "application/zip", new Blob(InPeriod.zip.zip(files)));
    return { file: `${work.name}.zip`, pictures: found.length, absent };
  }

  // ---- a folder the browser lets this page write into

  const canPick = () => typeof root.showDirectoryPicker === "function";

  async function mayWrite(handle) {
    const wanted = { mode: "readwrite" };
    if (!handle.queryPermission) return true;
    return (await handle.queryPermission(wanted)) === "granted" || (await handle.requestPermission(wanted)) === "granted";
  }

  async function textIn(folder, name) {
    try {
      return await (await (await folder.getFileHandle(name)).getFile()).text();
    } catch (absent) {
      return null;
    }
  }

  async function write(folder, name, content) {
    const stream = await (await folder.getFileHandle(name, { create: true })).createWritable();
    await stream.write(content);
    await stream.close();
  }

  /**
   * Saves into a catalogue's folder: sources/<id>.yaml and images/<id>/…. Gives {file, pictures, absent}, or {inTheWay: text} where
   * another file of that name is there that is neither the one opened nor the one last saved; `over` writes it all the same.
   */
  async function intoFolder(folder, work, text, over) {
    const sources = await folder.getDirectoryHandle("sources", { create: true }),
      name = `${work.name}.yaml`;
    const there = await textIn(sources, name);
    if (!over && there !== null && there !== text && !(work.file && work.file.name === name && work.file.text === there)) return { inTheWay: there };
    const { found, absent } = await opened(work);
    if (found.length) {
      const images = await folder.getDirectoryHandle("images", { create: true });
      for (const { name: path, file } of found) {
        const steps = path.split("/"),
          last = steps.pop();
        let inner = images;
        for (const step of steps) inner = await inner.getDirectoryHandle(step, { create: true });
        await write(inner, last, file);
      }
    }
    await write(sources, name, text);
    return { file: `sources/${name}`, pictures: found.length, absent };
  }

  // ---- opening

  /** What is wrong with a file that cannot be opened, one sentence each. */
  class Unopened extends Error {
    constructor(sentences) {
      super(sentences[0]);
      this.sentences = sentences;
    }
  }

  /** A work from the bytes of a source file. Throws Unopened rather than lose or change a word of it. */
  function fromBytes(name, bytes) {
    if (bytes.length > LARGEST) throw new Unopened([`${name} is too large to be a source file.`]);
    let text;
    try {
      text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch (slip) {
      throw new Unopened([`${name} is not text in UTF-8.`]);
    }
    const { root: tree, problems } = InPeriod.recordYaml.read(text);
    const errors = problems.filter((each) => each.severity === "error");
    if (errors.length) throw new Unopened(errors.map((each) => `Line ${each.line}: ${each.message} ${each.hint || ""}`.trim()));
    const source = tree && InPeriod.recordYaml.plainValue(tree);
    if (!InPeriod.recordState.isTable(source)) throw new Unopened([`${name} holds no source: it starts with a line such as title: …`]);
    if (source.plates !== undefined && !(Array.isArray(source.plates) && source.plates.every(InPeriod.recordState.isTable)))
      throw new Unopened([`${name}: plates: is not a list of plates.`]);
    return markSaved({ source }, name.replace(/^.*\//, "").replace(/\.ya?ml$/i, ""), text);
  }

  /** From a file of ours, YAML or ZIP: {work, pictures: [File]}. */
  async function open(file) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (!/\.zip$/i.test(file.name)) return { work: fromBytes(file.name, bytes), pictures: [] };
    let inside;
    try {
      inside = await InPeriod.zip.unzip(bytes);
    } catch (slip) {
      throw new Unopened([`${file.name} cannot be opened: it is damaged, or no file of this page.`]);
    }
    const sheet = inside.find((each) => /(^|\/)sources\/[^/]+\.ya?ml$/i.test(each.name));
    if (!sheet) throw new Unopened([`${file.name} holds no source file.`]);
    const work = fromBytes(sheet.name, sheet.bytes);
    const pictures = inside
      .filter((each) => InPeriod.recordPages.isPicture(each.name.replace(/^.*\//, "")))
      .map((each) => new File([each.bytes], each.name.replace(/^.*\//, "")));
    return { work, pictures };
  }

  InPeriod.recordSave = { textOf, isSaved, picturesOf, markSaved, download, canPick, mayWrite, intoFolder, fromBytes, open, Unopened };
  if (typeof module !== "undefined") module.exports = InPeriod.recordSave;
})(globalThis);
