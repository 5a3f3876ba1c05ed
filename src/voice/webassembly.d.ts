/** The part of WebAssembly used here, for programs that are checked without the browser's own types. */
declare namespace WebAssembly {
  interface Module {
    readonly [Symbol.toStringTag]: string;
  }
  var Module: { prototype: Module; new (bytes: Uint8Array): Module };
  interface Memory {
    readonly buffer: ArrayBuffer;
    grow(pages: number): number;
  }
  var Memory: { prototype: Memory; new (descriptor: { initial: number }): Memory };
  interface Instance {
    readonly exports: Readonly<Record<string, unknown>>;
  }
  var Instance: {
    prototype: Instance;
    new (module: Module, imports?: Readonly<Record<string, Readonly<Record<string, unknown>>>>): Instance;
  };
  function compile(bytes: Uint8Array): Promise<Module>;
}
