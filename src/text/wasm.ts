/*
 * What this layer needs of WebAssembly, which the language's own type library does not describe without the DOM.
 */

declare const WebAssembly: {
  instantiate(
    bytes: Uint8Array,
    imports?: Readonly<Record<string, Readonly<Record<string, (...args: number[]) => number>>>>,
  ): Promise<{ readonly instance: { readonly exports: Readonly<Record<string, unknown>> } }>;
};

interface Memory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}

function isMemory(value: unknown): value is Memory {
  return typeof value === "object" && value !== null && "buffer" in value && "grow" in value;
}

type Native = (...args: readonly number[]) => number;

function isNative(value: unknown): value is Native {
  return typeof value === "function";
}

/** Bytes of a page of WebAssembly memory. */
const page = 65536;

/** An instance of a C library compiled to WebAssembly: its functions by name, and views of its memory. */
export class Library {
  private constructor(
    private readonly exports: Readonly<Record<string, unknown>>,
    private readonly memory: Memory,
  ) {}

  /** Instantiates a module built by Emscripten, from its bytes. Throws where they are no such module. */
  static async open(bytes: Uint8Array): Promise<Library> {
    let memory: Memory | undefined;
    const grow = (wanted: number): number => {
      if (!memory) return 0;
      memory.grow(Math.ceil((wanted - memory.buffer.byteLength) / page));
      return 1;
    };
    const nothing = (): number => 0;
    const { instance } = await WebAssembly.instantiate(bytes, {
      wasi_snapshot_preview1: { proc_exit: nothing },
      env: {
        _abort_js: nothing,
        _emscripten_runtime_keepalive_clear: nothing,
        _setitimer_js: nothing,
        emscripten_resize_heap: grow,
      },
    });
    const { memory: exported } = instance.exports;
    if (!isMemory(exported)) throw new Error("The shaper's module has no memory.");
    memory = exported;
    const library = new Library(instance.exports, exported);
    library.function("_initialize" in instance.exports ? "_initialize" : "__wasm_call_ctors")();
    return library;
  }

  /** An exported function itself, which the engine calls fastest; pointers are numbers. Throws where there is none of this name. */
  function(name: string): Native {
    const found = this.exports[name];
    if (!isNative(found)) throw new Error(`The shaper's module lacks ${name}.`);
    return found;
  }

  /** Views are valid until the next call that may allocate. */
  bytes(pointer: number, length: number): Uint8Array {
    return new Uint8Array(this.memory.buffer, pointer, length);
  }

  words(pointer: number, length: number): Int32Array {
    return new Int32Array(this.memory.buffer, pointer, length);
  }

  units(pointer: number, length: number): Uint16Array {
    return new Uint16Array(this.memory.buffer, pointer, length);
  }
}
