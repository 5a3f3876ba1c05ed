/** Where the Vosk engine is served; the version is in the name, so that it may be kept for ever. */
export const engineFile = 'vosk/vosk-browser-0.0.8.js';
