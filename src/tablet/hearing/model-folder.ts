/** Where the packaged English model is served; the version is in the name, so that it may be kept for ever. */
export const modelFolder = 'model/soundswallower-0.6.3/en-us';
