/** The archive of the folder that the program is started in. */
export const DEFAULT_PLACE = 'first-fire-archive.sqlite';
