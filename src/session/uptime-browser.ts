/**
 * Milliseconds from some fixed moment, with what the device slept. A browser tells that by its wall clock alone: one that is
 * set forward in the middle of a session looks like sleep, and makes waits run out too early rather than never.
 */
export const uptimeMs = (): number => Date.now();
