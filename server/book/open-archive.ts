/**
 * Open an archive that may have been tampered with: names from a fixed list only, no links, no folders, sizes as the
 * manifest says and no larger, hashes checked while the bytes pass.
 */
import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import yauzl from 'yauzl';
import { isArchiveName, MANIFEST, type Manifest, manifestSchema } from './archive.ts';

/** The archive is damaged or not one of ours; the message says where. */
export class BadArchive extends Error {}

export interface Archive {
  manifest: Manifest;
  /** a small file, whole */
  text(path: string): Promise<string>;
  /** a file's bytes, to `take` as they come; throws after the last when size or hash are not as promised */
  pour(path: string, take: (bytes: Buffer) => Promise<void>): Promise<void>;
  close(): void;
}

const MOST_ENTRIES = 100_000;
/** descriptions, results and the journal; recorder files are never held whole */
const LONGEST_TEXT = 128 * 1024 * 1024;
const UNIX = 3;
const FILE_TYPE = 0o170000;
const REGULAR = 0o100000;

/**
 * @param path the zip
 * @param limit most bytes all its files may have together
 * @throws BadArchive
 */
export async function openArchive(path: string, limit: number): Promise<Archive> {
  const zip = await openZip(path);
  try {
    const entries = await listEntries(zip);
    const manifest = await readManifest(zip, entries);
    checkAgainst(manifest, entries, limit);
    const promised = new Map(manifest.files.map((file) => [file.path, file]));

    const pour: Archive['pour'] = async (name, take) => {
      const entry = entries.get(name);
      const file = promised.get(name);
      if (!entry || !file) throw new BadArchive(`${name} is missing`);
      const hash = createHash('sha256');
      let size = 0;
      for await (const chunk of await streamOf(zip, entry)) {
        const bytes = Buffer.from(chunk);
        size += bytes.length;
        if (size > file.size) throw new BadArchive(`${name} is larger than the manifest says`);
        hash.update(bytes);
        await take(bytes);
      }
      if (size !== file.size || hash.digest('hex') !== file.sha256) {
        throw new BadArchive(`${name} is not what the manifest says`);
      }
    };

    return {
      manifest,
      pour,
      text: async (name) => {
        if ((promised.get(name)?.size ?? 0) > LONGEST_TEXT) throw new BadArchive(`${name} is too large`);
        const parts: Buffer[] = [];
        await pour(name, async (bytes) => void parts.push(bytes));
        return Buffer.concat(parts).toString('utf8');
      },
      close: () => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw error instanceof BadArchive ? error : new BadArchive(String(error), { cause: error });
  }
}

function openZip(path: string): Promise<yauzl.ZipFile> {
  return new Promise((resolve, reject) => {
    const options = { lazyEntries: true, autoClose: false, strictFileNames: true, validateEntrySizes: true };
    yauzl.open(path, options, (error, zip) => {
      if (error) reject(new BadArchive('it is not a zip file', { cause: error }));
      else resolve(zip);
    });
  });
}

function listEntries(zip: yauzl.ZipFile): Promise<Map<string, yauzl.Entry>> {
  return new Promise((resolve, reject) => {
    const entries = new Map<string, yauzl.Entry>();
    if (zip.entryCount > MOST_ENTRIES) return reject(new BadArchive(`it has ${zip.entryCount} entries`));
    zip.on('error', (error) => reject(new BadArchive(String(error), { cause: error })));
    zip.on('end', () => resolve(entries));
    zip.on('entry', (entry: yauzl.Entry) => {
      const bad = whyRefused(entry) ?? (entries.has(entry.fileName) ? 'stands in it twice' : undefined);
      if (bad) return reject(new BadArchive(`an entry ${bad}`));
      entries.set(entry.fileName, entry);
      zip.readEntry();
    });
    zip.readEntry();
  });
}

function whyRefused(entry: yauzl.Entry): string | undefined {
  if (!isArchiveName(entry.fileName)) return 'has a name that does not belong in it';
  if (entry.isEncrypted()) return 'is encrypted';
  const type = (entry.externalFileAttributes >>> 16) & FILE_TYPE;
  if (entry.versionMadeBy >>> 8 === UNIX && type !== 0 && type !== REGULAR) return 'is a link or a device';
  return undefined;
}

async function readManifest(zip: yauzl.ZipFile, entries: Map<string, yauzl.Entry>): Promise<Manifest> {
  const entry = entries.get(MANIFEST);
  if (!entry) throw new BadArchive('it has no manifest');
  if (entry.uncompressedSize > LONGEST_TEXT) throw new BadArchive('its manifest is too large');
  const parts: Buffer[] = [];
  for await (const chunk of await streamOf(zip, entry)) parts.push(Buffer.from(chunk));
  return manifestSchema.parse(JSON.parse(Buffer.concat(parts).toString('utf8')));
}

function checkAgainst(manifest: Manifest, entries: Map<string, yauzl.Entry>, limit: number): void {
  const promised = new Set(manifest.files.map((file) => file.path));
  if (promised.size !== manifest.files.length) throw new BadArchive('its manifest names a file twice');
  const extra = [...entries.keys()].filter((name) => name !== MANIFEST && !promised.has(name));
  if (extra.length > 0) throw new BadArchive(`${extra[0]} is not in the manifest`);
  const total = manifest.files.reduce((sum, file) => sum + file.size, 0);
  if (total > limit) throw new BadArchive(`its files have ${total} bytes, more than the ${limit} allowed`);
}

function streamOf(zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<Readable> {
  return new Promise((resolve, reject) => {
    zip.openReadStream(entry, (error, stream) => (error ? reject(error) : resolve(stream)));
  });
}
