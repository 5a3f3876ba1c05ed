/** Stands in for a package that brings Blob to browsers without one. */
export const Blob = globalThis.Blob;
