/** A folder as far as writing needs it. Names are file names in it; every operation rejects with the file system's error. */
export interface OutputFolder {
  names(): Promise<readonly string[]>;
  write(name: string, bytes: Uint8Array): Promise<void>;
  /** Takes the place of a file that is there. */
  rename(from: string, to: string): Promise<void>;
  remove(name: string): Promise<void>;
  /** Takes away what folders writing has made, where nothing stands in them. */
  unmake(): Promise<void>;
}

export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Which file could not be written, and the file system's error. */
export class NotWritten extends Error {
  constructor(
    readonly file: string,
    override readonly cause: unknown,
  ) {
    super(cause instanceof Error ? cause.message : String(cause));
  }
}

const fresh = (name: string): string => `.${name}.tmp`;
const former = (name: string): string => `.${name}.old`;

/**
 * Writes all files or none. Everything is first written under temporary names; then each file that is there steps aside and
 * its successor takes the name. Where a step fails, the former files come back and nothing new stays,
 * nor an empty folder.
 * Rejects with {@link NotWritten}; calls `stop` before each file, which may throw to end the same way.
 */
export async function writeWhole(
  folder: OutputFolder,
  files: readonly NamedBytes[],
  stop: (name: string) => void = () => {},
): Promise<void> {
  const undo: (() => Promise<void>)[] = [];
  let at = files[0]?.name ?? "";
  try {
    for (const { name, bytes } of files) {
      at = name;
      stop(name);
      undo.push(() => folder.remove(fresh(name)));
      await folder.write(fresh(name), bytes);
    }
    const present = new Set(await folder.names());
    for (const { name } of files) {
      at = name;
      if (present.has(name)) {
        await folder.rename(name, former(name));
        undo.push(() => folder.rename(former(name), name));
      }
      await folder.rename(fresh(name), name);
      undo.push(() => folder.remove(name));
    }
    // From here on the new files are whole; a former one that cannot be removed does no harm.
    for (const { name } of files) if (present.has(name)) await folder.remove(former(name)).catch(() => {});
  } catch (error) {
    for (const step of undo.reverse()) await step().catch(() => {});
    await folder.unmake().catch(() => {});
    throw new NotWritten(at, error);
  }
}
