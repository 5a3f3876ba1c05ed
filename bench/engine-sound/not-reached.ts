/** What of the aims is not reached, what was tried, and what would close it: put into the page that the figures go into. */
export const notReached = `Not reached.`;
